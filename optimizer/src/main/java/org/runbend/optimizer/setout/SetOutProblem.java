package org.runbend.optimizer.setout;

import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/**
 * What is to be marked out.
 *
 * @param job floor, things, groove
 * @param grid a node and the direction of the lattice; of a loop that lies on none the direction of its longest run
 * @param spacing of the lattice, mm; 0 for a loop that lies on none
 * @param loops the loops
 * @param plates pieces of plate
 */
public record SetOutProblem(Job job, Frame grid, double spacing, List<Loop> loops, List<Plate> plates) {
    /** Copies the lists. */
    public SetOutProblem {
        loops = List.copyOf(loops);
        plates = List.copyOf(plates);
    }

    /**
     * A loop.
     *
     * @param name A, B, ...
     * @param breakdown its runs and bends
     */
    public record Loop(String name, Breakdown breakdown) {}

    /**
     * A piece of plate.
     *
     * @param corners what it covers of the floor
     * @param runs the runs that lie in it
     */
    public record Plate(List<Point> corners, List<RunOf> runs) {
        /** Copies the lists. */
        public Plate {
            corners = List.copyOf(corners);
            runs = List.copyOf(runs);
        }
    }

    /**
     * A run of a loop.
     *
     * @param loop index of the loop
     * @param element index in it
     */
    public record RunOf(int loop, int element) {}
}
