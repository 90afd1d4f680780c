"""A cutter follows the board drawings of a kit, and its parts are put back on the floor: python3 lay_boards.py KIT

Reads what the layers say (operation, tool, depth in their names), cuts with a disc of the tool's diameter, finds each outline's
label and place in kit.json, and lays it where the label belongs. Prints, a line a layer: material, parts, largest area in mm2
that is cut where the drawing of the floor has no groove (beyond 1.6 mm, what flares may take), largest that is not cut,
smallest and largest gap at joints; and `shapes` with the count of odd things in the files."""
import json
import re
import sys
from pathlib import Path

import ezdxf
from ezdxf import path
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

kit = Path(sys.argv[1])
data = json.load(open(kit / "kit.json"))


def shape(e):
    if e.dxftype() == "CIRCLE":
        return Point(e.dxf.center.x, e.dxf.center.y).buffer(e.dxf.radius, 128)
    return Polygon([(v.x, v.y) for v in path.make_path(e).flattening(0.001)])


def cuts(doc, operation):
    found = []
    for e in doc.modelspace():
        m = re.fullmatch(operation + r"_D([0-9P]+)_Z([0-9P]+)", e.dxf.layer)
        if m:
            found.append((shape(e), float(m[1].replace("P", ".")), float(m[2].replace("P", "."))))
    return found


floor = ezdxf.readfile(kit / "drawing.dxf")
planned = unary_union([shape(e) for e in floor.modelspace() if e.dxf.layer == "CHANNEL"])
odd = 0
numbers = {}
for layer in data["boards"]["layers"]:
    back = {}
    cut_back = {}
    over = lack = 0.0
    for b in range(layer["bought"]):
        n = numbers[layer["material"]] = numbers.get(layer["material"], 0) + 1
        doc = ezdxf.readfile(kit / ("boards-%s-%02d.dxf" % (layer["material"], n)))
        odd += len(doc.audit().errors)
        seen = set()
        for e in doc.modelspace():
            odd += e.dxftype() not in ("LWPOLYLINE", "CIRCLE", "MTEXT")
            if e.dxftype() == "LWPOLYLINE":
                points = [tuple(round(v, 4) for v in p) for p in e.get_points("xyb")]
                key = tuple(sorted(points))
                odd += key in seen or (not e.closed and e.dxf.layer != "LABEL")
                seen.add(key)
                for i, p in enumerate(points):
                    q = points[(i + 1) % len(points)]
                    odd += e.closed and p[:2] == q[:2]
                    odd += abs(p[2]) > 1
        outlines = [o for o, tool, depth in cuts(doc, "CUT")]
        pockets = cuts(doc, "POCKET")
        for part in [p for p in layer["parts"] if p["board"] == b]:
            mine = [o for o in outlines if abs(o.bounds[0] - part["at"][0]) < 0.01 and abs(o.bounds[1] - part["at"][1]) < 0.01]
            assert len(mine) == 1, part["label"]
            outline = mine[0]
            edge = Polygon(part["edge"])
            turned = affinity.rotate(edge, 90 * part["quarterTurns"], origin=(0, 0))
            dx, dy = part["at"][0] - turned.bounds[0], part["at"][1] - turned.bounds[1]

            def home(s):
                return affinity.rotate(affinity.translate(s, -dx, -dy), -90 * part["quarterTurns"], origin=(0, 0))

            body = home(outline)
            for hole, tool, depth in cuts(doc, "HOLE"):
                if outline.contains(hole):
                    body = body.difference(home(hole))
            back[part["label"]] = body
            if layer["role"] == "routed":
                channel = data["channel"]
                cut = []
                for pocket, tool, depth in pockets:
                    assert abs(depth - channel["depth"]) < 0.01 and abs(tool - channel["cutter"]) < 0.01
                    cut.append(pocket.buffer(-tool / 2, 64).buffer(tool / 2, 64))
                cut = home(unary_union(cut)).intersection(body) if cut else Polygon()
                cut_back[part["label"]] = cut
                here = planned.intersection(body)
                over = max(over, cut.difference(planned.buffer(1.6)).area)
                far = unary_union([LineString([j["from"], j["to"]]).buffer(21.1) for j in layer["joints"]])
                over = max(over, cut.difference(planned.buffer(0.05)).difference(far).area)
                lack = max(lack, here.buffer(-0.05).difference(cut).area)
    gaps = []
    labels = sorted(back)
    for i, a in enumerate(labels):
        for c in labels[:i]:
            d = back[a].distance(back[c])
            if d < 20:
                gaps.append(d)
    print("%s %d %.3f %.3f %.3f %.3f" % (layer["role"], len(back), over, lack, min(gaps, default=1), max(gaps, default=1)))
    if layer["role"] == "routed":
        # a pipe's width for 5 mm on either side of every joint, with the boards of one side shifted by 1 mm along it
        tight = crossed = 0
        outer = data["pipe"]["outer"]
        for j in layer["joints"]:
            line = LineString([j["from"], j["to"]])
            upright = j["from"][0] == j["to"][0]
            for loop in data["loops"]:
                for e in loop["elements"]:
                    run = LineString([e["from"], e["to"]])
                    if e["kind"] != "run" or not run.crosses(line):
                        continue
                    at = run.intersection(line)
                    if min(at.distance(Point(e["from"])), at.distance(Point(e["to"]))) < 50:
                        continue
                    crossed += 1
                    near = run.intersection(at.buffer(5)).buffer(outer / 2, cap_style=2)
                    for s in (-1, 1):
                        shifted = affinity.translate(near, 0 if upright else s, s if upright else 0)
                        for label, cut in cut_back.items():
                            tight += shifted.intersection(back[label]).difference(cut).area > 0.05
        assert crossed > 0
        print("tight %d" % tight)
print("shapes %d" % odd)
