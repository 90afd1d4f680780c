package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Shape;

/**
 * How pipe comes onto the floor and leaves it. Sizes in mm.
 *
 * @param turn which way it leaves
 * @param slot how far back from a hole's axis, along the pipe, the groove is deepened so that the pipe can turn
 * @param pad diameter of the pocket at a hole
 * @param leastWeb what stays between a pocket, or the groove of a lead-in, and the outline
 * @param half half the groove where it is widest
 * @param radius of the turn into a hole and of bends on the way to one
 * @param holes where the pipe goes through; empty if that is to be chosen
 * @param below where no hole goes
 * @param loops how many loops come to the port
 */
public record Entry(
        Job.Turn turn,
        double slot,
        double pad,
        double leastWeb,
        double half,
        double radius,
        List<Job.HolePair> holes,
        List<Shape.Polygon> below,
        int loops) {
    /** Nothing to heed: a pipe that begins and ends anywhere. */
    public static final Entry FREE = new Entry(Job.Turn.DOWN, 0, 0, 0, 0, 1, List.of(), List.of(), 1);

    /** Copies the lists. */
    public Entry {
        holes = List.copyOf(holes);
        below = List.copyOf(below);
    }

    /** The entry of a job with so many loops. */
    public static Entry of(Job job, int loops) {
        Groove groove = job.groove();
        Job.Port port = job.floor().port();
        return new Entry(
                port.turn(),
                job.slotLength(),
                groove.pad(),
                groove.leastWeb(),
                groove.half(),
                job.turnRadius(),
                port.holes(),
                port.turn() == Job.Turn.DOWN
                        ? job.floor().below().stream().map(Job.Below::region).toList()
                        : List.of(),
                loops);
    }

    /** Whether what leads from the holes to the lattice is settled before the loop is laid. */
    boolean isSettledFirst() {
        return !holes.isEmpty() || turn == Job.Turn.LEVEL;
    }

    /** Least distance of a lead-in from any other centreline. */
    public double apart() {
        return 2 * half + leastWeb;
    }
}
