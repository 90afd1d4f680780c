"""Reads a DXF file with ezdxf and prints what it found, one fact a line."""
import math
import sys
from collections import Counter

import ezdxf
from ezdxf import bbox
from ezdxf import recover

doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
print("version", doc.dxfversion)
print("errors", len(audit.errors))
print("fixes", len(audit.fixes))
print("insunits", doc.header["$INSUNITS"])
print("measurement", doc.header["$MEASUREMENT"])
seed = int(str(doc.header.get("$HANDSEED", "0")), 16)
print("layouts", len(doc.blocks))
model = doc.modelspace()
for (layer, kind), count in sorted(Counter((e.dxf.layer, e.dxftype()) for e in model).items()):
    print("count", layer, kind, count)
for e in model.query("LWPOLYLINE"):
    parts = Counter(p.dxftype() for p in e.virtual_entities())
    radii = sorted({round(p.dxf.radius, 6) for p in e.virtual_entities() if p.dxftype() == "ARC"})
    print("parts", e.dxf.layer, "closed" if e.closed else "open", parts["LINE"], parts["ARC"],
          "r=" + ",".join("%.3f" % r for r in radii), "bulge<=1" if all(abs(v[4]) <= 1 for v in e) else "bulge>1")
def length(part):
    if part.dxftype() == "ARC":
        return part.dxf.radius * math.radians((part.dxf.end_angle - part.dxf.start_angle) % 360)
    return part.dxf.start.distance(part.dxf.end)


for e in model.query("LWPOLYLINE"):
    print("length", e.dxf.layer, "%.4f" % sum(length(p) for p in e.virtual_entities()))
for e in model.query("DIMENSION"):
    block = doc.blocks.get(e.dxf.geometry)
    print("dimension", "%.3f" % e.get_measurement(), Counter(p.dxftype() for p in block)["LINE"], e.dxf.text)
box = bbox.extents(model.query("LWPOLYLINE"))
if box.has_data:
    print("box %.3f %.3f %.3f %.3f" % (box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y))
recovered, _ = recover.readfile(sys.argv[1])
for e in recovered.modelspace().query("TEXT MTEXT"):
    print("text", ascii(e.dxf.text if e.dxftype() == "TEXT" else e.plain_text()))
