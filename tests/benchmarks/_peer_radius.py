"""The radius equation drawn n times with NumPy.

Same inputs and distributions as monte_carlo_bench.ts; default_rng, one thread,
every step vectorised, arrays reused by NumPy as it likes.
"""

import json
import math
import sys

try:
    import numpy
except ImportError:
    print(json.dumps({"missing": "numpy"}))
    sys.exit(0)

from _peer import tell

inputs = json.loads(sys.argv[3])
random = numpy.random.default_rng(1)


def draw(one, n):
    kind = one["distribution"]["kind"]
    value = one["value"]
    if kind == "normal":
        u = one["distribution"]["standardDeviation"]
        return value if u == 0 else value + u * random.standard_normal(n)
    if kind == "student":
        d = one["distribution"]
        return value + d["scale"] * random.standard_t(d["dof"], n)
    a = one["distribution"]["halfWidth"]
    return value if a == 0 else random.uniform(value - a, value + a, n)


def prepare(n):
    def work():
        x = [draw(one, n) for one in inputs]
        growth, bend, conic, lean = 11.5e-6, 3.3e-6 / 25, -1.0, math.pi / 180
        reading = x[0] + x[1] + x[2] + x[3] + x[4] + 0.001 * x[14]
        r = x[8]
        s = reading * (1 + x[5]) * numpy.cos(x[6]) / math.cos(lean)
        s = s + x[7] * r * r / 2
        swell = 1 + growth * x[11]
        across = (r * r - x[10] * x[10]) * swell * swell
        ball = 2 * s / (across + s * s)
        result = ball / (1 + x[9] * swell * ball)
        result = result + bend * x[12]
        result = result / (1 + conic * x[13] * x[13] * result * result)
        radius = 1 / result
        mean, deviation = radius.mean(), radius.std(ddof=1)
        radius.sort()
        span = int(0.95 * n + 0.5)
        best = int(numpy.argmin(radius[span:] - radius[: n - span]))
        found = [mean, radius[best], radius[best + span]]
        return [x - 2500 for x in found] + [deviation]

    return work


tell(sys.argv, prepare, numpy.__version__)
