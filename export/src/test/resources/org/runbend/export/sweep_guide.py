"""Sweeps a guide bush and a cutter through the slots of a guide's drawing: python3 sweep_guide.py FILE BUSH CUTTER.

Prints each slot's cut as `area width height`, largest first, with ezdxf reading and shapely sweeping; a slot the bush does
not enter is printed as 0 0 0."""
import sys

import ezdxf
from ezdxf import path
from shapely.geometry import Polygon

doc = ezdxf.readfile(sys.argv[1])
bush, cutter = float(sys.argv[2]), float(sys.argv[3])
assert not doc.audit().errors
cuts = []
for e in doc.modelspace():
    if not e.dxf.layer.startswith("HOLE"):
        continue
    assert e.dxftype() == "LWPOLYLINE" and e.closed, e
    edge = Polygon([(v.x, v.y) for v in path.make_path(e).flattening(0.0005)])
    assert edge.is_valid
    cut = edge.buffer(-bush / 2, 128).buffer(cutter / 2, 128)
    if cut.is_empty:
        cuts.append((0, 0, 0))
    else:
        x0, y0, x1, y1 = cut.bounds
        cuts.append((cut.area, x1 - x0, y1 - y0))
for c in sorted(cuts, reverse=True):
    print("%.3f %.3f %.3f" % c)
