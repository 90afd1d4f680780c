"""Looks at layer CHANNEL as the cutter of kit.json would leave it: prints how far the pipe juts out of it, how much is cut
outside the floor, how much of the groove the cutter cannot reach, and the thinnest web. Polygons by shapely, arcs by ezdxf.

check_channel.py KIT.json DRAWING.dxf
"""
import json
import math
import sys

import ezdxf
import numpy as np
from ezdxf import path
from scipy.spatial import cKDTree
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

CHORD = 0.003  # largest height of an arc over its chord, mm
ROUND = 24  # chords of a quarter of a circle in buffers
STEP = 3  # points of the edge, mm
FAR = 350  # webs over this are not looked for, mm

kit = json.load(open(sys.argv[1]))
model = ezdxf.readfile(sys.argv[2]).modelspace()


def ring(points):
    """The points, the last the first itself where rounding of an arc's end left it beside it (far under a nanometre)."""
    return points[:-1] + points[:1] if math.dist(points[0], points[-1]) < 1e-9 else points


def lines(layer):
    return [
        ring([(p.x, p.y) for p in path.make_path(e).flattening(CHORD)])
        for e in model.query("LWPOLYLINE")
        if e.dxf.layer == layer
    ]


def cut(groove):
    """What a round cutter leaves that stays inside the groove: its centre keeps a radius away from the edge."""
    radius = kit["channel"]["cutter"] / 2 - 0.002
    return groove.buffer(-radius, ROUND).buffer(radius, ROUND)


def jut(inner, outer):
    """How far the one juts out of the other, mm: the next step up."""
    for reach in (0, 0.005, 0.01, 0.02, 0.05, 0.1, 0.5, 1, 2):
        if inner.difference(outer.buffer(reach, ROUND)).area < 1e-6:
            return reach
    return math.inf


def edges(groove):
    """Points on the edge of a groove, the directions out of it, and how far along the edge they lie."""
    ring = groove.exterior
    along = np.arange(0, ring.length, STEP)
    at = np.array([ring.interpolate(s).coords[0] for s in along])
    ahead = np.array([ring.interpolate(min(s + 0.01, ring.length)).coords[0] for s in along])
    way = (ahead - at) / np.linalg.norm(ahead - at, axis=1)[:, None]
    out = np.stack([way[:, 1], -way[:, 0]], axis=1) * (1 if ring.is_ccw else -1)
    return at, out, along, ring.length


def thinnest_web(grooves):
    """Least way through material from an edge to an edge, but for edges that follow upon each other within half a turn."""
    parts = [edges(g) for g in grooves]
    at = np.concatenate([p[0] for p in parts])
    out = np.concatenate([p[1] for p in parts])
    along = np.concatenate([p[2] for p in parts])
    whole = np.concatenate([np.full(len(p[2]), p[3]) for p in parts])
    which = np.concatenate([np.full(len(p[2]), i) for i, p in enumerate(parts)])
    tree = cKDTree(at)
    # along the inner edge of the tightest bend, which lies half a width within the centreline
    turn = 0.9 * math.pi * (kit["pipe"]["bendRadius"] - kit["channel"]["bendWidth"] / 2)
    for reach in (10, 25, 50, 80, 110, 140, 170, 250, FAR):
        pairs = tree.query_pairs(reach, output_type="ndarray")
        a, b = pairs[:, 0], pairs[:, 1]
        gap = np.abs(along[a] - along[b])
        apart = (which[a] != which[b]) | (np.minimum(gap, whole[a] - gap) > turn)
        way = at[b] - at[a]
        far = np.linalg.norm(way, axis=1)
        # The shortest way stands square on both edges; others may graze a bend and cross the groove.
        through = ((way * out[a]).sum(axis=1) > 0.9 * far) & ((way * out[b]).sum(axis=1) < -0.9 * far)
        found = far[apart & through]
        if len(found):
            return found.min()
    return math.inf


grooves = [Polygon(points) for points in lines("CHANNEL")]
floor = Polygon(lines("FLOOR")[0])
pipe = unary_union([LineString(points).buffer(kit["pipe"]["outer"] / 2, ROUND) for points in lines("PIPE")])
left = [cut(groove) for groove in grooves]
print("grooves", len(grooves), "valid", all(g.is_valid for g in grooves), "whole", all(g.geom_type == "Polygon" for g in left))
print("jut %.3f" % jut(pipe, unary_union(left)))
print("outside %.6f" % unary_union(grooves).difference(floor).area)
print("unreached %.3f" % jut(unary_union(grooves), unary_union(left)))
print("web %.3f" % thinnest_web(grooves))
