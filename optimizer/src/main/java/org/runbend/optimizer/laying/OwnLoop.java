package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.DrawnBreakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopPathVerifier;
import org.runbend.optimizer.verify.WishVerifier;

/**
 * A loop that the designer drew: broken down as it is and held against every rule of a loop. Each fault is told by the
 * designer's own points and segments, of a drawing by the places.
 */
public final class OwnLoop {
    private static final double ON_SEGMENT = 0.001;
    /** A loop that ends this near to a hole ends in it, mm. */
    private static final double AT_HOLE = 1;

    private final Job job;
    private final DrawnLoop loop;
    private final List<Point> drawn;
    private final Breakdown breakdown;

    /** The loop of a job that has one; corners at half the spacing or the pipe's least radius, or what fits; arcs as drawn. */
    public OwnLoop(Job job) {
        this.job = job;
        this.loop = job.layout().loop();
        this.drawn = loop.points();
        this.breakdown =
                new DrawnBreakdown(LoopPipes.bendRadius(job), job.layout().spacing()).of(loop);
    }

    /**
     * The loop as runs and bends.
     *
     * @throws Unbuildable with one line for each fault
     */
    public Breakdown checked() {
        List<String> faults = faults();
        if (!faults.isEmpty()) {
            throw new Unbuildable("layout.loop", faults);
        }
        return breakdown;
    }

    /** One line for each fault, one for each place where strands are too near; empty for a loop that can be laid. */
    List<String> faults() {
        List<Finding> found = new ArrayList<>(LoopPathVerifier.of(job).verify(List.of(breakdown)));
        found.addAll(new WishVerifier(
                        job.floor().supports(),
                        job.layout().pipeRules(),
                        job.pipe().product().outer())
                .verify(List.of(breakdown)));
        return Stream.concat(NearPairs.thinned(found).stream().map(f -> f.words(this::place)), farFromHoles().stream())
                .toList();
    }

    /** A loop that somebody drew begins and ends in the holes that the job gives. */
    private List<String> farFromHoles() {
        List<String> found = new ArrayList<>();
        for (Job.HolePair pair : job.floor().port().holes()) {
            Point first = drawn.get(0);
            Point last = drawn.get(drawn.size() - 1);
            if (first.distance(pair.flow()) > AT_HOLE) {
                found.add("the loop begins at " + text(first) + ", the hole of the flow is given at "
                        + text(pair.flow()));
            }
            if (last.distance(pair.back()) > AT_HOLE) {
                found.add(
                        "the loop ends at " + text(last) + ", the hole of the return is given at " + text(pair.back()));
            }
        }
        return found;
    }

    private String place(Finding.Place at) {
        if (at.element() < 0) {
            return "the loop";
        }
        Element element = breakdown.elements().get(at.element());
        if (loop.isOfDrawing()) {
            String what = element instanceof Element.Run ? "the run" : "the bend";
            return what + " from " + text(element.from()) + " to " + text(element.to());
        }
        if (element instanceof Element.Run run) {
            int segment = segmentOf(run.along(run.length() / 2));
            return String.format(
                    Locale.ROOT,
                    "segment %d from %s to %s",
                    segment,
                    text(drawn.get(segment)),
                    text(drawn.get(segment + 1)));
        }
        int corner = cornerOf((Element.Bend) element);
        return String.format(Locale.ROOT, "the bend at point %d %s", corner, text(drawn.get(corner)));
    }

    private static String text(Point p) {
        return String.format(Locale.ROOT, "[%.1f, %.1f]", p.x(), p.y()).replace(".0", "");
    }

    /** The first segment that the point lies on, else the nearest. */
    private int segmentOf(Point p) {
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < drawn.size() && least > ON_SEGMENT; i++) {
            Point a = drawn.get(i);
            Point b = drawn.get(i + 1);
            // on the segment, and only there, the ways to both ends add up to its length
            double detour = a.distance(p) + p.distance(b) - a.distance(b);
            if (detour < least) {
                least = detour;
                nearest = i;
            }
        }
        return nearest;
    }

    /** The drawn corner nearest to the middle of the way from a bend's start to its end. */
    private int cornerOf(Element.Bend bend) {
        double x = (bend.from().x() + bend.to().x()) / 2;
        double y = (bend.from().y() + bend.to().y()) / 2;
        int nearest = 1;
        for (int i = 1; i + 1 < drawn.size(); i++) {
            nearest =
                    drawn.get(i).distance(new Point(x, y)) < drawn.get(nearest).distance(new Point(x, y)) - ON_SEGMENT
                            ? i
                            : nearest;
        }
        return nearest;
    }
}
