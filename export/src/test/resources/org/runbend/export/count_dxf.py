"""Counts the entities in model space of DXF files by type with ezdxf, mending broken files where it can."""
import sys
from collections import Counter

import ezdxf
from ezdxf import recover


def counts(name):
    try:
        doc = ezdxf.readfile(name)
    except Exception:
        doc, _ = recover.readfile(name)
    return "{" + ", ".join("%s=%d" % c for c in sorted(Counter(e.dxftype() for e in doc.modelspace()).items())) + "}"


for name in sys.argv[1:]:
    try:
        found = counts(name)
    except Exception:
        found = "refused"
    print("counts", name, found, sep="\t")
