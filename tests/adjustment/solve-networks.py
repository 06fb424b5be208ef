"""Adjusts networks by SciPy, one JSON a line in, one out. COMPUTED by scipy.optimize.least_squares.

npx tsx tests/adjustment/print-networks.ts 500 | python3 tests/adjustment/solve-networks.py \
    | gzip -9n > tests/tables/networks-500.scipy.jsonl.gz

Needs numpy and scipy. Exact observations are not weighted here but written out by hand: the parameters of a network
are the coordinates that are left, so the solution shares nothing with elimination or QR, and covariance comes from the
pseudo-inverse of J'J with J by differences. Out: by how much each coordinate lies off the true one in hundredths of a
millimetre, and standard deviations in millimetres to four digits. Null: some station is held by next to nothing.
"""

import json
import sys

import numpy as np
from scipy.optimize import least_squares


def stacked(rows, kinds, size):
    chosen = [row for row in rows if row[0] in kinds and row[3] > 0]
    names = np.array([row[1] for row in chosen], dtype=int).reshape(-1, size)
    return names, np.array([row[2] for row in chosen]), np.array([row[3] for row in chosen])


def solve(stations, datum, pegged, truth, start, rows):
    exact = {(kind, tuple(names)): value for kind, names, value, u in rows if u == 0}
    known = {"bearing": [0], "two points": [0, 1], "weighted": []}[datum]
    groups = {kind: stacked(rows, (kind,), size) for kind, size in
              (("east", 1), ("north", 1), ("distance", 2), ("bearing", 2), ("run", 3), ("offset", 3))}
    loose = [k for k in range(stations) if k not in known and k != pegged and not (datum == "bearing" and k == 1)]

    def places(parameters):
        out = np.zeros((stations, 2))
        for k in known:
            out[k] = [exact["east", (k,)], exact["north", (k,)]]
        rest = parameters
        if datum == "bearing":
            azimuth = exact["bearing", (0, 1)]
            out[1] = out[0] + rest[0] * np.array([np.sin(azimuth), np.cos(azimuth)])
            rest = rest[1:]
        out[loose] = rest.reshape(-1, 2)
        if pegged is not None:
            along = (out[1] - out[0]) / np.linalg.norm(out[1] - out[0])
            left = np.array([-along[1], along[0]])
            out[pegged] = out[0] + exact["run", (pegged, 0, 1)] * along + exact["offset", (pegged, 0, 1)] * left
        return out

    def misfits(parameters):
        at = places(parameters)
        out = []
        for kind, (names, values, doubts) in groups.items():
            if len(values) == 0:
                continue
            first = at[names[:, 0]]
            if kind in ("east", "north"):
                gap = first[:, 0 if kind == "east" else 1] - values
            elif kind in ("distance", "bearing"):
                way = at[names[:, 1]] - first
                found = np.hypot(*way.T) if kind == "distance" else np.arctan2(way[:, 0], way[:, 1])
                gap = found - values
            else:
                way = at[names[:, 2]] - at[names[:, 1]]
                way = way / np.hypot(*way.T)[:, None]
                off = first - at[names[:, 1]]
                gap = (off * way).sum(1) if kind == "run" else way[:, 0] * off[:, 1] - way[:, 1] * off[:, 0]
                gap = gap - values
            if kind == "bearing":
                gap = (gap + np.pi) % (2 * np.pi) - np.pi
            out.append(gap / doubts)
        return np.concatenate(out)

    begin = np.concatenate([[np.linalg.norm(np.array(truth[1]) - truth[0])] if datum == "bearing" else [],
                            np.ravel(np.array(start)[loose])])
    best = least_squares(misfits, begin, method="lm", x_scale="jac", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    step, eye = 1e-6, np.eye(len(begin))
    sides = lambda f: np.array([(f(best.x + step * e) - f(best.x - step * e)) / (2 * step) for e in eye]).T
    jacobian, spread = sides(misfits), sides(lambda x: np.ravel(places(x)))
    if np.linalg.svd(jacobian, compute_uv=False)[-1] < 0.3:
        return None
    covariance = spread @ np.linalg.pinv(jacobian.T @ jacobian, hermitian=True) @ spread.T
    deviations = np.sqrt(np.maximum(np.diag(covariance), 0))
    if deviations.max() > 0.5:
        return None
    return {
        "off": np.round((np.ravel(places(best.x)) - np.ravel(truth)) * 1e5).astype(int).tolist(),
        "sd": [float(f"{1000 * s:.4g}") for s in deviations],
        "chi_square": round(float(2 * best.cost), 4),
        "degrees": len(best.fun) - len(begin),
    }


for line in sys.stdin:
    network = json.loads(line)
    answer = solve(*(network[key] for key in ("stations", "datum", "pegged", "truth", "start", "rows")))
    print(json.dumps(answer, separators=(",", ":")), flush=True)
