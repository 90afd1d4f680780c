package org.runbend.export.drawing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Finds the arcs that chords stand for: straight parts one after the other whose ends lie on one circle, all turning the
 * same way. The circle goes through the first, the middle and the last end.
 */
public final class ArcFitting {
    private static final double HALF = 180;
    /** An arc of more than this is closed but for a slit, which nobody draws. */
    private static final double MOST_SWEEP = 350;

    private final List<Vertex> in;
    private final boolean closed;
    private final Limits limits;

    private ArcFitting(List<Vertex> in, boolean closed, Limits limits) {
        this.in = in;
        this.closed = closed;
        this.limits = limits;
    }

    /**
     * What passes for an arc.
     *
     * @param off how far an end may lie off the circle, mm
     * @param sagitta how far the middle of a chord may lie off it, mm
     * @param turn what a chord may span at the centre, degrees; with a sagitta within {@code off} twice as much
     * @param chords least number of chords, 3 or more
     * @param sweep least sweep of all of them, degrees
     * @param radius least radius, mm
     */
    public record Limits(double off, double sagitta, double turn, int chords, double sweep, double radius) {
        /** The same for ends that lie nearer to the circle. */
        public Limits within(double other) {
            return new Limits(other, sagitta, turn, chords, sweep, radius);
        }
    }

    /**
     * What was found.
     *
     * @param vertices in the same order, closed as before
     * @param arcs how many arcs took the place of chords
     * @param chords how many chords these were
     * @param off how far a chord lay off its arc at most, mm
     */
    public record Fitted(List<Vertex> vertices, int arcs, int chords, double off) {
        /** Copies. */
        public Fitted {
            vertices = List.copyOf(vertices);
        }
    }

    /** The same line with arcs in place of chords. */
    public static Fitted fit(List<Vertex> vertices, boolean closed, Limits limits) {
        return new ArcFitting(vertices, closed, limits).fit();
    }

    private Fitted fit() {
        if (in.size() <= limits.chords()) {
            return new Fitted(in, 0, 0, 0);
        }
        if (closed) {
            Optional<Fitted> circle = circle();
            if (circle.isPresent()) {
                return circle.get();
            }
        }
        List<Vertex> line = new ArrayList<>(in);
        if (closed) {
            Collections.rotate(line, -sharpest());
            line.add(line.get(0));
        }
        return segmented(line);
    }

    private Fitted segmented(List<Vertex> line) {
        List<Vertex> out = new ArrayList<>();
        int arcs = 0;
        int chords = 0;
        double off = 0;
        int last = line.size() - 1;
        int i = 0;
        while (i < last) {
            int j = farthest(line, i, last);
            if (j < 0) {
                out.add(line.get(i++));
                continue;
            }
            Circle circle = through(line, i, j).orElseThrow();
            double sweep = sweep(line, circle, i, j);
            add(out, line.get(i), line.get(j).point(), sweep);
            off = Math.max(off, worst(line, circle, i, j));
            arcs++;
            chords += j - i;
            i = j;
        }
        if (!closed) {
            out.add(line.get(last));
        }
        return new Fitted(out, arcs, chords, off);
    }

    /** Arcs over a half circle in two parts. */
    private static void add(List<Vertex> out, Vertex from, Point to, double sweep) {
        double bulge = StrictMath.tan(Math.toRadians(sweep) / 4);
        if (Math.abs(sweep) <= HALF) {
            out.add(new Vertex(from.x(), from.y(), bulge));
            return;
        }
        Arc arc = Arc.between(from.point(), to, bulge);
        Point middle = arc.centre().polar(arc.radius(), arc.startAngle() + sweep / 2);
        double half = StrictMath.tan(Math.toRadians(sweep) / 8);
        out.add(new Vertex(from.x(), from.y(), half));
        out.add(new Vertex(middle.x(), middle.y(), half));
    }

    /** The last end that still lies on an arc from i; -1 if there is none. */
    private int farthest(List<Vertex> line, int i, int last) {
        int good = i + limits.chords();
        if (good > last || !fits(line, i, good)) {
            return -1;
        }
        int step = 1;
        while (good + step <= last && fits(line, i, good + step)) {
            good += step;
            step *= 2;
        }
        for (; step > 0; step /= 2) {
            if (good + step <= last && fits(line, i, good + step)) {
                good += step;
            }
        }
        Optional<Circle> circle = through(line, i, good);
        boolean wide = Math.abs(sweep(line, circle.orElseThrow(), i, good)) >= limits.sweep();
        return wide ? good : -1;
    }

    private boolean fits(List<Vertex> line, int i, int j) {
        Optional<Circle> found = through(line, i, j);
        if (found.isEmpty()) {
            return false;
        }
        Circle c = found.get();
        double side = 0;
        for (int k = i; k < j; k++) {
            double turn = step(line, c, k);
            boolean chord = line.get(k).bulge() == 0 && fitsChord(c, Math.abs(turn));
            boolean sameWay = side == 0 || Math.signum(turn) == side;
            if (!chord || !sameWay || Math.abs(c.centre().distance(line.get(k).point()) - c.radius()) > limits.off()) {
                return false;
            }
            side = Math.signum(turn);
        }
        return Math.abs(sweep(line, c, i, j)) <= MOST_SWEEP;
    }

    private boolean fitsChord(Circle c, double turn) {
        double sagitta = sagitta(c, turn);
        boolean fine = sagitta <= Math.min(limits.off(), limits.sagitta()) && turn <= 2 * limits.turn();
        return turn > 0 && (fine || (turn <= limits.turn() && sagitta <= limits.sagitta()));
    }

    private static double sagitta(Circle c, double turn) {
        return c.radius() * (1 - StrictMath.cos(Math.toRadians(turn) / 2));
    }

    /** The circle through the ends i and j and the one in the middle of them, if it is large enough. */
    private Optional<Circle> through(List<Vertex> line, int i, int j) {
        return through(
                line.get(i).point(), line.get((i + j) / 2).point(), line.get(j).point());
    }

    private Optional<Circle> through(Point a, Point b, Point c) {
        double bx = b.x() - a.x();
        double by = b.y() - a.y();
        double cx = c.x() - a.x();
        double cy = c.y() - a.y();
        double cross = 2 * (bx * cy - by * cx);
        double bb = bx * bx + by * by;
        double cc = cx * cx + cy * cy;
        double x = (cy * bb - by * cc) / cross;
        double y = (bx * cc - cx * bb) / cross;
        double radius = Math.sqrt(x * x + y * y);
        boolean sound = Double.isFinite(radius) && radius >= limits.radius();
        return sound ? Optional.of(new Circle(a.plus(x, y), radius)) : Optional.empty();
    }

    /** Degrees about the centre from end k to the next, anticlockwise positive. */
    private static double step(List<Vertex> line, Circle c, int k) {
        double turn = c.centre().angleTo(line.get(k + 1).point())
                - c.centre().angleTo(line.get(k).point());
        return turn > HALF ? turn - 2 * HALF : turn <= -HALF ? turn + 2 * HALF : turn;
    }

    private static double sweep(List<Vertex> line, Circle c, int i, int j) {
        double sum = 0;
        for (int k = i; k < j; k++) {
            sum += step(line, c, k);
        }
        return sum;
    }

    private static double worst(List<Vertex> line, Circle c, int i, int j) {
        double worst = 0;
        for (int k = i; k < j; k++) {
            worst = Math.max(worst, sagitta(c, Math.abs(step(line, c, k))));
        }
        return worst;
    }

    /** All of it as one circle, from the first vertex. */
    private Optional<Fitted> circle() {
        List<Vertex> line = new ArrayList<>(in);
        line.add(in.get(0));
        int n = in.size();
        Optional<Circle> found = through(
                in.get(0).point(), in.get(n / 3).point(), in.get(2 * n / 3).point());
        if (found.isEmpty() || n < 2 * limits.chords()) {
            return Optional.empty();
        }
        Circle c = found.get();
        for (int k = 0; k < n; k++) {
            double off = Math.abs(c.centre().distance(in.get(k).point()) - c.radius());
            if (in.get(k).bulge() != 0 || off > limits.off() || !fitsChord(c, Math.abs(step(line, c, k)))) {
                return Optional.empty();
            }
        }
        double sweep = sweep(line, c, 0, n);
        if (Math.abs(Math.abs(sweep) - 2 * HALF) > 1e-6) {
            return Optional.empty();
        }
        double hand = Math.signum(sweep);
        Point first = c.centre().polar(c.radius(), c.centre().angleTo(in.get(0).point()));
        Point other = c.centre().polar(c.radius(), c.centre().angleTo(in.get(0).point()) + HALF);
        List<Vertex> two = List.of(new Vertex(first.x(), first.y(), hand), new Vertex(other.x(), other.y(), hand));
        return Optional.of(new Fitted(two, 1, n, worst(line, c, 0, n)));
    }

    /** Where an arc is least likely to go on: beside an arc that is one already, or where the line turns most. */
    private int sharpest() {
        int n = in.size();
        int best = 0;
        double most = -1;
        for (int i = 0; i < n; i++) {
            Vertex before = in.get((i + n - 1) % n);
            Vertex v = in.get(i);
            double turn = v.point().angleTo(in.get((i + 1) % n).point())
                    - before.point().angleTo(v.point());
            double size = Math.abs(Math.IEEEremainder(turn, 2 * HALF));
            double lengths = before.point().distance(v.point())
                    / v.point().distance(in.get((i + 1) % n).point());
            double uneven = Math.max(lengths, 1 / lengths) > 1.5 ? HALF : 0;
            double sharp = before.bulge() != 0 || v.bulge() != 0 ? 3 * HALF : size + uneven;
            if (sharp > most + 1e-9) {
                most = sharp;
                best = i;
            }
        }
        return best;
    }
}
