"""Adjusts floors with SciPy alone: start values by several random tries, the best fit whose sides do not cross is printed."""

import sys

import numpy as np
from scipy.optimize import least_squares


def crosses(points):
    n = len(points)

    def side(a, b, c):
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    for i in range(n):
        for j in range(i + 2, n):
            if i == 0 and j == n - 1:
                continue
            a, b, c, d = points[i], points[i + 1], points[j], points[(j + 1) % n]
            if side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0:
                return True
    return False


def unpack(x, n):
    points = np.zeros((n, 2))
    points[1, 0] = x[0]
    points[2:] = x[1:].reshape(n - 2, 2)
    return points


def adjust(n, hand, lengths):
    i = np.array([l[0] for l in lengths])
    j = np.array([l[1] for l in lengths])
    d = np.array([l[2] for l in lengths])

    def residuals(x):
        p = unpack(x, n)
        return d - np.hypot(*(p[i] - p[j]).T)

    def jacobian(x):
        p = unpack(x, n)
        unit = (p[i] - p[j]) / np.maximum(1e-9, np.hypot(*(p[i] - p[j]).T))[:, None]
        full = np.zeros((len(d), n, 2))
        full[np.arange(len(d)), i] -= unit
        full[np.arange(len(d)), j] += unit
        return np.hstack([full[:, 1, :1], full[:, 2:].reshape(len(d), -1)])

    rng = np.random.default_rng(1)
    best = None
    good = 0
    for _ in range(60):
        angles = np.sort(2 * np.pi * (np.arange(n) + rng.uniform(-0.3, 0.3, n)) / n)
        radius = rng.uniform(500, 1800, n)
        ring = np.column_stack([1.5 * radius * np.cos(angles), hand * radius * np.sin(angles)])
        ring = ring - ring[0]
        u = ring[1] / np.hypot(*ring[1])
        ring = np.column_stack([ring @ u, ring @ np.array([-u[1], u[0]])])
        start = np.concatenate([[ring[1, 0]], ring[2:].ravel()])
        fit = least_squares(residuals, start, jac=jacobian, xtol=1e-15, ftol=1e-15, gtol=1e-15, method="lm")
        p = unpack(fit.x, n)
        x, y = p[:, 0], p[:, 1]
        area = np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1))
        if p[1, 0] <= 0 or area * hand <= 0 or crosses(p):
            continue
        if best is None or fit.cost < best[0] - 1e-6:
            best = (fit.cost, fit.x)
        good += 1
        if good >= 4:
            break
    points = unpack(best[1], n)
    return np.concatenate([points.ravel(), residuals(best[1])])


with open(sys.argv[1]) as given:
    for line in given:
        words = line.split()
        rest = words[2:]
        lengths = [(int(rest[k]), int(rest[k + 1]), float(rest[k + 2])) for k in range(0, len(rest), 3)]
        print(" ".join(repr(float(v)) for v in adjust(int(words[0]), int(words[1]), lengths)))
