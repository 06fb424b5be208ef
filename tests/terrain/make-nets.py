"""Triangulations by Qhull (through SciPy) of points from the formula below, for tests/tables/nets.qhull.json.

python3 tests/terrain/make-nets.py > tests/tables/nets.qhull.json
Delaunay triangles as sorted triples of point numbers; levels between points by Qhull's own triangles
(LinearNDInterpolator); cut and fill against a level plane by summing columns of a fine grid over its triangles. COMPUTED.
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
    triangles = np.sort(net.simplices, axis=1)
    triangles = triangles[np.lexsort(triangles.T[::-1])]
    corners = points[net.simplices]
    a, b = corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]
    turn = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    rise = levels[net.simplices][:, 1:] - levels[net.simplices][:, :1]
    slopes = np.hypot((rise[:, 0] * b[:, 1] - rise[:, 1] * a[:, 1]) / turn, (rise[:, 1] * a[:, 0] - rise[:, 0] * b[:, 0]) / turn)
    volume = float((np.abs(turn) / 2 * (levels[net.simplices] - 100).mean(axis=1)).sum())
    out.append({
        "count": count,
        "shift": shift,
        "triangles": triangles.ravel().tolist() if count <= 600 else None,
        "number": len(net.simplices),
        "levels": [None if np.isnan(z) else round(float(z), 9) for z in found],
        "net_volume": round(volume, 6),
        "steepest": round(float(slopes.max()), 9),
        "mean_slope": round(float((slopes * np.abs(turn)).sum() / np.abs(turn).sum()), 9),
    })
print(json.dumps({"source": "scipy.spatial.Delaunay (Qhull), make-nets.py", "label": "COMPUTED", "nets": out}, separators=(",", ":")))
