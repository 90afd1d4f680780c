"""Lets a program make paths of board drawings: python3 follow_boards.py LAUNCHER R2000_FOLDER R12_FOLDER

Both folders hold the same drawings by name: polylines in R2000 for ezdxf, single lines and arcs in R12 for dxf2gcode (LAUNCHER
is run_dxf2gcode.py; follow_cuts.py lies beside this file). Prints, a line a drawing: name, lines that are cut, `wrong` and what
differs: a path that is open, there twice or not there, one that encloses another area, or one with an arc made of chords."""
import math
import os
import re
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

import ezdxf
from ezdxf import path
from follow_cuts import JOIN, Paths
from shapely.geometry import Polygon

launcher, polylines, lines = sys.argv[1:]


def moves(code):
    """(layer, closed?, points, chords) of each path down to its first depth."""
    for layer, points in Paths.read(open(code)):
        yield layer, math.dist(points[0], points[-1]) <= JOIN, points


def chords(code):
    """Rows of three and more short straight moves that turn alike: arcs that came as chords."""
    rows, at, before, row = 0, (0.0, 0.0), None, 0
    for text in open(code):
        m = re.match(r"G([0123]) X *(-?[\d.]+) Y *(-?[\d.]+)", text)
        if not m:
            continue
        to = (float(m[2]), float(m[3]))
        length, way = math.dist(at, to), math.atan2(to[1] - at[1], to[0] - at[0])
        turn = None
        if m[1] == "1" and before and length < 15:
            turn = math.degrees((way - before[0] + math.pi) % (2 * math.pi) - math.pi)
        alike = turn is not None and 0.1 < abs(turn) < 30 and before[1] is not None and abs(turn - before[1]) < 0.1
        row = row + 1 if alike else 0
        rows += row == 2
        before = (way, turn) if m[1] == "1" else None
        at = to
    return rows


for file in sorted(Path(polylines).glob("*.dxf")):
    wrong = []
    expected = {}
    for e in ezdxf.readfile(file).modelspace():
        if re.search(r"_D[0-9P]+_Z", e.dxf.layer):
            area = Polygon([(v.x, v.y) for v in path.make_path(e).flattening(0.001)]).area
            expected.setdefault(e.dxf.layer, []).append(area)
    with tempfile.TemporaryDirectory() as home:
        code = os.path.join(home, "paths.ngc")
        run = [sys.executable, launcher, os.path.join(lines, file.name), code]
        said = subprocess.run(run, env={**os.environ, "HOME": home}, capture_output=True, text=True, timeout=100)
        assert os.path.exists(code), said.stdout[-300:] + said.stderr[-300:]
        if "too short" in said.stdout + said.stderr:
            wrong.append("short pieces")
        found = {}
        seen = Counter()
        for layer, closed, points in moves(code):
            if layer in expected:
                seen[layer, tuple(sorted((round(x, 2), round(y, 2)) for x, y in points[1:]))] += 1
                if closed:
                    found.setdefault(layer, []).append(Polygon(points).area)
                else:
                    wrong.append("open on " + layer)
        wrong += ["twice on " + k[0] for k, n in seen.items() if n > 1]
        if chords(code):
            wrong.append("%d arcs of chords" % chords(code))
    for layer in expected.keys() | found.keys():
        a, b = sorted(expected.get(layer, [])), sorted(found.get(layer, []))
        if len(a) != len(b) or any(abs(p - q) > 0.001 * p + 0.5 for p, q in zip(a, b)):
            wrong.append("%s: %s for %s" % (layer, b, a))
    print(file.stem, sum(map(len, expected.values())), *(["wrong"] + wrong if wrong else []))
