"""Floors as customers draw them, written with ezdxf into a folder; prints file, area of the floor (mm2), area of keep-outs.

Areas are those of the shapes meant, from ezdxf's own points, before corners are missed and blocks are turned.
"""
import math
import sys

import ezdxf
from ezdxf.math import area

folder = sys.argv[1]
SHAPES = {
    "ell": [(0, 0), (3000, 0), (3000, 1200), (1800, 1200), (1800, 2000), (0, 2000)],
    "skew": [(0, 0), (2800, 150), (2500, 1700), (200, 1500)],
    "hull": [(0, 0), (2000, 0), (2600, 700), (2000, 1400), (0, 1400)],
}
SLOT = [(0, 0, 0), (200, 0, 1), (200, 60, 0), (0, 60, 1)]


def missed(a, b, first, last):
    """The side from a to b, longer at its ends by so much (shorter where under 0)."""
    length = math.dist(a, b)
    ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    return (a[0] - ux * first, a[1] - uy * first), (b[0] + ux * last, b[1] + uy * last)


number = 0
for version in ("R12", "R2000", "R2010", "R2018"):
    for name, corners in SHAPES.items():
        doc = ezdxf.new(version, setup=False)
        doc.header["$INSUNITS"] = 4
        doc.layers.new("WALL")
        doc.layers.new("SLOT")
        msp = doc.modelspace()
        for i, a in enumerate(corners):
            b = corners[(i + 1) % len(corners)]
            number += 1
            by = [0.45, -0.4, 0.3, -0.2, 0.05, 0.0][number % 6]
            start, end = missed(a, b, by, [0.4, 0.2, -0.3][number % 3])
            if number % 2:
                start, end = end, start
            msp.add_line(start, end, dxfattribs={"layer": "WALL"})
        block = doc.blocks.new("SLOT")
        if version == "R12":
            block.add_polyline2d(SLOT, format="xyb", close=True, dxfattribs={"layer": "SLOT"})
        else:
            block.add_lwpolyline(SLOT, format="xyb", close=True, dxfattribs={"layer": "SLOT"})
        msp.add_blockref("SLOT", (700, 600), dxfattribs={"rotation": 30, "layer": "SLOT"})
        msp.add_blockref("SLOT", (1200, 900), dxfattribs={"xscale": -1, "rotation": -45, "layer": "SLOT"})
        file = name + "-" + version + ".dxf"
        doc.saveas(folder + "/" + file)
        print(file, abs(area(corners)), 200 * 60 + math.pi * 900, sep="\t")
