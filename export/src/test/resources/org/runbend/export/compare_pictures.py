"""Draws layers of a DXF file with ezdxf and Pillow at 2 px/mm and compares the picture with others of the same box: for each
pair the share of the set pixels of one, in per cent, that lie further than 2 px from a set pixel of the other.

compare_pictures.py DXF LAYER,LAYER... X0 Y0 X1 Y1 PICTURE...
"""
import sys

import ezdxf
import numpy as np
from ezdxf import path
from PIL import Image, ImageDraw

PIXELS = 2
REACH = 2
SET = 160  # darker than this: pens are dark, paper is white

Image.MAX_IMAGE_PIXELS = None


def drawn(name, layers, x0, y0, x1, y1):
    size = (round((x1 - x0) * PIXELS), round((y1 - y0) * PIXELS))
    image = Image.new("1", size, 0)
    pen = ImageDraw.Draw(image)
    for entity in ezdxf.readfile(name).modelspace():
        if entity.dxf.layer not in layers or entity.dxftype() not in ("LWPOLYLINE", "LINE", "ARC", "CIRCLE"):
            continue
        points = path.make_path(entity).flattening(0.01, segments=4)
        pen.line([((p.x - x0) * PIXELS - 0.5, (y1 - p.y) * PIXELS - 0.5) for p in points], fill=1)
    return np.asarray(image)


def read(name, shape):
    found = np.asarray(Image.open(name).convert("L")) < SET
    if any(abs(a - b) > 1 for a, b in zip(found.shape, shape)):
        sys.exit("%s is %s, not %s" % (name, found.shape, shape))
    same = np.zeros(shape, bool)
    same[: found.shape[0], : found.shape[1]] = found[: shape[0], : shape[1]]
    return same


def within_reach(image):
    """Every pixel whose centre is not further than REACH from that of a set one."""
    wide = image.copy()
    rows, columns = image.shape
    for dy in range(-REACH, REACH + 1):
        for dx in range(-REACH, REACH + 1):
            if 0 < dx * dx + dy * dy <= REACH * REACH:
                wide[max(dy, 0) : rows + min(dy, 0), max(dx, 0) : columns + min(dx, 0)] |= image[
                    max(-dy, 0) : rows + min(-dy, 0), max(-dx, 0) : columns + min(-dx, 0)
                ]
    return wide


names = [sys.argv[1]] + sys.argv[7:]
box = [float(v) for v in sys.argv[3:7]]
first = drawn(sys.argv[1], sys.argv[2].split(","), *box)
images = [first] + [read(name, first.shape) for name in names[1:]]
wide = [within_reach(image) for image in images]
for name, image in zip(names, images):
    print("set", name.rsplit("/", 1)[-1], np.count_nonzero(image))
for i, image in enumerate(images):
    for j in range(len(images)):
        if i != j:
            far = np.count_nonzero(image & ~wide[j])
            print("far", names[i].rsplit("/", 1)[-1], names[j].rsplit("/", 1)[-1], "%.4f" % (100.0 * far / max(1, np.count_nonzero(image))))
