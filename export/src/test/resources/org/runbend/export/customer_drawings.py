"""Drawings as customers send them, written with ezdxf into a folder; what a person expects of each stands in
customer_drawings.md. Floors are invented; a name of the table before its first blank is a file here.
"""
import math
import sys

import ezdxf
from ezdxf.math import BSpline

folder = sys.argv[1]


def made(name, units=4, version="R2010"):
    """A new drawing that is written at the end."""
    doc = ezdxf.new(version, setup=False)
    doc.header["$INSUNITS"] = units
    drawings[name] = doc
    return doc.modelspace()


def box(msp, layer, x, y, w, h):
    msp.add_lwpolyline([(x, y), (x + w, y), (x + w, y + h), (x, y + h)], close=True, dxfattribs={"layer": layer})


def lines(msp, layer, points, closed=True):
    ends = points[1:] + points[:1] if closed else points[1:]
    for a, b in zip(points, ends):
        msp.add_line(a, b, dxfattribs={"layer": layer})


def words(msp, layer, x, y, text, height=40):
    msp.add_text(text, dxfattribs={"layer": layer, "height": height, "insert": (x, y)})


def rounded(x, y, w, h, r):
    """Vertices and bulges of a rectangle with round corners."""
    b = math.tan(math.pi / 8)
    return [(x + r, y, 0), (x + w - r, y, b), (x + w, y + r, 0), (x + w, y + h - r, b), (x + w - r, y + h, 0),
            (x + r, y + h, b), (x, y + h - r, 0), (x, y + r, b)]


def corner_points(w, h, r, n):
    """The same rectangle at the origin with n chords at each corner."""
    points = []
    for cx, cy, start in ((w - r, r, -90), (w - r, h - r, 0), (r, h - r, 90), (r, r, 180)):
        for i in range(n + 1):
            t = math.radians(start + 90 * i / n)
            points.append((cx + r * math.cos(t), cy + r * math.sin(t)))
    return points


def title(msp, x, y, layer="TEXT"):
    """A title block whose lower right corner is given, without a line of its own."""
    for i, text in enumerate(("Scale 1:10", "Drawn by: M. Brenner", "Date 2026-03-02", "Sheet 1 of 1")):
        words(msp, layer, x - 900, y + 60 + 70 * i, text)


def ring(x, y, r, n):
    return [(x + r * math.cos(2 * math.pi * i / n), y + r * math.sin(2 * math.pi * i / n)) for i in range(n)]


def walls(t=60):
    """Outer and inner corners of a wall round a room of 3000 x 1700."""
    return [(-t, -t), (3000 + t, -t), (3000 + t, 1700 + t), (-t, 1700 + t)], [(0, 0), (3000, 0), (3000, 1700), (0, 1700)]


def band(door=(1200, 1800), t=60):
    """The edge of that wall with a door in its lower side, once round."""
    outer, inner = walls(t)
    a, b = door
    return [(b, -t), outer[1], outer[2], outer[3], outer[0], (a, -t), (a, 0), inner[0], inner[3], inner[2], inner[1], (b, 0)]


drawings = {}

# Frames of sheets.
msp = made("frame-a3")
box(msp, "0", 0, 0, 4200, 2970)
box(msp, "0", 3000, 0, 1200, 400)
title(msp, 4100, 20)
box(msp, "0", 400, 800, 3100, 1700)
msp.add_circle((900, 1200), 25, dxfattribs={"layer": "0"})

msp = made("frame-border")
box(msp, "0", 200, 100, 3900, 2770)
title(msp, 4000, 120)
box(msp, "0", 400, 800, 3100, 1700)

msp = made("frame-ansi")
box(msp, "0", 0, 0, 4318, 2794)
title(msp, 4200, 20)
box(msp, "0", 500, 700, 3000, 1800)

msp = made("frame-metres", units=6)
box(msp, "PLAN", 0, 0, 5.94, 4.2)
for i, text in enumerate(("Scale 1:10", "Date 2026-03-02", "Drawing no. 7")):
    words(msp, "PLAN", 4.6, 0.1 + 0.1 * i, text, 0.06)
box(msp, "PLAN", 1, 1.4, 3.6, 1.8)

msp = made("frame-upright")
box(msp, "0", 0, 0, 2970, 4200)
title(msp, 2900, 20)
lines(msp, "0", [(700, 700), (2200, 700), (2200, 2900), (1600, 3900), (1300, 3900), (700, 2900)])

msp = made("frame-layer")
box(msp, "FRAME", 0, 0, 4000, 2600)
box(msp, "VAN", 400, 400, 3000, 1700)

msp = made("frame-double")
box(msp, "0", 0, 0, 4200, 2970)
box(msp, "0", 200, 100, 3900, 2770)
title(msp, 4000, 120)
box(msp, "0", 500, 800, 3000, 1700)

msp = made("no-frame")
box(msp, "0", 0, 0, 2970, 2100)
box(msp, "0", 400, 400, 600, 500)
msp.add_circle((2000, 1000), 6, dxfattribs={"layer": "0"})
words(msp, "0", 500, 600, "hatch")

msp = made("frame-views")
box(msp, "0", 0, 0, 5940, 4200)
title(msp, 5800, 20)
box(msp, "0", 400, 2200, 3000, 1700)
box(msp, "0", 400, 500, 3000, 1300)

# Several floors.
msp = made("two-floors")
box(msp, "FLOORS", 0, 0, 3000, 1700)
box(msp, "FLOORS", 3500, 0, 2000, 1500)

msp = made("two-layers")
box(msp, "BIG", 0, 0, 3000, 1700)
box(msp, "SMALL", 3500, 0, 2000, 1500)

msp = made("floor-and-table")
box(msp, "0", 0, 0, 3000, 1700)
box(msp, "0", 3500, 0, 700, 500)

# Walls.
outer, inner = walls(50)
msp = made("wall-faces")
lines(msp, "WALL", outer)
lines(msp, "WALL", inner)

msp = made("wall-uneven")
msp.add_lwpolyline([(-60, -60), (3140, -60), (3140, 1760), (-60, 1760)], close=True, dxfattribs={"layer": "WALL"})
msp.add_lwpolyline(inner, close=True, dxfattribs={"layer": "WALL"})

msp = made("wall-arcs")
msp.add_lwpolyline(rounded(-50, -50, 3100, 1800, 350), format="xyb", close=True, dxfattribs={"layer": "WALL"})
msp.add_lwpolyline(rounded(0, 0, 3000, 1700, 300), format="xyb", close=True, dxfattribs={"layer": "WALL"})

msp = made("wall-hatched")
msp.add_lwpolyline(outer, close=True, dxfattribs={"layer": "WALL"})
msp.add_lwpolyline(inner, close=True, dxfattribs={"layer": "WALL"})
hatch = msp.add_hatch(dxfattribs={"layer": "WALL"})
hatch.paths.add_polyline_path(outer, is_closed=True)
hatch.paths.add_polyline_path(inner, is_closed=True, flags=16)

msp = made("band-door")
msp.add_lwpolyline(band(), close=True, dxfattribs={"layer": "WALL"})

msp = made("band-lines")
lines(msp, "WALL", band())

msp = made("band-leaf")
lines(msp, "WALL", band())
msp.add_line((1200, 0), (1200, 600), dxfattribs={"layer": "DOOR"})
msp.add_arc((1200, 0), 600, 0, 90, dxfattribs={"layer": "DOOR"})

msp = made("band-two-doors")
lines(msp, "WALL", [(1200, -60), (-60, -60), (-60, 1760), (900, 1760), (900, 1700), (0, 1700), (0, 0), (1200, 0)])
lines(msp, "WALL", [(1800, -60), (3060, -60), (3060, 1760), (1600, 1760), (1600, 1700), (3000, 1700), (3000, 0), (1800, 0)])

msp = made("band-ell")
lines(msp, "WALL", [(500, -60), (-60, -60), (-60, 2060), (1860, 2060), (1860, 1260), (3060, 1260), (3060, -60), (1200, -60),
                    (1200, 0), (3000, 0), (3000, 1200), (1800, 1200), (1800, 2000), (0, 2000), (0, 0), (500, 0)])

# Lines that do not meet.
square = [(0, 0), (3000, 0), (3000, 1700), (0, 1700)]


def gaps(msp, sizes):
    """The square as lines, each side ending short of the next by so much."""
    for a, b, short in zip(square, square[1:] + square[:1], sizes):
        length = math.dist(a, b)
        end = (a[0] + (b[0] - a[0]) * (1 - short / length), a[1] + (b[1] - a[1]) * (1 - short / length))
        msp.add_line(a, end, dxfattribs={"layer": "EDGE"})


gaps(made("gap"), (0, 2, 0, 0))
gaps(made("gaps"), (2, 3, 0, 1.5))
msp = made("gap-and-hatch")
gaps(msp, (0, 2, 0, 0))
box(msp, "EDGE", 900, 500, 700, 600)
msp = made("gap-and-stubs")
gaps(msp, (0, 2, 0, 0))
msp.add_line((1000, 0), (1000, 300), dxfattribs={"layer": "EDGE"})
msp.add_line((3000, 600), (3400, 600), dxfattribs={"layer": "EDGE"})
msp = made("opening")
lines(msp, "EDGE", [(1820, 0), (3000, 0), (3000, 1700), (0, 1700), (0, 0), (1200, 0)], closed=False)

# Bends that are no arcs.
msp = made("chords")
msp.add_lwpolyline(corner_points(3000, 1700, 300, 12), close=True, dxfattribs={"layer": "F"})

msp = made("chord-lines")
lines(msp, "F", corner_points(3000, 1700, 250, 8))

msp = made("chord-circles")
box(msp, "F", 0, 0, 3000, 1700)
msp.add_lwpolyline(ring(800, 700, 30, 32), close=True, dxfattribs={"layer": "H"})
msp.add_lwpolyline(ring(2000, 900, 6, 12), close=True, dxfattribs={"layer": "H"})

msp = made("octagon")
msp.add_lwpolyline(ring(0, 0, 1300, 8), close=True, dxfattribs={"layer": "F"})

msp = made("splines")
for (cx, cy, start), side in zip(((2700, 300, -90), (2700, 1400, 0), (300, 1400, 90), (300, 300, 180)),
                                 (((300, 0), (2700, 0)), ((3000, 300), (3000, 1400)), ((2700, 1700), (300, 1700)), ((0, 1400), (0, 300)))):
    msp.add_line(*side, dxfattribs={"layer": "F"})
    curve = BSpline.from_arc(ezdxf.math.ConstructionArc((cx, cy), 300, start, start + 90))
    spline = msp.add_rational_spline(curve.control_points, curve.weights(), degree=curve.degree, dxfattribs={"layer": "F"})
    spline.knots = curve.knots()

msp = made("spline-bow")
half = math.asin(800 / 1000)
points = [(2000 - 600 + 1000 * math.cos(half * (i / 8 - 1)), 800 + 1000 * math.sin(half * (i / 8 - 1))) for i in range(17)]
lines(msp, "F", [(2000, 1600), (0, 1600), (0, 0), (2000, 0)], closed=False)
fit = ezdxf.math.fit_points_to_cad_cv(points, tangents=[(math.cos(math.pi / 2 - half), math.sin(math.pi / 2 - half)),
                                                        (-math.cos(math.pi / 2 - half), math.sin(math.pi / 2 - half))])
msp.add_spline(dxfattribs={"layer": "F"}).apply_construction_tool(fit)

msp = made("ellipse-bow")
lines(msp, "F", [(2000, 1600), (0, 1600), (0, 0), (2000, 0)], closed=False)
msp.add_ellipse((2000, 800), major_axis=(900, 0), ratio=800 / 900, start_param=-math.pi / 2, end_param=math.pi / 2,
                dxfattribs={"layer": "F"})

msp = made("spline-free")
lines(msp, "F", [(2000, 1600), (0, 1600), (0, 0), (2000, 0)], closed=False)
msp.add_open_spline([(2000, 0), (2900, 100), (2300, 700), (2900, 1500), (2000, 1600)], degree=3, dxfattribs={"layer": "F"})

# Hatches.
msp = made("hatch")
box(msp, "F", 0, 0, 3000, 1700)
hatch = msp.add_hatch(dxfattribs={"layer": "CUPBOARD"})
hatch.paths.add_polyline_path([(2400, 0), (3000, 0), (3000, 800), (2400, 800)], is_closed=True)

msp = made("hatch-edges")
box(msp, "F", 0, 0, 3000, 1700)
hatch = msp.add_hatch(dxfattribs={"layer": "CUPBOARD"})
edges = hatch.paths.add_edge_path()
edges.add_line((2400, 0), (3000, 0))
edges.add_line((3000, 0), (3000, 600))
edges.add_line((3000, 600), (2700, 600))
edges.add_arc((2700, 300), radius=300, start_angle=90, end_angle=180)
edges.add_line((2400, 300), (2400, 0))

msp = made("cupboard")
box(msp, "F", 0, 0, 3000, 1700)
box(msp, "CUPBOARD", 2400, 0, 600, 800)

# Nothing that an outline could be.
hatch = made("only-hatch").add_hatch(dxfattribs={"layer": "FLOOR PLAN"})
hatch.paths.add_polyline_path(square, is_closed=True)

msp = made("only-paper")
box(msp.doc.layout("Layout1"), "0", 0, 0, 3000, 1700)

msp = made("only-faces")
msp.add_3dface([(0, 0, 0), (3000, 0, 0), (3000, 1700, 0), (0, 1700, 0)])
msp.add_3dface([(0, 0, 0), (3000, 0, 0), (3000, 0, 1900), (0, 0, 1900)])

made("only-multiline").add_mline(square, close=True)

msp = made("only-reference")
msp.add_blockref("VAN-2019", (0, 0))

msp = made("only-words")
words(msp, "0", 0, 0, "see photo")
msp.add_point((100, 100))

# More of the same kinds, added later.
msp = made("frame-plain")
box(msp, "0", 0, 0, 4000, 2500)
box(msp, "0", 400, 400, 3000, 1700)
msp.add_circle((900, 1200), 25, dxfattribs={"layer": "0"})

msp = made("frame-lines", units=1)
lines(msp, "0", [(0, 0), (120, 0), (165.4, 0), (165.4, 15), (165.4, 117), (0, 117)])
lines(msp, "0", [(120, 0), (120, 15), (165.4, 15)], closed=False)
msp.add_line((120, 7), (165.4, 7), dxfattribs={"layer": "0"})
msp.add_mtext("Title: {\\fArial;Boat}\\PDrawing no. 12", dxfattribs={"layer": "0", "insert": (122, 13), "char_height": 2})
words(msp, "0", 122, 2, "SCALE 1:10", 2)
box(msp, "0", 20, 30, 118.11, 66.93)

msp = made("frame-block")
block = msp.doc.blocks.new("VAN")
block.add_lwpolyline([(0, 0), (1.7, 0), (1.7, 3), (0, 3)], close=True)
box(msp, "0", 0, 0, 4200, 2970)
title(msp, 4100, 20)
msp.add_blockref("VAN", (3600, 800), dxfattribs={"xscale": 1000, "yscale": 1000, "rotation": 90})

msp = made("wall-three")
for t in (0, 25, 60):
    msp.add_lwpolyline(walls(t)[0] if t else walls()[1], close=True, dxfattribs={"layer": "BODY"})

msp = made("carpet")
box(msp, "FLOOR", 0, 0, 3000, 1700)
box(msp, "CARPET", 100, 100, 2800, 1500)

msp = made("wall-open")
lines(msp, "WALL", [(1800, -60), (3060, -60), (3060, 1760), (-60, 1760), (-60, -60), (1200, -60)], closed=False)
lines(msp, "WALL", [(1800, 0), (3000, 0), (3000, 1700), (0, 1700), (0, 0), (1200, 0)], closed=False)

msp = made("facets")
hull = [(0, 0), (2000, 0)] + [(2000 + 1500 * math.sin(math.radians(a)), 1500 - 1500 * math.cos(math.radians(a)))
                              for a in (12, 24, 36, 48)] + [(2800, 1700), (0, 1700)]
msp.add_lwpolyline(hull, close=True, dxfattribs={"layer": "F"})

msp = made("gap-at-arcs")
for (cx, cy, start), side in zip(((2700, 300, -90), (2700, 1400, 0), (300, 1400, 90), (300, 300, 180)),
                                 (((301, 0), (2699, 0)), ((3000, 301), (3000, 1399)), ((2699, 1700), (301, 1700)), ((0, 1399), (0, 301)))):
    msp.add_line(*side, dxfattribs={"layer": "F"})
    msp.add_arc((cx, cy), 300, start, start + 90, dxfattribs={"layer": "F"})

for name, doc in drawings.items():
    doc.saveas(folder + "/" + name + ".dxf")
    print(name)
