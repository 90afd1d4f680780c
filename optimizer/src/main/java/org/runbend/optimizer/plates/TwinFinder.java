package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * Finds where a twin-groove plate can lie: beside each other on two parallel runs as far apart as its grooves, both
 * straight, its whole body on free floor. Longest first, each stretch is paired once; what is left of both stays for
 * single-groove plates.
 */
final class TwinFinder {
    /** mm: what a groove may be off its run. */
    private static final double OFF = 0.9;

    /** Sine of the angle up to which two runs are parallel. */
    private static final double PARALLEL = 1e-4;

    private final List<Breakdown> loops;
    private final SpreaderPlate twin;
    private final double minPiece;
    private final double gap;
    private final StretchFinder finder;

    TwinFinder(PlateProblem problem, SpreaderPlate twin) {
        this.loops = problem.loops();
        this.twin = twin;
        minPiece = Math.max(1, problem.request().minPiece());
        gap = problem.request().gap();
        finder = new StretchFinder(problem.floor(), problem.request(), twin.width(), problem.slots());
    }

    /** Two stretches' parts, and the stretches they are parts of. */
    private record Pair(int a, int b, Strip strip) {}

    /** Strips for the twin-groove plate, and strips for single-groove plates on everything else. */
    record Division(List<Strip> twins, List<Strip> singles) {}

    Division divide(List<PlateStretch> stretches) {
        List<Pair> pairs = new ArrayList<>();
        for (int a = 0; a < stretches.size(); a++) {
            for (int b = a + 1; b < stretches.size(); b++) {
                pair(stretches, a, b).ifPresent(pairs::add);
            }
        }
        pairs.sort(Comparator.comparingDouble((Pair p) -> -p.strip().length())
                .thenComparingInt(Pair::a)
                .thenComparingInt(Pair::b));
        Strip[] taken = new Strip[stretches.size()];
        List<Strip> twins = new ArrayList<>();
        for (Pair p : pairs) {
            if (taken[p.a()] == null && taken[p.b()] == null) {
                taken[p.a()] = p.strip();
                taken[p.b()] = p.strip();
                twins.add(p.strip());
            }
        }
        List<Strip> singles = new ArrayList<>();
        for (int s = 0; s < taken.length; s++) {
            singles.addAll(rest(stretches.get(s), taken[s]));
        }
        return new Division(twins, singles);
    }

    private List<Strip> rest(PlateStretch stretch, Strip taken) {
        if (taken == null) {
            return List.of(Strip.single(stretch));
        }
        boolean isFirst =
                taken.first().loop() == stretch.loop() && taken.first().element() == stretch.element();
        PlateStretch part = isFirst ? taken.first() : taken.second().orElseThrow();
        List<Strip> rest = new ArrayList<>();
        addRest(rest, stretch, stretch.from(), part.from() - gap);
        addRest(rest, stretch, part.to() + gap, stretch.to());
        return rest;
    }

    private void addRest(List<Strip> rest, PlateStretch of, double from, double to) {
        if (to - from >= minPiece) {
            rest.add(Strip.single(new PlateStretch(of.loop(), of.element(), from, to)));
        }
    }

    private Element.Run run(PlateStretch s) {
        return (Element.Run) loops.get(s.loop()).elements().get(s.element());
    }

    private Optional<Pair> pair(List<PlateStretch> stretches, int a, int b) {
        PlateStretch one = stretches.get(a);
        PlateStretch other = stretches.get(b);
        Element.Run run = run(one);
        Element.Run beside = run(other);
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        double vx = (beside.to().x() - beside.from().x()) / beside.length();
        double vy = (beside.to().y() - beside.from().y()) / beside.length();
        double off = (beside.from().x() - run.from().x()) * -uy
                + (beside.from().y() - run.from().y()) * ux;
        if (Math.abs(ux * vy - uy * vx) > PARALLEL || Math.abs(Math.abs(off) - twin.centres()) > OFF) {
            return Optional.empty();
        }
        boolean opposed = ux * vx + uy * vy < 0;
        double start = (beside.from().x() - run.from().x()) * ux
                + (beside.from().y() - run.from().y()) * uy;
        double low = opposed ? start - other.to() : start + other.from();
        double high = opposed ? start - other.from() : start + other.to();
        double from = Math.max(one.from(), low);
        double to = Math.min(one.to(), high);
        return free(run, off, -uy, ux, from, to).map(part -> {
            PlateStretch first = new PlateStretch(one.loop(), one.element(), part[0], part[1]);
            double shift = opposed ? start - part[1] : part[0] - start;
            PlateStretch second = new PlateStretch(other.loop(), other.element(), shift, shift + part[1] - part[0]);
            return new Pair(a, b, new Strip(first, Optional.of(second), opposed));
        });
    }

    /** The longest part, as distances from the run's start, where a body between the two runs lies on free floor. */
    private Optional<double[]> free(Element.Run run, double off, double nx, double ny, double from, double to) {
        if (to - from < minPiece) {
            return Optional.empty();
        }
        Point a = run.from();
        Point b = run.to();
        Element.Run middle = new Element.Run(
                new Point(a.x() + nx * off / 2, a.y() + ny * off / 2),
                new Point(b.x() + nx * off / 2, b.y() + ny * off / 2));
        return finder.free(middle, from, to).stream()
                .max(Comparator.comparingDouble((double[] p) -> p[1] - p[0]).thenComparingDouble(p -> -p[0]));
    }
}
