package org.runbend.optimizer.setout;

import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * How a loop is marked out with tape, square and pencil. Places are distances along the base line and along the square
 * line, mm; {@link Frame} turns them into places of the floor.
 *
 * @param datum the lines that all is measured from
 * @param lines straights to snap, and what is marked on each
 * @param loops runs and bends of each loop in order of flow
 */
public record SetOut(Datum datum, List<ChalkLine> lines, List<LoopMarks> loops) {
    /** Copies the lists. */
    public SetOut {
        lines = List.copyOf(lines);
        loops = List.copyOf(loops);
    }

    /**
     * A straight on which runs lie.
     *
     * @param lie to which line it is parallel; a slanting one holds one run
     * @param offset its distance from that line, mm; 0 for a slanting one
     * @param stops what is marked on it, from its lower end
     */
    public record ChalkLine(Lie lie, double offset, List<Stop> stops) {
        /** Copies the list. */
        public ChalkLine {
            stops = List.copyOf(stops);
        }
    }

    /**
     * What is marked on a straight: a run, or where two bends meet.
     *
     * @param loop name of the loop
     * @param number of the run along the flow, from 1; of the first of two bends that meet
     * @param bends whether two bends meet here
     * @param from where the flow enters it
     * @param to where the flow leaves it
     */
    public record Stop(String loop, int number, boolean bends, Point from, Point to) {}

    /**
     * A loop.
     *
     * @param name A, B, ...
     * @param flow where pipe comes up
     * @param back where it goes down again
     * @param runs straights in order of flow
     * @param bends arcs in order of flow
     */
    public record LoopMarks(String name, Point flow, Point back, List<RunMark> runs, List<BendMark> bends) {
        /** Copies the lists. */
        public LoopMarks {
            runs = List.copyOf(runs);
            bends = List.copyOf(bends);
        }
    }

    /**
     * A run.
     *
     * @param element its index in the loop
     * @param number among the runs, from 1
     * @param lie to which line it is parallel
     * @param from where the flow enters it
     * @param to where the flow leaves it
     * @param metre pipe from the flow's hole to its start, mm
     * @param left how far it may move to the left of the flow before something is touched
     * @param right likewise to the right
     */
    public record RunMark(int element, int number, Lie lie, Point from, Point to, double metre, Room left, Room right) {
        /** mm. */
        public double length() {
            return from.distance(to);
        }

        /** Its distance from the line it is parallel to, mm. */
        public double offset() {
            return lie.offset(from);
        }
    }

    /**
     * A bend.
     *
     * @param element its index in the loop
     * @param number among the bends, from 1
     * @param centre for the compass
     * @param radius mm
     * @param turn degrees, anticlockwise positive
     * @param from where the flow enters it
     * @param to where the flow leaves it
     * @param metre pipe from the flow's hole to its start, mm
     * @param endMetre to its end
     */
    public record BendMark(
            int element,
            int number,
            Point centre,
            double radius,
            double turn,
            Point from,
            Point to,
            double metre,
            double endMetre) {
        /** Whether it turns to the left, seen along the flow from above. */
        public boolean isLeft() {
            return turn > 0;
        }
    }

    /**
     * Room beside a run.
     *
     * @param distance mm
     * @param what what is touched then
     */
    public record Room(double distance, String what) {}
}
