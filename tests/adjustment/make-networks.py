"""Random plane networks with their adjustment by SciPy, for tests/tables/networks.scipy.json.

Usage: python3 make-networks.py COUNT LARGEST SEED > networks.scipy.json
Needs numpy and scipy. Exact observations are not weighted here but written out by hand: the parameters of a network
are the coordinates that are left, so the solution shares nothing with elimination or QR. COMPUTED by SciPy.
"""

import json
import sys

import numpy as np
from scipy.optimize import least_squares

COUNT, LARGEST, SEED = int(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
random = np.random.default_rng(SEED)


def value_of(kind, place, names):
    """One observation at given places: names are (of | from, to | of, from, to)."""
    if kind == "east":
        return place[names[0]][0]
    if kind == "north":
        return place[names[0]][1]
    if kind in ("distance", "bearing"):
        east, north = place[names[1]] - place[names[0]]
        return np.hypot(east, north) if kind == "distance" else np.arctan2(east, north)
    point, start, end = (place[n] for n in names)
    along = (end - start) / np.linalg.norm(end - start)
    out = point - start
    return out @ along if kind == "run" else along[0] * out[1] - along[1] * out[0]


def tape_doubt(length):
    return 0.005 + 0.0002 * length


def scattered(count):
    """Stations at least 4 m apart on a plot, the two of the base line far apart."""
    size = 12.0 * np.sqrt(count)
    places = [np.array([0.0, 0.0]), np.array([0.6 * size, 0.15 * size])]
    while len(places) < count:
        spot = random.uniform(-0.3 * size, size, 2)
        if min(np.linalg.norm(spot - p) for p in places) > 4:
            places.append(spot)
    return places


def measured(true, rows, kind, names, u):
    value = value_of(kind, true, names) + (random.normal(0, u) if u > 0 else 0.0)
    rows.append([kind, list(names), float(np.round(value, 6 if kind == "bearing" else 3)) if u > 0 else float(value), u])


def network(count):
    true = scattered(count)
    rows = []
    datum = random.choice(["bearing", "two points", "weighted"])
    doubt = 0.01 if datum == "weighted" else 0.0
    for station in [0] if datum == "bearing" else [0, 1]:
        measured(true, rows, "east", (station,), doubt)
        measured(true, rows, "north", (station,), doubt)
    if datum == "bearing":
        measured(true, rows, "bearing", (0, 1), 0.0)
    pegged = count - 1 if random.random() < 0.4 else None
    for new in range(1, count):
        if new == pegged:
            measured(true, rows, "run", (new, 0, 1), 0.0)
            measured(true, rows, "offset", (new, 0, 1), 0.0)
            continue
        old = sorted(range(new), key=lambda k: np.linalg.norm(true[k] - true[new]))
        if new >= 3 and random.random() < 0.2:
            measured(true, rows, "run", (new, 0, 1), 0.01)
            measured(true, rows, "offset", (new, 0, 1), 0.02)
            ties = old[:1]
        else:
            ties = old[: int(random.integers(3, 5))]
        for station in ties:
            length = np.linalg.norm(true[station] - true[new])
            measured(true, rows, "distance", (station, new), float(np.round(tape_doubt(length), 6)))
        if random.random() < 0.15 or (new == 2 and len(ties) < 3):
            measured(true, rows, "bearing", (old[-1], new), 0.02)
    return true, rows, datum, pegged


def solve(true, rows, datum, pegged):
    """Adjust by SciPy; parameters are what the exact observations leave free."""
    count = len(true)
    exact = {(kind, tuple(names)): value for kind, names, value, u in rows if u == 0}

    def places(parameters):
        free = list(parameters)
        out = []
        for station in range(count):
            if datum == "bearing" and station == 0 or datum == "two points" and station < 2:
                out.append(np.array([exact["east", (station,)], exact["north", (station,)]]))
            elif datum == "bearing" and station == 1:
                azimuth = exact["bearing", (0, 1)]
                out.append(out[0] + free.pop(0) * np.array([np.sin(azimuth), np.cos(azimuth)]))
            elif station == pegged:
                along = (out[1] - out[0]) / np.linalg.norm(out[1] - out[0])
                left = np.array([-along[1], along[0]])
                out.append(out[0] + exact["run", (station, 0, 1)] * along + exact["offset", (station, 0, 1)] * left)
            else:
                out.append(np.array([free.pop(0), free.pop(0)]))
        return out

    start = []
    for station in range(count):
        if datum == "bearing" and station == 0 or datum == "two points" and station < 2 or station == pegged:
            continue
        start += [np.linalg.norm(true[1])] if datum == "bearing" and station == 1 else list(true[station])
    weighted = [row for row in rows if row[3] > 0]

    def misfits(parameters):
        place = places(parameters)
        out = []
        for kind, names, value, u in weighted:
            gap = value_of(kind, place, names) - value
            if kind == "bearing":
                gap = (gap + np.pi) % (2 * np.pi) - np.pi
            out.append(gap / u)
        return np.array(out)

    best = least_squares(misfits, start, method="lm", x_scale="jac", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    step = 1e-6
    eye = np.eye(len(start))
    jacobian = np.array([(misfits(best.x + step * e) - misfits(best.x - step * e)) / (2 * step) for e in eye]).T
    spread = np.array(
        [(np.ravel(places(best.x + step * e)) - np.ravel(places(best.x - step * e))) / (2 * step) for e in eye]
    ).T
    covariance = spread @ np.linalg.pinv(jacobian.T @ jacobian, hermitian=True) @ spread.T
    smallest = np.linalg.svd(jacobian, compute_uv=False)[-1]
    return {
        "coordinates": np.round(np.ravel(places(best.x)), 7).tolist(),
        "deviations": [float(f"{s:.5g}") for s in np.sqrt(np.maximum(np.diag(covariance), 0))],
        "chi_square": round(float(2 * best.cost), 6),
        "degrees": len(weighted) - len(start),
    }, smallest


out = []
while len(out) < COUNT:
    count = int(np.round(np.exp(random.uniform(np.log(6), np.log(LARGEST)))))
    true, rows, datum, pegged = network(count)
    solution, smallest = solve(true, rows, datum, pegged)
    if smallest < 0.3 or max(solution["deviations"]) > 0.5:
        continue  # some station is held by next to nothing: not a survey
    start = np.round(np.ravel(true) + random.normal(0, 0.15, 2 * count), 2).tolist()
    out.append({"stations": count, "observations": rows, "start": start, **solution})

print('{"source": "random networks, adjusted by scipy.optimize.least_squares (make-networks.py)",')
print(f'"label": "COMPUTED", "seed": {SEED}, "networks": [')
print(",\n".join(json.dumps(entry, separators=(",", ":")) for entry in out))
print("]}")
