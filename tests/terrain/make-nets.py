"""Triangulations by Qhull (through SciPy) of points from the formula below, for tests/tables/nets.qhull.json.

python3 tests/terrain/make-nets.py > tests/tables/nets.qhull.json
Delaunay triangles as sorted triples of point numbers; levels between points by Qhull's own triangles
(LinearNDInterpolator). The formula puts points of the hull on one line but for the last binary digit; the triangles between
such points (narrower than 1e-6 m, the grid on which two points are one) are no ground and are left out. COMPUTED.
"""

import json

import numpy as np
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import Delaunay


def field(count, shift):
    i = np.arange(count)
    east = (i * 0.7548776662 + shift) % 1 * 60
    north = (i * 0.569840291 + 2 * shift) % 1 * 40
    level = 100 + 0.04 * east + 0.8 * np.sin(north / 7) + 0.5 * np.cos(east / 9)
    return np.column_stack([east, north]), level


out = []
for count, shift in [(12, 0.0), (40, 0.13), (150, 0.41), (600, 0.77), (2500, 0.29)]:
    points, levels = field(count, shift)
    net = Delaunay(points)
    ground = LinearNDInterpolator(net, levels)
    asked = np.column_stack([(np.arange(60) * 0.3819660113) % 1 * 60, (np.arange(60) * 0.7236067977) % 1 * 40])
    found = ground(asked)
    corners = points[net.simplices]
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    turn = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    longest = np.max([np.hypot(*side.T) for side in (a, b, b - a)], axis=0)
    wide = np.abs(turn) / longest > 1e-6
    simplices, a, b, turn, narrow = net.simplices[wide], a[wide], b[wide], turn[wide], int((~wide).sum())
    triangles = np.sort(simplices, axis=1)
    triangles = triangles[np.lexsort(triangles.T[::-1])]
    rise = levels[simplices][:, 1:] - levels[simplices][:, :1]
    slopes = np.hypot((rise[:, 0] * b[:, 1] - rise[:, 1] * a[:, 1]) / turn, (rise[:, 1] * a[:, 0] - rise[:, 0] * b[:, 0]) / turn)
    volume = float((np.abs(turn) / 2 * (levels[simplices] - 100).mean(axis=1)).sum())
    out.append({
        "count": count,
        "shift": shift,
        "triangles": triangles.ravel().tolist() if count <= 600 else None,
        "number": len(simplices),
        "narrow": narrow,
        "levels": [None if np.isnan(z) else float(z) for z in found],
        "net_volume": volume,
        "steepest": float(slopes.max()),
        "mean_slope": float((slopes * np.abs(turn)).sum() / np.abs(turn).sum()),
    })
print(json.dumps({"source": "scipy.spatial.Delaunay (Qhull), make-nets.py", "label": "COMPUTED", "nets": out}, separators=(",", ":")))
