package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;

/** Holds a sensor and its conduit against the floor: under a plate, off bends, and no pipe, wall or thing in its way. */
public final class SensorVerifier {
    private static final double TOLERANCE = 0.05;

    private SensorVerifier() {}

    /** What is wrong with a plan; nothing if it is as it should be, or has no sensor. */
    public static List<Finding> verify(SensorPlan plan) {
        Findings findings = new Findings();
        if (plan.at().isEmpty()) {
            findings.unless(plan.conduit().isEmpty(), "a conduit leads to no sensor");
            return findings.all();
        }
        place(plan, findings);
        way(plan, findings);
        return findings.all();
    }

    private static void place(SensorPlan plan, Findings findings) {
        SensorProblem problem = plan.problem();
        Geometry at = Chords.spot(plan.at().get());
        findings.unless(
                problem.plates().stream().anyMatch(p -> {
                    Geometry body = Chords.region(p.corners());
                    return body.covers(at) && body.getBoundary().distance(at) >= SensorProblem.UNDER - TOLERANCE;
                }),
                "the sensor lies under no plate%s",
                Findings.at(at, at));
        for (Breakdown loop : problem.loops()) {
            for (Element e : loop.elements()) {
                double away = e instanceof Element.Bend ? Chords.of(e).distance(at) : Double.POSITIVE_INFINITY;
                findings.unless(
                        away >= SensorProblem.FROM_BEND - TOLERANCE,
                        "the sensor lies %.1f mm from a bend, %.1f mm asked",
                        away,
                        SensorProblem.FROM_BEND);
            }
        }
    }

    private static void way(SensorPlan plan, Findings findings) {
        SensorProblem problem = plan.problem();
        List<Point> conduit = plan.conduit();
        findings.unless(
                conduit.size() > 1
                        && conduit.get(conduit.size() - 1).equals(plan.at().get()),
                "the conduit ends elsewhere than at the sensor");
        double half = SensorProblem.CONDUIT / 2;
        double web = problem.size().web();
        Geometry outline = Chords.region(problem.outline());
        for (int i = 1; i < conduit.size(); i++) {
            Geometry line = GroundShapes.line(conduit.get(i - 1), conduit.get(i));
            double inside = outline.covers(line) ? outline.getBoundary().distance(line) : 0;
            findings.unless(inside >= half + web - TOLERANCE, "the conduit lies %.1f mm from the outline", inside);
            for (Breakdown loop : problem.loops()) {
                double off = Chords.of(loop).distance(line);
                findings.unless(
                        off >= problem.size().groove() + web + half - TOLERANCE,
                        "the conduit comes within %.1f mm of the pipe%s",
                        off,
                        Findings.at(line, Chords.of(loop)));
                for (Slot slot : loop.slots()) {
                    double air = GroundShapes.slot(slot).distance(line);
                    findings.unless(air >= web + half - TOLERANCE, "the conduit lies %.1f mm from a slot", air);
                }
            }
            for (KeepOut k : problem.keepOuts()) {
                double air = GroundShapes.grown(k.bare(), 0).distance(line);
                findings.unless(
                        air >= half + SensorProblem.AIR - TOLERANCE, "the conduit lies %.1f mm from %s", air, k.name());
            }
        }
        for (List<Point> below : problem.below()) {
            findings.unless(
                    Chords.region(below).distance(Chords.spot(conduit.get(0))) >= half,
                    "the conduit goes down over something under the floor");
        }
    }
}
