"""Reads DXF files with ezdxf and prints as read_dxf.js does: things by layer, length of polylines by layer, things on paper;
a line `file` before each."""
import math
import sys

import ezdxf

for name in sys.argv[1:]:
    counts, lengths = {}, {}
    document = ezdxf.readfile(name)
    for e in document.modelspace():
        counts[e.dxf.layer] = counts.get(e.dxf.layer, 0) + 1
        if e.dxftype() == "LWPOLYLINE":
            points = list(e.get_points("xyb"))
            for a, b in zip(points, points[1:] + points[:1] if e.closed else points[1:]):
                quarter = math.atan(abs(a[2]))
                chord = math.dist(a[:2], b[:2])
                length = chord * 2 * quarter / math.sin(2 * quarter) if quarter else chord
                lengths[e.dxf.layer] = lengths.get(e.dxf.layer, 0) + length
    print("file")
    for layer in sorted(counts):
        print("count", layer, counts[layer])
    for layer in sorted(lengths):
        print("length", layer, "%.4f" % lengths[layer])
    print("paper", sum(1 for layout in document.layouts if layout.name != "Model" for e in layout if e.dxftype() != "VIEWPORT"))
