package org.runbend.optimizer.bare;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/**
 * A change of one size and the floor with it.
 *
 * @param change what is changed
 * @param subject the keep-out's name for a clearance
 * @param from size now
 * @param to size tried
 * @param problem the floor with the change
 */
record Trial(Remedy.Change change, String subject, double from, double to, FloorProblem problem) {
    private static final double STEP = 5;

    /** Less edge, in steps of 5 mm, the mildest first. */
    static List<Trial> edges(FloorProblem p, double least) {
        List<Trial> trials = new ArrayList<>();
        for (double to = below(p.edge(), STEP); to >= least; to -= STEP) {
            trials.add(new Trial(
                    Remedy.Change.EDGE,
                    "",
                    p.edge(),
                    to,
                    with(p, p.keepOuts(), p.port(), p.reach(), p.spacing(), to, p.radius())));
        }
        return trials;
    }

    /** Less clearance of one keep-out. */
    static List<Trial> clearances(FloorProblem p, int index, double least) {
        KeepOut now = p.keepOuts().get(index);
        List<Trial> trials = new ArrayList<>();
        double own = now.bare() instanceof Shape.Spot spot ? spot.radius() : 0; // the key counts from the point
        for (double key = below(now.clearance() + own, STEP); key - own >= least; key -= STEP) {
            double to = key - own;
            List<KeepOut> keepOuts = new ArrayList<>(p.keepOuts());
            keepOuts.set(index, new KeepOut(now.name(), now.kind(), now.bare(), to));
            trials.add(new Trial(
                    Remedy.Change.CLEARANCE,
                    now.name(),
                    now.clearance() + own,
                    key,
                    with(p, keepOuts, p.port(), p.reach(), p.spacing(), p.edge(), p.radius())));
        }
        return trials;
    }

    /** Less spacing, in steps of 10 mm, by a fifth at most. */
    static List<Trial> spacings(FloorProblem p, double least, double radius) {
        List<Trial> trials = new ArrayList<>();
        for (double to = below(p.spacing(), 2 * STEP); to >= Math.max(least, 0.8 * p.spacing()); to -= 2 * STEP) {
            trials.add(new Trial(
                    Remedy.Change.SPACING,
                    "",
                    p.spacing(),
                    to,
                    with(p, p.keepOuts(), p.port(), p.reach(), to, p.edge(), Math.max(to / 2, radius))));
        }
        return trials;
    }

    /** Another reach of the port. */
    static Trial reach(FloorProblem p, double to) {
        return new Trial(
                Remedy.Change.REACH,
                "",
                p.reach(),
                to,
                with(p, p.keepOuts(), p.port(), to, p.spacing(), p.edge(), p.radius()));
    }

    /** The port elsewhere. */
    static Trial port(FloorProblem p, Point to) {
        return new Trial(
                Remedy.Change.PORT, "", 0, 0, with(p, p.keepOuts(), to, p.reach(), p.spacing(), p.edge(), p.radius()));
    }

    private static double below(double size, double step) {
        return step * Math.ceil(size / step - 1 - 1e-9);
    }

    private static FloorProblem with(
            FloorProblem p,
            List<KeepOut> keepOuts,
            Point port,
            double reach,
            double spacing,
            double edge,
            double radius) {
        return new FloorProblem(
                p.outline(),
                keepOuts,
                p.unheated(),
                port,
                reach,
                spacing,
                edge,
                radius,
                p.angle(),
                p.leftOutPrice(),
                p.supports(),
                p.pipeRules(),
                p.mostPorts(),
                p.entry());
    }

    /** What it frees, as a remedy. */
    Remedy freeing(int here, double more, double area) {
        boolean port = change == Remedy.Change.PORT;
        return new Remedy(
                change,
                subject,
                from,
                to,
                port ? problem.port().x() : 0,
                port ? problem.port().y() : 0,
                here,
                (int) Math.floor(more + 1e-9),
                area / 1e6);
    }
}
