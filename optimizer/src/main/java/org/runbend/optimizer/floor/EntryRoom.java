package org.runbend.optimizer.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * Where holes may be and where lead-ins may lie: a pocket stays the least web inside the outline, off things and supports
 * and off what lies under the floor; the groove of a lead-in likewise. Works on the floor as it is given.
 */
public final class EntryRoom {
    private final Entry entry;
    private final FreeSpace pockets;
    private final FreeSpace grooves;
    private final SiteRules site;

    /** The room of a floor. */
    public EntryRoom(FloorProblem problem) {
        this(problem, new LatticeAxes(0));
    }

    /** The room of a floor, in the lattice's axes. */
    EntryRoom(FloorProblem problem, LatticeAxes frame) {
        this.entry = problem.entry();
        double half = entry.pad() / 2;
        List<KeepOut> solid = new ArrayList<>();
        for (KeepOut k : problem.keepOuts()) {
            solid.add(new KeepOut(k.name(), k.kind(), k.bare(), Math.max(half, k.clearance())));
        }
        for (Shape.Polygon b : entry.below()) {
            solid.add(new KeepOut("", KeepOut.Kind.OTHER, b, half));
        }
        boolean wall = entry.turn() == Job.Turn.LEVEL;
        List<Point> outline = frame.in(problem.outline());
        this.pockets = new FreeSpace(
                outline, half + entry.leastWeb(), solid.stream().map(frame::in).toList());
        this.grooves = new FreeSpace(
                outline,
                wall ? 0 : entry.half() + entry.leastWeb(),
                keepOuts(problem).map(frame::in).toList());
        this.site = new SiteRules(problem, frame);
    }

    /** Keep-outs and the regions that a person keeps pipe out of. */
    static Stream<KeepOut> keepOuts(FloorProblem problem) {
        Stream<KeepOut> ruledOut = problem.pipeRules().stream()
                .filter(PipeRule.NoPipe.class::isInstance)
                .map(v -> new KeepOut(v.key(), KeepOut.Kind.OTHER, ((PipeRule.NoPipe) v).region(), 0));
        return Stream.concat(problem.keepOuts().stream(), ruledOut);
    }

    /** Whether a hole may be drilled there; through a wall any place will do. */
    public boolean allowsHole(Point at) {
        return entry.turn() == Job.Turn.LEVEL || (pockets.allowsPoint(at.x(), at.y()) && site.mayEnd(at.x(), at.y()));
    }

    /** Whether the pipe of a lead-in may lie there. */
    public boolean allows(List<Element> lead) {
        return lead.stream().allMatch(this::allows);
    }

    private boolean allows(Element e) {
        if (e instanceof Element.Bend bend) {
            double start = Math.atan2(
                    bend.from().y() - bend.centre().y(),
                    bend.from().x() - bend.centre().x());
            double sweep = Math.toRadians(bend.turn());
            return grooves.allowsArc(bend.centre().x(), bend.centre().y(), bend.radius(), start, sweep)
                    && site.allowsArc(
                            new Distance.Arc(bend.centre().x(), bend.centre().y(), bend.radius(), start, sweep));
        }
        return grooves.allowsSegment(e.from().x(), e.from().y(), e.to().x(), e.to().y())
                && site.allowsSegment(e.from().x(), e.from().y(), e.to().x(), e.to().y());
    }
}
