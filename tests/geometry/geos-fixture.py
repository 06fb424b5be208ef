"""Makes tests/tables/geometry.geos.json: what GEOS says of seeded random shapes. Run once by hand:
   python3 tests/geometry/geos-fixture.py   (Debian: python3-shapely 1.8.5, GEOS 3.11)"""
import json, math, os, random
from shapely import geos
from shapely.geometry import LineString, Point, Polygon
from shapely.validation import explain_validity

rnd = random.Random(20260501)
cm = lambda v: round(v, 2)

def star(east, north, n, lo, hi):
    turn = rnd.uniform(0, 6.28)
    out = []
    for i in range(n):
        r = rnd.uniform(lo, hi)
        a = turn + 2 * math.pi * i / n
        out.append([cm(east + r * math.cos(a)), cm(north + r * math.sin(a))])
    return out

def grid_star(n):
    pts = star(rnd.randint(-3, 3), rnd.randint(-3, 3), n, 2, 7)
    return [[round(x), round(y)] for x, y in pts]

def rectangle(east, north, w, h, a):
    c, s = math.cos(a), math.sin(a)
    return [[east + x * c - y * s, north + x * s + y * c] for x, y in [(0, 0), (w, 0), (w, h), (0, h)]]

def pairs():
    for _ in range(40):
        yield "stars", star(0, 0, rnd.randint(3, 12), 3, 12), star(rnd.uniform(-25, 25), rnd.uniform(-25, 25), rnd.randint(3, 12), 3, 12)
    for _ in range(20):
        yield "grid", grid_star(rnd.randint(4, 9)), grid_star(rnd.randint(4, 9))
    for _ in range(15):
        a = rnd.uniform(0, 3.14)
        c, s = math.cos(a), math.sin(a)
        k = rnd.uniform(-4, 4)
        yield "shared edge", rectangle(0, 0, 10, 4, a), rectangle(10 * c + -k * s, 10 * s + k * c, 7, 3, a)
    for _ in range(15):
        ring = star(0, 0, 8, 4, 9)
        e = 10.0 ** rnd.randint(-14, -8)
        yield "jitter", ring, [[x + rnd.uniform(-e, e), y + rnd.uniform(-e, e)] for x, y in ring]

rows = []
for sort, one, two in pairs():
    a, b = Polygon(one), Polygon(two)
    if not (a.is_valid and b.is_valid):
        continue
    line = [[cm(rnd.uniform(-15, 15)), cm(rnd.uniform(-15, 15))] for _ in range(4)]
    at = [cm(rnd.uniform(-12, 12)), cm(rnd.uniform(-12, 12))]
    rows.append(dict(sort=sort, a=one, b=two, distance=a.distance(b), intersection=a.intersection(b).area,
        union=a.union(b).area, difference=a.difference(b).area, line=line, lineWithin=LineString(line).intersection(a).length,
        lineDistance=LineString(line).distance(b), point=at, pointDistance=Point(at).distance(a),
        centroid=[a.centroid.x, a.centroid.y], hull=a.convex_hull.area,
        strip=LineString(line[:2]).buffer(1.5, cap_style=2).area, inset=a.buffer(-1, join_style=2, mitre_limit=5).area))

sq = [[0, 0], [10, 0], [10, 10], [0, 10]]
hole = [[4, 4], [6, 4], [6, 6], [4, 6]]
odd = [
    ("a square", sq, []), ("a square with a hole", sq, [hole]),
    ("a bow tie", [[0, 0], [10, 10], [10, 0], [0, 10]], []),
    ("a ring that touches itself at a point", [[0, 0], [10, 0], [5, 5], [10, 10], [0, 10], [5, 5]], []),
    ("a spike", [[0, 0], [10, 0], [10, 10], [10, 15], [10, 10], [0, 10]], []),
    ("a hole outside", sq, [[[14, 4], [16, 4], [16, 6], [14, 6]]]),
    ("a hole over the edge", sq, [[[8, 4], [12, 4], [12, 6], [8, 6]]]),
    ("holes that cross", sq, [hole, [[5, 5], [7, 5], [7, 7], [5, 7]]]),
    ("a hole in a hole", sq, [[[2, 2], [8, 2], [8, 8], [2, 8]], hole]),
    ("two holes apart", sq, [hole, [[7, 7], [9, 7], [9, 9], [7, 9]]]),
    ("a hole that touches the edge at a point", sq, [[[0, 5], [2, 4], [2, 6]]]),
    ("nothing but a line there and back", [[0, 0], [10, 0], [5, 0]], []),
    ("a side laid on another side", [[0, 0], [10, 0], [10, 5], [6, 5], [6, 0], [4, 0], [4, 5], [0, 5]], []),
]
shapes = [dict(name=n, outline=o, holes=h, valid=Polygon(o, h).is_valid, says=explain_validity(Polygon(o, h))) for n, o, h in odd]
table = dict(source="GEOS %s by shapely 1.8.5 (COMPUTED)" % ".".join(map(str, geos.geos_version)), pairs=rows, shapes=shapes)
path = os.path.join(os.path.dirname(__file__), "..", "tables", "geometry.geos.json")
with open(path, "w") as out:
    out.write('{\n"source": %s,\n"shapes": [\n%s\n],\n"pairs": [\n%s\n]\n}\n' % (
        json.dumps(table["source"]), ",\n".join(map(json.dumps, shapes)), ",\n".join(map(json.dumps, rows))))
print(len(rows), "pairs", len(shapes), "shapes")
