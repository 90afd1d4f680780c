"""Reads a DXF file with ezdxf and prints its audit, and what lies in model space, on paper and in its blocks."""
import sys
from collections import Counter

import ezdxf

doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print("version", doc.dxfversion, "errors", len(audit.errors), "fixes", len(audit.fixes))
for layout in doc.layouts:
    if layout.name == "Model" or len(layout):
        kinds = sorted(Counter(e.dxftype() for e in layout).items())
        print("layout", layout.name, " ".join("%s=%d" % k for k in kinds))
model = doc.modelspace()
for e in model.query("INSERT"):
    for part in e.virtual_entities():
        if part.dxftype() == "CIRCLE":
            c = part.dxf.center
            print("inserted circle %.3f %.3f r=%.3f" % (c.x, c.y, part.dxf.radius))
for e in model.query("HATCH"):
    print("hatch", e.dxf.solid_fill, [len(p.vertices) for p in e.paths], ["%.3f" % v[2] for p in e.paths for v in p.vertices if v[2]])
for e in model.query("POLYLINE"):
    print("polyline", "closed" if e.is_closed else "open", ["%g %g %.4f" % (v.dxf.location.x, v.dxf.location.y, v.dxf.bulge) for v in e.vertices])
for layout in doc.layouts:
    for e in layout.query("VIEWPORT"):
        d = e.dxf
        if d.id > 1:
            print("view", "%g x %g of %g %g, height %g" % (d.width, d.height, d.view_center_point.x, d.view_center_point.y, d.view_height))
