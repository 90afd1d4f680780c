"""Cuts floors from drawing.dxf alone: reads what layers and legend say, lets a round cutter follow it and looks at what is
left. Polygons by shapely, arcs by ezdxf; knows nothing of the program that drew.

follow_cuts.py [--program LAUNCHER] FOLDER...: each holds drawing.dxf and holes.txt (x y diameter of a hole that must be there,
a line each). Prints a line a folder: its name, then "ok" or what is wrong. With a launcher (run_dxf2gcode.py) the cutter follows
the paths that this program makes of the drawing, in its order, and only the words are read from the drawing.
"""
import math
import os
import re
import subprocess
import sys
import tempfile

import ezdxf
from ezdxf import path
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

CHORD = 0.002  # largest height of an arc over its chord, mm
ROUND = 32  # chords of a quarter of a circle in buffers
EXACT = 0.05  # mm
JOIN = 0.005  # ends of lines that are one, mm


def joined(parts):
    """Chains of parts whose ends meet within JOIN."""
    chains = []
    parts = list(parts)
    while parts:
        chain = parts.pop(0)
        grown = True
        while grown and math.dist(chain[0], chain[-1]) > JOIN:
            grown = False
            for i, part in enumerate(parts):
                if math.dist(chain[-1], part[0]) <= JOIN:
                    chain = chain + part[1:]
                elif math.dist(chain[-1], part[-1]) <= JOIN:
                    chain = chain + part[-2::-1]
                elif math.dist(chain[0], part[-1]) <= JOIN:
                    chain = part[:-1] + chain
                elif math.dist(chain[0], part[0]) <= JOIN:
                    chain = part[:0:-1] + chain
                else:
                    continue
                parts.pop(i)
                grown = True
                break
        if math.dist(chain[0], chain[-1]) <= JOIN:
            chain = chain[:-1] + [chain[0]]
        chains.append(chain)
    return chains


class Drawing:
    def __init__(self, file):
        document = ezdxf.readfile(file)
        self.entities = list(document.modelspace())
        words = []
        for e in self.entities:
            if e.dxftype() == "MTEXT":
                words.append(e.text.replace("\\P", " "))
            elif e.dxftype() == "TEXT":
                words.append(e.dxf.text)
        self.words = re.sub(r"\s+", " ", " ".join(words))

    def on(self, layer):
        kinds = ("LWPOLYLINE", "POLYLINE", "LINE", "ARC", "CIRCLE")
        return [e for e in self.entities if e.dxf.layer == layer and e.dxftype() in kinds]

    def lines(self, layer):
        """All lines of a layer, single ones joined at their ends."""
        parts = [[(p.x, p.y) for p in path.make_path(e).flattening(CHORD)] for e in self.on(layer)]
        return [LineString(chain) for chain in joined(parts)]

    def circles(self, layer):
        return [(e.dxf.center.x, e.dxf.center.y, 2 * e.dxf.radius) for e in self.on(layer)]

    def order(self):
        """Layers in the order of the file."""
        return [e.dxf.layer for e in self.entities]

    def areas(self, layer):
        lines = self.lines(layer)
        assert lines and all(l.is_closed for l in lines), layer + " has a line that is not closed"
        return [Polygon(l.coords) for l in lines]

    def say(self, pattern):
        found = re.search(pattern, self.words)
        assert found, "legend does not say " + pattern + " in " + self.words
        return found


class Paths(Drawing):
    """What a program makes of a drawing: its words as they stand, its lines as G-code (RS274: G1, G2 and G3 with I and J)."""

    def __init__(self, file, launcher):
        super().__init__(file)
        with tempfile.TemporaryDirectory() as home:
            code = os.path.join(home, "paths.ngc")
            run = [sys.executable, launcher, file, code]
            said = subprocess.run(run, env={**os.environ, "HOME": home}, capture_output=True, text=True, timeout=100)
            assert os.path.exists(code), "no paths: " + said.stdout[-300:] + said.stderr[-300:]
            self.paths = list(self.read(open(code)))

    @staticmethod
    def read(lines):
        """(layer, points) of each path, down to its first depth; later ones repeat it."""
        layer, at, down, points = None, (0.0, 0.0), 0, None
        for line in lines:
            named = re.match(r"\(\*+ LAYER: (\S+)", line)
            if named:
                layer = named[1]
            if line.startswith("(* SHAPE"):
                down, points = 0, None
            moved = re.match(r"G([0123]) ", line)
            if not moved:
                continue
            values = {k: float(v) for k, v in re.findall(r"([XYZIJ]) *(-?[\d.]+)", line)}
            if "Z" in values:
                if values["Z"] < 0:
                    down += 1
                    points = [at] if down == 1 else points
                if values["Z"] > 0 and points and len(points) > 1:
                    yield layer, points
                    points = None
                continue
            to = (values.get("X", at[0]), values.get("Y", at[1]))
            if down == 1 and points is not None:
                points += Paths.arc(at, to, values, moved[1] == "3") if moved[1] in "23" else [to]
            at = to

    @staticmethod
    def arc(at, to, values, left):
        x, y = at[0] + values["I"], at[1] + values["J"]
        radius = math.dist(at, (x, y))
        start, end = (math.atan2(p[1] - y, p[0] - x) for p in (at, to))
        turn = (end - start) % (2 * math.pi) if left else -((start - end) % (2 * math.pi))
        if at == to:
            turn = 2 * math.pi if left else -2 * math.pi
        count = math.ceil(abs(turn) / math.acos(1 - min(1, CHORD / radius))) + 1
        steps = (start + turn * k / count for k in range(1, count))
        return [(x + radius * math.cos(a), y + radius * math.sin(a)) for a in steps] + [to]

    def lines(self, layer):
        return [LineString(p) for p in map(closed, (p for l, p in self.paths if l == layer))]

    def circles(self, layer):
        areas = self.areas(layer) if layer in self.order() else []
        return [(a.centroid.x, a.centroid.y, 2 * math.sqrt(a.area / math.pi)) for a in areas]

    def order(self):
        return [l for l, _ in self.paths]


def closed(points):
    """Paths are written to a thousandth, so ends that are one may lie so far apart."""
    return points[:-1] + [points[0]] if math.dist(points[0], points[-1]) <= JOIN else points


def passes_of(drawing):
    said = drawing.say(
        r"CHANNEL: pocket, tool inside, cleared whole: (?:1 pass|(\d+) passes side by side, step-over ([\d.]+) mm)"
        r"(?:, pads dia ([\d.]+) in (\d+) rings of ([\d.]+))?, (\d+) passes down of ([\d.]+); "
    )
    across, step, pad, rings, ring, down, layer = said.groups()
    return int(across or 1), float(step or 0), float(pad or 0), int(rings or 0), float(ring or 0), int(down), float(layer)


def pocket(groove, cutter, steps, step):
    """The area that a cutter sweeps which goes round inside the line, and so often round again a step further in."""
    swept = []
    for k in range(steps + 1):
        inside = groove.buffer(-cutter / 2 - k * step, ROUND)
        if inside.is_empty:
            break
        # where the room is as wide as the cutter there is a line left to follow
        for part in getattr(inside, "geoms", [inside]):
            for ring in [part.exterior, *part.interiors]:
                swept += sweep(list(ring.coords), cutter)
    return unary_union(swept)


def sweep(points, cutter):
    """The area a cutter sweeps along a line; a ring goes in halves, as the library loses some of a ring smaller than the cutter."""
    half = len(points) // 2
    return [LineString(p).buffer(cutter / 2, ROUND) for p in (points[: half + 1], points[half:])]


def width_across(swept, line, at, reach):
    """Clear width square to a line at a distance along it."""
    a, b = line.interpolate(at - 0.02), line.interpolate(at + 0.02)
    middle = line.interpolate(at)
    dx, dy = b.x - a.x, b.y - a.y
    length = math.hypot(dx, dy)
    nx, ny = -dy / length * reach, dx / length * reach
    ray = LineString([(middle.x - nx, middle.y - ny), (middle.x + nx, middle.y + ny)])
    return ray.intersection(swept).length


def straights(line):
    """Middles of long straight parts, as distances along the line."""
    found, along = [], 0.0
    points = list(line.coords)
    for a, b in zip(points, points[1:]):
        length = math.dist(a, b)
        if length > 150:
            found.append(along + length / 2)
        along += length
    return found


def bends(line):
    """Middles of rows of short chords, as distances along the line."""
    found, along, start = [], 0.0, None
    points = list(line.coords)
    for a, b in zip(points, points[1:]):
        length = math.dist(a, b)
        if length < 8:
            start = along if start is None else start
        else:
            if start is not None and along - start > 60:
                found.append((start + along) / 2)
            start = None
        along += length
    return found


def check(folder, launcher):
    file = os.path.join(folder, "drawing.dxf")
    drawing = Paths(file, launcher) if launcher else Drawing(file)
    sizes = drawing.say(r"([\d.]+) wide, ([\d.]+) at bends, ([\d.]+) deep, cutter dia ([\d.]+)")
    width, wide, deep, cutter = map(float, sizes.groups())
    centre = "CHANNEL: tool on the line, all of them" in drawing.words
    pipes = drawing.lines("PIPE")
    if centre:
        pad = drawing.say(r"rings in pads of dia ([\d.]+), (\d+) passes down of ([\d.]+)")
        down, layer, pad = int(pad[2]), float(pad[3]), float(pad[1])
        swept = unary_union([a for l in pipes + drawing.lines("CHANNEL") for a in sweep(list(l.coords), cutter)])
        allowed = unary_union([l.buffer(wide / 2, ROUND) for l in pipes])
    else:
        across, step, pad, rings, ring, down, layer = passes_of(drawing)
        assert max(step, ring) <= 0.5 * cutter, "step-over too wide"
        grooves = drawing.areas("CHANNEL")
        assert len(grooves) == len(pipes), "%d grooves for %d pipes" % (len(grooves), len(pipes))
        swept = unary_union([pocket(g, cutter, max(across // 2, rings), max(step, ring)) for g in grooves])
        allowed = unary_union(grooves)
        left = allowed.buffer(-EXACT, ROUND).difference(swept)
        assert left.area < 0.5, "a post or rib of %.2f mm2 is left near %s" % (left.area, left.centroid.wkt)
    ends = [Point(p.coords[k]) for p in pipes for k in (0, -1)]
    if pad:
        pads = unary_union([e.buffer(pad / 2, ROUND) for e in ends])
        allowed = allowed.union(pads)
        post = pads.buffer(-EXACT).difference(swept)
        assert post.area < 0.01, "a post of %.2f mm2 in a pad" % post.area
    over = swept.difference(allowed.buffer(EXACT, ROUND))
    assert over.area < 0.01, "%.2f mm2 cut outside the groove" % over.area
    rib = unary_union([p.buffer(width / 2 - EXACT, ROUND, cap_style=2) for p in pipes]).difference(swept)
    assert rib.area < 0.01, "a rib of %.2f mm2 along the pipe" % rib.area
    measured = 0
    for p in pipes:
        for at in straights(p):
            clear = width_across(swept, p, at, wide)
            assert abs(clear - width) <= EXACT, "groove %.3f wide for %.3f" % (clear, width)
            measured += 1
        for at in bends(p):
            clear = width_across(swept, p, at, wide)
            assert abs(clear - wide) <= EXACT, "groove %.3f wide at a bend for %.3f" % (clear, wide)
            measured += 1
    assert measured >= 4, "only %d widths measured" % measured
    assert abs(down * layer - deep) <= 0.05 * down and layer <= 0.5 * cutter + 0.05, "layers of %s x %s" % (down, layer)

    floor = drawing.areas("FLOOR")
    assert len(floor) == 1
    part = floor[0]
    loss = part.buffer(cutter / 2, ROUND).boundary.buffer(cutter / 2 - 0.01, ROUND).intersection(part)
    assert loss.area < 0.1, "the cutter round the floor takes %.2f mm2 of it" % loss.area
    assert swept.difference(part).area < 1e-6, "cut outside the floor"

    holes = drawing.circles("HOLE")
    wanted = [tuple(map(float, l.split())) for l in open(os.path.join(folder, "holes.txt"))]
    assert len(holes) == len(wanted), "%d holes, %d wanted" % (len(holes), len(wanted))
    for hole in wanted:
        assert any(math.dist(hole, h) < 0.01 for h in holes), "no hole at %s" % (hole,)
    for x, y, d in holes:
        assert Point(x, y).buffer(d / 2).difference(part).area < 1e-6, "hole off the floor"
        if abs(d - pad) > 0.02:
            assert not Point(x, y).buffer(d / 2).intersects(swept), "the groove runs into a hole"

    first = drawing.order().index("FLOOR")
    inner = [i for i, layer in enumerate(drawing.order()) if layer in ("CHANNEL", "SLOT", "HOLE")]
    assert max(inner) < first, "the floor is cut free before its grooves and holes"
    order = [drawing.words.find(" " + l + ":") for l in ("CHANNEL", "HOLE", "FLOOR")]
    order = [o for o in order if o >= 0]
    assert len(order) >= 2 and order == sorted(order), "order of operations"
    said = drawing.say(r"not cut: (.*?) (?:depth|board)").group(1)
    for layer_name in {e.dxf.layer for e in drawing.entities} - {"CHANNEL", "SLOT", "HOLE", "FLOOR"}:
        assert re.search(r"\b%s\b" % layer_name, said) or (centre and layer_name == "PIPE"), layer_name + " unsaid"


if __name__ == "__main__":
    folders, launcher = sys.argv[1:], None
    if folders[0] == "--program":
        launcher, folders = folders[1], folders[2:]
    for folder in folders:
        try:
            check(folder, launcher)
            print(os.path.basename(folder), "ok")
        except AssertionError as e:
            print(os.path.basename(folder), e)
