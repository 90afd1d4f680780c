"""A cutter follows the board drawings of a kit, and its parts are put back on the floor: python3 lay_boards.py KIT [EDGE...]

Reads what the layers say (operation, tool, depth in their names), follows them with a disc of the tool's diameter, reads each
part's label from its strokes, and lays the part where kit.json says that the label belongs. EDGE: edges of the outline, from 0,
that are left longer to be fitted by hand. Knows nothing of the program that drew; ezdxf reads, shapely cuts. Prints a line a
finding, `layer what value`, largest or smallest of the layer:

  spoilt    area of parts that a cutter takes which goes round or into another one, mm2
  over      area cut where neither a channel of drawing.dxf nor a flare at a joint is, 0.05 mm beyond, mm2
  lack      area of channels not cut, 0.05 mm within, mm2
  flare     least share of the flare that is there beside joints that a run crosses
  joint     smallest and largest gap between neighbours
  wall      smallest and largest gap to the edges of the outline that are not left longer
  stuck     area of parts beyond the outline shrunk by the tolerance
  tight     places where a disc of the pipe's diameter does not pass a joint with boards shifted by 1 mm along it
  crossings how many places that was tried at
  odd       things that do not belong in such a file
"""
import json
import math
import re
import sys
from pathlib import Path

import ezdxf
from ezdxf import path
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

EXACT = 0.05
FLARE, FLARE_LENGTH = 1.5, 20.0

# Strokes of the letters that labels are made of, on a grid of 4 x 6, in any order: what a person reads there.
GLYPHS = {
    "I": "1030 2026 1636", "J": "0110304146", "R": "00063645443303 2340", "C": "4536160501103041",
    "0": "100105163645413010 1234", "1": "142620 1030", "2": "051636454400 0040", "3": "06462333424130 1001 3010",
    "4": "30360242", "5": "460603334241301001", "6": "4536160501103041423303", "7": "064610",
    "8": "130405163645443313020110304142 4233", "9": "0110304145361605041343",
}

kit = Path(sys.argv[1])
longer = [int(a) for a in sys.argv[2:]]
data = json.load(open(kit / "kit.json"))


def points(e):
    return [(v.x, v.y) for v in path.make_path(e).flattening(0.001)]


def shape(e):
    return Polygon(points(e))


def pairs(ring):
    return {frozenset((a, b)) for a, b in zip(ring, ring[1:])}


LETTERS = {}
for letter, strokes in GLYPHS.items():
    sides = set()
    for stroke in strokes.split():
        sides |= pairs([(int(stroke[i]), int(stroke[i + 1])) for i in range(0, len(stroke), 2)])
    LETTERS[frozenset(sides)] = letter


def read(strokes):
    """The word that strokes make: their height is 6 units, letters follow each other every 6."""
    xs = [p[0] for s in strokes for p in s]
    ys = [p[1] for s in strokes for p in s]
    unit = (max(ys) - min(ys)) / 6
    # the first letter may begin 1 unit within its field; tried both ways
    for inset in (0, 1):
        sides = {}
        for s in strokes:
            grid = [((p[0] - min(xs)) / unit + inset, (p[1] - min(ys)) / unit) for p in s]
            field = int((min(g[0] for g in grid) + 0.1) // 6)
            assert all(abs(c - round(c)) < 0.01 for g in grid for c in g), "not on the grid"
            sides.setdefault(field, set()).update(pairs([(round(g[0]) - 6 * field, round(g[1])) for g in grid]))
        word = [LETTERS.get(frozenset(sides[f])) for f in sorted(sides)]
        if all(word):
            return "".join(word)
    raise AssertionError("no letters: %s" % strokes)


class Board:
    def __init__(self, file):
        self.doc = ezdxf.readfile(file)
        self.odd = len(self.doc.audit().errors)
        self.by = {}
        self.labels = []
        notes = 0
        seen = set()
        for e in self.doc.modelspace():
            kind = e.dxftype()
            m = re.fullmatch(r"(POCKET|HOLE|CUT|RAMP)_D([0-9P]+)_Z([0-9P]+)", e.dxf.layer)
            if m:
                tool, depth = (float(g.replace("P", ".")) for g in m.groups()[1:])
                self.by.setdefault(m[1], []).append((shape(e), tool, depth))
                self.odd += kind not in ("LWPOLYLINE", "CIRCLE") or (kind == "LWPOLYLINE" and not e.closed)
            elif e.dxf.layer == "LABEL":
                self.labels.append(points(e))
                self.odd += kind != "LWPOLYLINE"
            else:
                notes += 1
                self.odd += kind != "MTEXT" or e.dxf.layer != "NOTE"
            if kind == "LWPOLYLINE":
                key = tuple(sorted(tuple(round(v, 3) for v in p[:2]) for p in e.get_points("xyb")))
                self.odd += key in seen
                seen.add(key)
        self.odd += notes != 1
        for s, tool, depth in self.all("POCKET", "HOLE", "CUT", "RAMP"):
            self.odd += s.bounds[0] < -8 or s.bounds[1] < -8
        self.odd += min(o.bounds[i] for o, t, d in self.all("CUT") for i in (0, 1)) < 0

    def all(self, *operations):
        return [x for o in operations for x in self.by.get(o, [])]


def swept(area, tool):
    """What a cutter takes that clears a line's inside."""
    return area.buffer(-tool / 2, 64).buffer(tool / 2, 64)


def kept(outline, tool):
    """What is left of a part when a cutter has gone round it: no corner inwards is sharper than the cutter."""
    return outline.buffer(tool / 2, 64).buffer(-tool / 2, 64)


floor = ezdxf.readfile(kit / "drawing.dxf")
outline = [shape(e) for e in floor.modelspace() if e.dxf.layer == "FLOOR" and e.dxftype() == "LWPOLYLINE"][0]
planned = unary_union([shape(e) for e in floor.modelspace() if e.dxf.layer == "CHANNEL"])
channel, boards, outer = data["channel"], data["boards"], data["pipe"]["outer"]
tolerance, gap = boards["tolerance"], boards["jointGap"]
elements = [e for l in data["loops"] for e in l["elements"]]


def line_of(e):
    if e["kind"] == "run":
        return LineString([e["from"], e["to"]])
    (x, y), (fx, fy) = e["centre"], e["from"]
    start, turn = math.atan2(fy - y, fx - x), math.radians(e["turn"])
    steps = [start + turn * k / 90 for k in range(91)]
    return LineString([(x + e["radius"] * math.cos(a), y + e["radius"] * math.sin(a)) for a in steps])


lines = [line_of(e) for e in elements]


def crossings(joints):
    """(place, joint, straight run) of each place where pipe crosses a joint."""
    found = []
    for j in joints:
        joint = LineString([j["from"], j["to"]])
        for e, line in zip(elements, lines):
            meet = line.intersection(joint)
            for p in getattr(meet, "geoms", [meet]):
                if p.geom_type == "Point" and not any(p.distance(q) < 1 for q, *_ in found):
                    room = min(p.distance(Point(e["from"])), p.distance(Point(e["to"])))
                    found.append((p, joint, line, e["kind"] == "run" and room > FLARE_LENGTH + 1.5))
    return found


def flares(places, width):
    """What a groove is wider beside joints: from nothing, 20 mm away from the board's edge, to the flare at it."""
    all = []
    for p, joint, line, straight in places:
        if straight:
            a, b = (line.interpolate(line.project(p) + d) for d in (-1, 1))
            ux, uy = (b.x - a.x) / 2, (b.y - a.y) / 2
            far, half = FLARE_LENGTH + gap / 2, width / 2
            corners = [(-far, half), (0, half + FLARE), (far, half), (far, -half), (0, -half - FLARE), (-far, -half)]
            all.append(Polygon([(p.x + s * ux - t * uy, p.y + s * uy + t * ux) for s, t in corners]))
    return unary_union(all)


def passes(place, joint, line, bodies, cuts, shift):
    """Whether a disc of the pipe's diameter gets from one side of a joint to the other with one side's boards shifted."""
    (ax, ay), (bx, by) = joint.coords
    length = joint.length
    ux, uy = (bx - ax) / length, (by - ay) / length
    window = place.buffer(30)
    solid = []
    for label, body in bodies.items():
        here = body.difference(cuts[label]).intersection(window)
        if not here.is_empty:
            c = body.intersection(window).centroid
            left = ux * (c.y - ay) - uy * (c.x - ax) > 0
            solid.append(affinity.translate(here, shift * ux, shift * uy) if left else here)
    free = window.difference(unary_union(solid)).buffer(-outer / 2 + 0.01, 32)
    at = line.project(place)
    ends = [line.interpolate(at + d) for d in (-12, 12)]
    return any(all(part.distance(q) < 1.2 for q in ends) for part in getattr(free, "geoms", [free]))


for layer in boards["layers"]:
    role = layer["role"]
    spoilt = odd = 0.0
    bodies, cuts = {}, {}
    parts = {p["label"]: p for p in layer["parts"]}
    for b, file in enumerate(layer["files"]):
        board = Board(kit / file)
        odd += board.odd
        outlines = board.all("CUT")
        words = {}
        for i, (outlined, tool, depth) in enumerate(outlines):
            odd += abs(depth - layer["thickness"]) > 1e-9
            strokes = [s for s in board.labels if outlined.contains(LineString(s))]
            words[i] = read(strokes)
            for other, *_ in outlines[:i]:
                spoilt += outlined.buffer(tool).difference(outlined).buffer(-0.001).intersection(other).area
                spoilt += other.buffer(tool).difference(other).buffer(-0.001).intersection(outlined).area
        assert sorted(words.values()) == sorted(l for l, p in parts.items() if p["board"] == b), words
        pockets = [(swept(s, t), s) for s, t, d in board.all("POCKET")]
        for s, t, d in board.all("POCKET"):
            odd += abs(d - channel["depth"]) > 0.01 or abs(t - channel["cutter"]) > 0.01
        for i, (outlined, tool, depth) in enumerate(outlines):
            part = parts[words[i]]
            edge = affinity.rotate(Polygon(part["edge"]), 90 * part["quarterTurns"], origin=(0, 0))
            dx, dy = outlined.bounds[0] - edge.bounds[0], outlined.bounds[1] - edge.bounds[1]

            def home(s):
                return affinity.rotate(affinity.translate(s, -dx, -dy), -90 * part["quarterTurns"], origin=(0, 0))

            body = kept(outlined, tool)
            for hole, t, d in board.all("HOLE"):
                if outlined.contains(hole):
                    body = body.difference(swept(hole, t))
            mine = [c for c, s in pockets if s.intersection(outlined).area > 0.5 * s.area]
            for c, s in pockets:
                if all(c is not m for m in mine):
                    spoilt += c.intersection(outlined.buffer(-0.001)).area
            bodies[words[i]] = home(body)
            cuts[words[i]] = home(unary_union(mine)).intersection(home(body)) if mine else Polygon()
            odd += bool(mine) and role != "routed"
    # neighbours lie beside each other, not corner to corner
    near = [(bodies[a], bodies[c]) for a in bodies for c in bodies if a < c]
    gaps = [a.distance(c) for a, c in near if a.buffer(gap + 5, cap_style=2, join_style=2).intersection(c).area > 20 * gap + 50]
    whole = unary_union(list(bodies.values()))
    corners = list(outline.exterior.coords)
    if not outline.exterior.is_ccw:
        corners.reverse()
    walls, room = [], outline.buffer(-tolerance, join_style=2)
    for k, (p, q) in enumerate(zip(corners, corners[1:])):
        if k in longer:
            ux, uy = (q[0] - p[0]) / math.dist(p, q), (q[1] - p[1]) / math.dist(p, q)
            room = room.union(LineString([p, q]).buffer(50, cap_style=2))
        else:
            walls.append(LineString([p, q]).distance(whole))
    print(role, "spoilt", "%.3f" % spoilt)
    print(role, "joint", "%.3f %.3f" % (min(gaps), max(gaps)))
    print(role, "wall", "%.3f %.3f" % (min(walls), max(walls)), layer["perimeterGap"])
    print(role, "stuck", "%.3f" % whole.difference(room).area)
    if role == "routed":
        places = crossings(layer["joints"])
        wide = flares(places, channel["width"])
        wanted = planned.union(wide)
        cut = unary_union(list(cuts.values()))
        over = cut.difference(wanted.buffer(EXACT)).area
        lack = wanted.intersection(whole).buffer(-EXACT).difference(cut).area
        flare = [
            1 - wide.difference(planned).intersection(whole).intersection(p.buffer(25)).difference(cut.buffer(EXACT)).area
            / max(1e-9, wide.difference(planned).intersection(whole).intersection(p.buffer(25)).area)
            for p, j, l, straight in places
            if straight
        ]
        tight = [p for p, j, l, s in places for shift in (-1, 1) if not passes(p, j, l, bodies, cuts, shift)]
        print(role, "over", "%.3f" % over)
        print(role, "lack", "%.3f" % lack)
        print(role, "flare", "%.3f" % min(flare, default=1))
        print(role, "crossings", len(places))
        print(role, "tight", len(tight), *["%.0f,%.0f" % (p.x, p.y) for p in tight])
    print(role, "odd", "%d" % odd)
