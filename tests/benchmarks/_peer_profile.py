"""The profile fit of profile_bench.ts with NumPy and SciPy."""

import json
import sys

try:
    import numpy
    import scipy
    import scipy.stats
except ImportError:
    print(json.dumps({"missing": "scipy"}))
    sys.exit(0)

from _peer import tell

DISTANCES = numpy.array([0, 18, 36, 54, 72, 88], dtype=float) / 150
RING = 60 / 150
POWERS = [4, 6, 8]


def prepare(n):
    with open(sys.argv[3]) as file:
        sags = numpy.array(json.load(file))

    def work():
        # Foot 1 points outward: the mean of the term under three feet less that
        # under the probe.
        angles = numpy.radians([0, 120, 240])
        x = DISTANCES[:, None] + RING * numpy.cos(angles)
        y = RING * numpy.sin(angles)
        far = x * x + y * y
        columns = [
            (far ** (p // 2)).mean(axis=1) - DISTANCES**p for p in POWERS
        ]
        design = numpy.column_stack([numpy.ones(len(DISTANCES)), *columns])
        terms = numpy.linalg.lstsq(design, sags.T, rcond=None)[0][1:].T
        u = numpy.linspace(0, 1, 41)
        shapes = []
        for p in POWERS:
            m = p / 2
            slope = 12 * (1 / (m + 2) - 1 / (2 * (m + 1)))
            shapes.append(u**p - (1 / (m + 1) - slope / 2) - slope * u * u)
        values = numpy.hstack([terms, terms @ numpy.array(shapes)])
        mean = values.mean(axis=0)
        error = values.std(axis=0, ddof=1) / numpy.sqrt(len(values))
        half = scipy.stats.t.ppf(0.975, len(values) - 1) * error
        return 1e6 * numpy.column_stack([mean, mean - half, mean + half]).ravel()

    return work


tell(sys.argv, prepare, f"{numpy.__version__}, {scipy.__version__}")
