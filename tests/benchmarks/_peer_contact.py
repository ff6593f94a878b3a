"""The contact of contact_bench.ts as nine equations for SciPy."""

import json
import sys

try:
    import numpy
    import scipy
    import scipy.optimize
except ImportError:
    print(json.dumps({"missing": "scipy"}))
    sys.exit(0)

from _peer import tell

CURVATURE, CONIC = 1 / 3000, -0.6
RING, BALL = 60, 6.35


def surface(x, y):
    """Height and slopes of the work."""
    square = x * x + y * y
    w = numpy.sqrt(1 - (1 + CONIC) * CURVATURE**2 * square)
    height = CURVATURE * square / (1 + w) + 1e-16 * square**3 + 1e-9 * x * square
    common = CURVATURE / w + 6e-16 * square**2
    return (
        height,
        common * x + 1e-9 * (square + 2 * x * x),
        common * y + 1e-9 * 2 * x * y,
    )


def reading(x, y, degrees):
    """Travel of the probe in nm."""
    turns = numpy.radians(degrees + numpy.array([0, 120, 240]))
    body = numpy.array(
        [RING * numpy.cos(turns), RING * numpy.sin(turns), numpy.full(3, BALL)]
    )
    height, slope_x, slope_y = surface(x, y)
    origin = numpy.array([x, y, height])

    def residuals(unknown):
        travel, p, q = unknown[:3]
        up = numpy.array([p, q, numpy.sqrt(1 - p * p - q * q)])
        # The shortest turn that takes the vertical to `up`.
        axis = numpy.array([[0, 0, p], [0, 0, q], [-p, -q, 0]])
        turn = numpy.eye(3) + axis + axis @ axis / (1 + up[2])
        centres = (turn @ body).T + origin + travel * up
        px, py = unknown[3:6], unknown[6:]
        h, sx, sy = surface(px, py)
        steep = numpy.sqrt(1 + sx * sx + sy * sy)
        touching = numpy.column_stack(
            [px - BALL * sx / steep, py - BALL * sy / steep, h + BALL / steep]
        )
        return (centres - touching).ravel()

    steep = numpy.sqrt(1 + slope_x**2 + slope_y**2)
    start = numpy.concatenate(
        [[0, -slope_x / steep, -slope_y / steep], x + body[0], y + body[1]]
    )
    return 1e6 * scipy.optimize.fsolve(residuals, start, xtol=1e-14)[0]


def prepare(n):
    return lambda: [reading((7 * k) % 88, 0, (7 * k) % 360) for k in range(n)]


tell(sys.argv, prepare, scipy.__version__)
