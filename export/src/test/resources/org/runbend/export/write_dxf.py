"""Writes one drawing in every version and form that ezdxf has, and prints what is in it, a fact a line."""
import math
import os
import sys
from collections import defaultdict

import ezdxf
from ezdxf import path
from ezdxf.disassemble import recursive_decompose
from ezdxf.math import Vec3, closed_uniform_bspline

VERSIONS = ["R12", "R2000", "R2004", "R2007", "R2010", "R2013", "R2018"]


def lines(doc):
    m = doc.modelspace()
    m.add_line((0, 0), (3100, 0), {"layer": "LINES"})
    m.add_line((3100, 0), (3100.5, 1700.25), {"layer": "LINES"})
    m.add_arc((500, 600), 75, 350, 80, dxfattribs={"layer": "ARCS"})
    m.add_arc((500, 600), 30, 90, 90 + 359, dxfattribs={"layer": "ARCS"})
    m.add_circle((900, 300), 42.5, {"layer": "CIRCLES"})
    m.add_circle((-900, 300), 42.5, {"layer": "CIRCLES", "extrusion": (0, 0, -1)})
    m.add_arc((-900, 300), 60, 10, 100, dxfattribs={"layer": "ARCS", "extrusion": (0, 0, -1)})
    m.add_circle((10, 20), 50, {"layer": "TILTED", "extrusion": (0.3, -0.4, 0.8)})
    m.add_polyline2d([(0, 0, 0.5), (100, 0, 0), (100, 80, -1), (0, 80, 0)], format="xyb",
                     dxfattribs={"layer": "OLD_POLY", "flags": 1})
    m.add_polyline3d([(0, 0, 5), (60, 10, 5), (70, 90, 5)], dxfattribs={"layer": "SOLID_POLY"})
    m.add_point((12.5, -7), {"layer": "POINTS"})
    m.add_text("Boden \u00df %%d", dxfattribs={"layer": "WORDS", "height": 20, "insert": (5, 6)})
    m.add_text("middle", dxfattribs={"layer": "WORDS", "height": 20, "halign": 1, "valign": 2, "align_point": (70, 80)})


def curves(doc):
    m = doc.modelspace()
    m.add_lwpolyline([(0, 0, 0.25), (400, 0, -0.7), (400, 300, 0), (50, 250, 1)], format="xyb", close=True,
                     dxfattribs={"layer": "LIGHT"})
    m.add_lwpolyline([(10, 0, 0.25), (400, 20, -0.7), (380, 300, 0)], format="xyb",
                     dxfattribs={"layer": "LIGHT", "extrusion": (0, 0, -1), "elevation": 3})
    m.add_ellipse((700, 500), (300, 100), 0.4, dxfattribs={"layer": "OVALS"})
    m.add_ellipse((700, 500), (-30, 100), 0.7, 1.0, 5.5, dxfattribs={"layer": "OVALS"})
    m.add_ellipse((0, 0), (0, 80), 1.0, 0.5, 2.0, dxfattribs={"layer": "OVALS", "extrusion": (0, 0, -1)})
    m.add_open_spline([(0, 0), (100, 300), (400, -200), (600, 100), (700, 700)], dxfattribs={"layer": "SPLINES"})
    m.add_rational_spline([(0, 0), (200, 0), (200, 200), (0, 300)], [1, 3, 0.5, 1], dxfattribs={"layer": "SPLINES"})
    closed = closed_uniform_bspline([Vec3(0, 0), Vec3(100, 0), Vec3(150, 90), Vec3(70, 160), Vec3(0, 90)])
    m.add_spline(dxfattribs={"layer": "SPLINES"}).apply_construction_tool(closed)
    m.add_spline([(0, 0), (100, 20), (220, -30), (300, 100), (310, 220)], dxfattribs={"layer": "THROUGH"})
    m.add_mtext("{\\fArial|b1;Wheel} arch\\PD\u00e9p\u00f4t \u0141", {"layer": "WORDS", "char_height": 12, "insert": (9, 9)})


def blocks(doc, light):
    # Everything is inserted on layer 0: ezdxf leaves what is on layer 0 of a block where it is.
    m = doc.modelspace()
    inner = doc.blocks.new("INNER", base_point=(10, 5))
    inner.add_line((10, 5), (110, 5), {"layer": "0"})
    inner.add_arc((60, 5), 50, 0, 180, dxfattribs={"layer": "FIXED"})
    inner.add_circle((60, 40), 10, {"layer": "0"})
    if light:
        inner.add_lwpolyline([(0, 0, 1), (50, 0, 0), (50, 40, 0.3)], format="xyb", close=True)
    outer = doc.blocks.new("OUTER")
    outer.add_blockref("INNER", (30, 40), {"rotation": 30, "xscale": 2, "yscale": 2, "layer": "0"})
    outer.add_blockref("INNER", (300, 40), {"rotation": 300, "xscale": -1})
    m.add_blockref("OUTER", (1000, 2000), {"rotation": 45, "xscale": 1.5, "yscale": 1.5})
    # Not OUTER: ezdxf 0.18 loses the shear of blocks that are turned within a squeezed one.
    m.add_blockref("INNER", (1000, 2000), {"rotation": 10, "xscale": 3, "yscale": 0.5})
    m.add_blockref("INNER", (50, 60), {"extrusion": (0, 0, -1), "rotation": 20})
    m.add_blockref("INNER", (0, -900), {"column_count": 3, "row_count": 2, "column_spacing": 200, "row_spacing": 90,
                                        "rotation": 15, "xscale": 0.5, "yscale": 0.5})


def build(version):
    doc = ezdxf.new(version)
    doc.units = ezdxf.units.CM
    doc.header["$MEASUREMENT"] = 1
    lines(doc)
    if version != "R12":
        curves(doc)
    blocks(doc, version != "R12")
    return doc


def facts(doc):
    lengths = defaultdict(float)
    points = defaultdict(list)
    for e in recursive_decompose(doc.modelspace()):
        kind = e.dxftype()
        if kind == "POINT":
            yield ["point", e.dxf.layer, e.dxf.location.x, e.dxf.location.y]
        elif kind == "TEXT":
            yield ["text", e.dxf.layer, ascii(e.plain_text())]
        elif kind == "MTEXT":
            yield ["text", e.dxf.layer, ascii(e.plain_text())]
        else:
            # ezdxf 0.18 makes no path of a spline whose ends are not clamped, but evaluates it.
            spline = kind == "SPLINE" and len(e.control_points) > 0
            drawn = e.construction_tool().flattening(0.0005) if spline else path.make_path(e).flattening(0.0005, segments=64)
            v = [Vec3(p.x, p.y, 0) for p in drawn]
            lengths[e.dxf.layer] += sum(a.distance(b) for a, b in zip(v, v[1:]))
            points[e.dxf.layer] += v
    for layer in sorted(lengths):
        xs = [p.x for p in points[layer]]
        ys = [p.y for p in points[layer]]
        yield ["length", layer, lengths[layer], min(xs), min(ys), max(xs), max(ys)]


for version in VERSIONS:
    doc = build(version)
    for form in ["asc", "bin"]:
        name = version + "." + form + ".dxf"
        doc.saveas(os.path.join(sys.argv[1], name), fmt=form)
        for fact in facts(doc):
            print(name, *fact, sep="\t")
        print(name, "unit", 0 if version == "R12" else 5, sep="\t")
