package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.SensorProblem.Plate;
import org.runbend.optimizer.job.Point;

/**
 * Places for a sensor under plates, the best first: between two runs whose mean is that of the loop, half way along the pipe, so
 * that it feels neither flow nor return alone; farther than a sensor's distance from every bend.
 */
final class SensorSpots {
    private static final double STEP = 50;

    /** What two places may differ in and be alike, in shares of the loop. */
    private static final double ALIKE = 0.02;

    private final SensorProblem problem;

    SensorSpots(SensorProblem problem) {
        this.problem = problem;
    }

    /** A place and how far from the mean of the loop it feels, in shares of its length; 1 more where it lies between no two runs. */
    private record Spot(Point at, double off) {}

    List<Point> best() {
        List<Spot> spots = new ArrayList<>();
        for (Plate plate : problem.plates()) {
            double length = plate.from().distance(plate.to());
            for (double t = STEP; t <= length - STEP + 1e-9; t += STEP) {
                double side = plate.grooves() == 2
                        ? 0
                        : Math.min(problem.size().spacing() / 2, plate.width() / 2 - SensorProblem.UNDER);
                add(spots, aside(plate, t, side));
                if (side > 0) {
                    add(spots, aside(plate, t, -side));
                }
            }
        }
        spots.sort(Comparator.comparingDouble((Spot s) -> Math.rint(s.off() / ALIKE))
                .thenComparingDouble(s -> s.at().distance(problem.port())));
        return spots.stream().map(Spot::at).toList();
    }

    private static Point aside(Plate plate, double t, double left) {
        double length = plate.from().distance(plate.to());
        double ux = (plate.to().x() - plate.from().x()) / length;
        double uy = (plate.to().y() - plate.from().y()) / length;
        return new Point(plate.from().x() + t * ux - left * uy, plate.from().y() + t * uy + left * ux);
    }

    private void add(List<Spot> spots, Point at) {
        double least = Double.POSITIVE_INFINITY;
        double second = Double.POSITIVE_INFINITY;
        double share = 0;
        double other = 0;
        for (Breakdown loop : problem.loops()) {
            double along = 0;
            double all = loop.floorLength();
            for (Element e : loop.elements()) {
                if (e instanceof Element.Bend b) {
                    if (away(b, at) < SensorProblem.FROM_BEND) {
                        return;
                    }
                } else {
                    double foot = foot((Element.Run) e, at);
                    double away = at.distance(((Element.Run) e).along(foot));
                    double here = (along + foot) / all;
                    if (away < least) {
                        second = least;
                        other = share;
                        least = away;
                        share = here;
                    } else if (away < second) {
                        second = away;
                        other = here;
                    }
                }
                along += e.length();
            }
        }
        boolean between = second < 0.8 * problem.size().spacing();
        spots.add(new Spot(at, between ? Math.abs((share + other) / 2 - 0.5) : 1 + Math.abs(share - 0.5)));
    }

    /** How far along a run a place lies. */
    private static double foot(Element.Run run, Point p) {
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        double t = (p.x() - run.from().x()) * ux + (p.y() - run.from().y()) * uy;
        return Math.max(0, Math.min(run.length(), t));
    }

    /** From a place to an arc, by its circle within its turn, else by its ends. */
    private static double away(Element.Bend b, Point p) {
        double ends = Math.min(p.distance(b.from()), p.distance(b.to()));
        double start = StrictMath.atan2(
                b.from().y() - b.centre().y(), b.from().x() - b.centre().x());
        double angle =
                StrictMath.atan2(p.y() - b.centre().y(), p.x() - b.centre().x());
        double turned = Math.toDegrees(angle - start) * Math.signum(b.turn());
        double around = ((turned % 360) + 360) % 360;
        return around <= Math.abs(b.turn()) ? Math.min(ends, Math.abs(p.distance(b.centre()) - b.radius())) : ends;
    }
}
