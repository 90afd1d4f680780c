package org.runbend.export.dxf.read;

import java.util.Arrays;
import java.util.Set;

/** Turns the tags of an entity into what it means (group codes of the DXF reference). Broken ones become {@link Raw.Other}. */
final class RawReader {
    private static final Set<String> READ = Set.of(
            "LINE",
            "LWPOLYLINE",
            "POLYLINE",
            "VERTEX",
            "ARC",
            "CIRCLE",
            "ELLIPSE",
            "SPLINE",
            "INSERT",
            "POINT",
            "TEXT",
            "MTEXT",
            "ATTRIB",
            EntityTags.HATCH);

    private static final int CLOSED = 1;
    private static final int MOST_DEGREE = 20;

    private RawReader() {}

    /** Whether the numbers of a type are wanted at all. */
    static boolean reads(String type) {
        return READ.contains(type);
    }

    static Raw.Head head(EntityTags t) {
        return new Raw.Head(t.type, t.layer, t.place, t.notes());
    }

    static Raw.Other other(EntityTags t, String why) {
        return new Raw.Other(new Raw.Head(t.type + why, t.layer, t.place, t.notes()));
    }

    static Raw read(EntityTags t) {
        return switch (t.type) {
            case "LINE" -> line(t);
            case "LWPOLYLINE" -> lightPolyline(t);
            case "ARC", "CIRCLE" -> round(t);
            case "ELLIPSE" -> oval(t);
            case "SPLINE" -> spline(t);
            case "INSERT" -> insert(t);
            case "POINT" -> point(t);
            case "TEXT", "ATTRIB" -> text(t);
            case "MTEXT" -> multiLineText(t);
            case EntityTags.HATCH -> HatchReader.read(t);
            default -> other(t, "");
        };
    }

    private static Raw line(EntityTags t) {
        if (!t.has(10) || !t.has(20) || !t.has(11) || !t.has(21)) {
            return other(t, " without both ends");
        }
        return new Raw.Line(
                head(t), t.get(10, 0), t.get(20, 0), t.get(30, 0), t.get(11, 0), t.get(21, 0), t.get(31, 0));
    }

    private static Raw point(EntityTags t) {
        return t.has(10) && t.has(20)
                ? new Raw.Spot(head(t), t.get(10, 0), t.get(20, 0), t.get(30, 0))
                : other(t, " without a place");
    }

    private static Raw round(EntityTags t) {
        double radius = t.get(40, 0);
        if (!(radius > 0) || !t.has(10) || !t.has(20)) {
            return other(t, " without a radius");
        }
        boolean whole = t.type.equals("CIRCLE");
        double start = whole ? 0 : t.get(50, 0);
        double sweep = whole ? 360 : turn(t.get(51, 360) - start);
        return new Raw.Round(head(t), t.plane(), t.get(10, 0), t.get(20, 0), t.get(30, 0), radius, start, sweep);
    }

    /** The angle in (0, 360]: arcs go anticlockwise, and equal ends mean once round. */
    private static double turn(double degrees) {
        double sweep = degrees % 360;
        return sweep > 0 ? sweep : sweep + 360;
    }

    private static Raw oval(EntityTags t) {
        double[] u = {t.get(11, 0), t.get(21, 0), t.get(31, 0)};
        double ratio = t.get(40, Double.NaN);
        double[] n = {t.get(210, 0), t.get(220, 0), t.get(230, 1)};
        double length = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
        boolean flat = u[0] == 0 && u[1] == 0 && u[2] == 0;
        if (flat || !(Math.abs(ratio) > 0) || !(length > 0) || !t.has(10) || !t.has(20)) {
            return other(t, " without axes");
        }
        double k = ratio / length;
        double[] v = {k * (n[1] * u[2] - n[2] * u[1]), k * (n[2] * u[0] - n[0] * u[2]), k * (n[0] * u[1] - n[1] * u[0])
        };
        double start = t.get(41, 0);
        double sweep = (t.get(42, 2 * Math.PI) - start) % (2 * Math.PI);
        sweep = sweep > 1e-9 ? sweep : sweep + 2 * Math.PI;
        double[] centre = {t.get(10, 0), t.get(20, 0), t.get(30, 0)};
        return new Raw.Oval(head(t), new Reals(centre), new Reals(u), new Reals(v), start, sweep);
    }

    private static Raw lightPolyline(EntityTags t) {
        double[] triples = new double[3 * t.size()];
        int n = 0;
        for (int i = 0; i < t.size(); i++) {
            if (t.code(i) == 10) {
                triples[3 * n] = t.value(i);
                triples[3 * n + 1] = Double.NaN;
                n++;
            } else if (n > 0 && t.code(i) == 20) {
                triples[3 * n - 2] = t.value(i);
            } else if (n > 0 && t.code(i) == 42) {
                triples[3 * n - 1] = t.value(i);
            }
        }
        return polyline(t, t.plane(), t.get(38, 0), Arrays.copyOf(triples, 3 * n), t.flag(70, CLOSED), false);
    }

    static Raw polyline(EntityTags t, Placement plane, double z, double[] triples, boolean closed, boolean solid) {
        for (double value : triples) {
            if (Double.isNaN(value)) {
                return other(t, " with half a vertex");
            }
        }
        return triples.length < 6
                ? other(t, " of fewer than two vertices")
                : new Raw.Poly(head(t), plane, z, new Reals(triples), closed, solid);
    }

    private static Raw spline(EntityTags t) {
        double[] controls = triples(t, 10);
        double[] fits = triples(t, 11);
        boolean closed = t.flag(70, CLOSED);
        if (controls.length < 6 && fits.length >= 6) {
            return new Raw.Through(head(t), new Reals(fits), vector(t, 12), vector(t, 13), closed);
        }
        int degree = t.whole(71, 3);
        double[] knots = t.all(40);
        double[] weights = t.all(41);
        int n = controls.length / 3;
        boolean sound = degree >= 1
                && degree <= MOST_DEGREE
                && n > degree
                && knots.length == n + degree + 1
                && (weights.length == 0 || weights.length == n)
                && isRising(knots)
                && Arrays.stream(weights).allMatch(w -> w > 0);
        return sound
                ? new Raw.Spline(head(t), degree, new Reals(knots), new Reals(weights), new Reals(controls), closed)
                : other(t, " with wrong knots or weights");
    }

    static boolean isRising(double[] knots) {
        for (int i = 1; i < knots.length; i++) {
            if (knots[i] < knots[i - 1]) {
                return false;
            }
        }
        return true;
    }

    /** x, y, z of points in order; a point begins with its x. */
    private static double[] triples(EntityTags t, int code) {
        double[] triples = new double[3 * t.size()];
        int n = 0;
        for (int i = 0; i < t.size(); i++) {
            if (t.code(i) == code) {
                triples[3 * n++] = t.value(i);
            } else if (n > 0 && t.code(i) == code + 10) {
                triples[3 * n - 2] = t.value(i);
            } else if (n > 0 && t.code(i) == code + 20) {
                triples[3 * n - 1] = t.value(i);
            }
        }
        return Arrays.copyOf(triples, 3 * n);
    }

    private static Reals vector(EntityTags t, int code) {
        return t.has(code) ? new Reals(t.get(code, 0), t.get(code + 10, 0), t.get(code + 20, 0)) : new Reals();
    }

    private static Raw insert(EntityTags t) {
        double sx = t.get(41, 1);
        double sy = t.get(42, 1);
        double sz = t.get(43, 1);
        if (sx == 0 || sy == 0) {
            return other(t, " of scale 0");
        }
        double angle = t.get(50, 0);
        Placement place = t.plane()
                .times(Placement.moved(t.get(10, 0), t.get(20, 0), t.get(30, 0)))
                .times(Placement.turned(angle));
        return new Raw.Insert(
                head(t),
                t.name,
                place.times(Placement.scaled(sx, sy, sz == 0 ? 1 : sz)),
                angle,
                Math.max(1, t.whole(70, 1)),
                Math.max(1, t.whole(71, 1)),
                t.get(44, 0) / sx,
                t.get(45, 0) / sy);
    }

    private static Raw text(EntityTags t) {
        int across = t.whole(72, 0);
        int up = t.whole(73, 0);
        boolean aligned = (across != 0 || up != 0) && across != 3 && across != 5 && t.has(11) && t.has(21);
        int column = across == 1 || across == 4 ? 1 : across == 2 ? 2 : 0;
        int row = across == 4 ? 1 : Math.max(0, Math.min(2, up - 1));
        return new Raw.Words(
                head(t),
                t.plane(),
                aligned ? t.get(11, 0) : t.get(10, 0),
                aligned ? t.get(21, 0) : t.get(20, 0),
                t.get(30, 0),
                t.get(40, 0),
                t.get(50, 0),
                aligned ? column : 0,
                aligned ? row : 0,
                Escapes.line(t.line()));
    }

    private static Raw multiLineText(EntityTags t) {
        int place = Math.max(1, Math.min(9, t.whole(71, 1))) - 1;
        double angle = t.has(11) ? Math.toDegrees(StrictMath.atan2(t.get(21, 0), t.get(11, 0))) : t.get(50, 0);
        return new Raw.Words(
                head(t),
                Placement.IDENTITY,
                t.get(10, 0),
                t.get(20, 0),
                t.get(30, 0),
                t.get(40, 0),
                angle,
                place % 3,
                2 - place / 3,
                Escapes.paragraphs(t.words()));
    }
}
