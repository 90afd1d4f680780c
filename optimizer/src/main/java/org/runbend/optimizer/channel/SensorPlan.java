package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.job.Point;

/**
 * Where the floor's sensor lies and how its lead gets there.
 *
 * @param problem what was asked
 * @param at the sensor; none where no place under a plate can be reached
 * @param conduit from the port to the sensor, corners of its middle line; none without a sensor
 * @param wanted the place that feels the mean of flow and return best, if there is one at all
 * @param nearest the place nearest to the wanted one that can be reached, if anything can
 */
public record SensorPlan(
        SensorProblem problem,
        Optional<Point> at,
        List<Point> conduit,
        Optional<Point> wanted,
        Optional<Point> nearest) {
    /** Copies the list. */
    public SensorPlan {
        conduit = List.copyOf(conduit);
    }

    /** How far it is along the conduit to each of its corners, mm. */
    public List<Double> marks() {
        List<Double> marks = new ArrayList<>();
        double sum = 0;
        for (int i = 0; i < conduit.size(); i++) {
            sum += i == 0 ? 0 : conduit.get(i - 1).distance(conduit.get(i));
            marks.add(sum);
        }
        return marks;
    }

    /** Length of the conduit, mm. */
    public double length() {
        return conduit.isEmpty() ? 0 : marks().get(conduit.size() - 1);
    }

    /** What the cable needs up to the port and from there to its box, mm; 0 without a sensor. */
    public double cable() {
        return conduit.isEmpty() ? 0 : length() + conduit.get(0).distance(problem.port()) + SensorProblem.LEFT;
    }

    /** Whether the cable is too short for that, if its length is known. */
    public boolean isCableShort() {
        return cable() > problem.size().cable() + 1e-6;
    }

    /** Whether the sensor lies where it is wanted. */
    public boolean isWhereWanted() {
        return at.isPresent() && at.equals(wanted);
    }
}
