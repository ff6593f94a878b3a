"""What every peer in Python does: time some work and tell it as JSON.

A peer module calls tell(sys.argv, prepare, version): prepare(n) returns the
work, which returns the numbers it has found.
"""

import json
import resource
import time


def tell(argv, prepare, version):
    n, runs = int(argv[1]), int(argv[2])
    work = prepare(n)
    answer = work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        answer = work()
        times.append(1000 * (time.perf_counter() - start))
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(
        json.dumps(
            {
                "times": times,
                "peak": peak,
                "answer": [float(x) for x in answer],
                "version": version,
            }
        )
    )
