package org.runbend.optimizer.plan;

import java.util.List;
import java.util.OptionalInt;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;

/**
 * A loop with the lattice it lies on, for people who want to see why.
 *
 * @param job the job
 * @param nodes every place of the lattice
 * @param links every link that pipe may follow
 * @param tightCorners places where a bend would come too near to something, with the two legs it may not join
 * @param breakdowns the loops
 * @param port the two ends of each loop
 * @param turns corners of the closed cycle
 * @param leftOut reachable heated places not served
 * @param turnBound least turns at this leftOut, if proved
 * @param objective turns + price of what is left out
 * @param objectiveBound least objective, if proved
 * @param pairs pairs of left-out places and turns that were met on the way
 * @param bareFloor the heated floor that stays bare, why, and what would free it
 */
public record LoopView(
        Job job,
        List<Node> nodes,
        List<Link> links,
        List<TightCorner> tightCorners,
        List<Breakdown> breakdowns,
        List<Point> port,
        int turns,
        int leftOut,
        OptionalInt turnBound,
        int objective,
        OptionalInt objectiveBound,
        List<Pair> pairs,
        List<BareFloor> bareFloor) {
    /** Copies the lists. */
    public LoopView {
        nodes = List.copyOf(nodes);
        links = List.copyOf(links);
        tightCorners = List.copyOf(tightCorners);
        breakdowns = List.copyOf(breakdowns);
        port = List.copyOf(port);
        pairs = List.copyOf(pairs);
        bareFloor = List.copyOf(bareFloor);
    }

    /** What became of a place. */
    public enum State {
        /** The loop passes. */
        SERVED,
        /** Heated, and a loop could pass, but it costs more bends than it is worth or the numbers do not come out. */
        LEFT_OUT,
        /** Heated, but no closed loop through the port can go there and back. */
        OUT_OF_REACH,
        /** On unheated floor, where nobody misses it. */
        UNHEATED
    }

    /** A place and what became of it. */
    public record Node(Point at, State state) {}

    /** A link between two places. */
    public record Link(Point a, Point b) {}

    /** A corner that is too tight: the place and the ends of the legs it may not join. */
    public record TightCorner(Point at, Point legA, Point legB) {}

    /** Left-out places and the least turns met with them. */
    public record Pair(int leftOut, int turns) {}

    /** Number of places of a state. */
    public long count(State state) {
        return nodes.stream().filter(n -> n.state() == state).count();
    }
}
