package org.runbend.optimizer.loop.search;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;

/** Brute force: walks every simple cycle through a port link and rates it by counting on the list of nodes. */
public final class EveryLoop {
    /** A loop rated: objective in the graph's unit, plateable length in thousandths of a spacing, corners where they are unwelcome, links off the axis. */
    record Rating(long objective, long length, int crowded, int offAxis, int rank) {
        boolean betterThan(Rating other) {
            if (other == null || objective != other.objective) {
                return other == null || objective < other.objective;
            }
            if (length != other.length) {
                return length > other.length;
            }
            if (crowded != other.crowded) {
                return crowded < other.crowded;
            }
            return offAxis != other.offAxis ? offAxis < other.offAxis : rank < other.rank;
        }
    }

    private final LoopProblem problem;
    private final LatticeGraph graph;
    private Rating best;

    EveryLoop(LoopProblem problem) {
        this.problem = problem;
        this.graph = problem.graph();
    }

    /** The best rating over all ports and loops, or null if there is no loop. */
    Rating best() {
        for (PortPair port : problem.ports()) {
            Deque<Integer> path = new ArrayDeque<>(List.of(port.from()));
            walk(path, new HashSet<>(path), port, reachable(graph, port));
        }
        return best;
    }

    /** The rating of a given loop, which must be one that {@link #best} would meet. */
    Rating rating(LoopSolution solution) {
        return rate(solution.cycle(), solution.port(), reachable(graph, solution.port()));
    }

    private void walk(Deque<Integer> path, Set<Integer> on, PortPair port, Set<Integer> reachable) {
        for (Heading heading : Heading.values()) {
            int next = graph.neighbour(path.getLast(), heading);
            if (next < 0 || on.contains(next) || (next == port.to() && path.size() < 3)) {
                continue;
            }
            path.addLast(next);
            on.add(next);
            if (next == port.to()) {
                Rating rating = passesWanted(on) ? rate(List.copyOf(path), port, reachable) : null;
                best = rating != null && rating.betterThan(best) ? rating : best;
            } else {
                walk(path, on, port, reachable);
            }
            on.remove(next);
            path.removeLast();
        }
    }

    private boolean passesWanted(Set<Integer> on) {
        for (int node = 0; node < graph.size(); node++) {
            if (graph.isWanted(node) && !on.contains(node)) {
                return false;
            }
        }
        return true;
    }

    /** Nodes on any simple cycle through the port, found by walking them all. */
    public static Set<Integer> reachable(LatticeGraph graph, PortPair port) {
        Set<Integer> reachable = new HashSet<>();
        gather(graph, new ArrayDeque<>(List.of(port.from())), port, reachable);
        return reachable;
    }

    private static void gather(LatticeGraph graph, Deque<Integer> path, PortPair port, Set<Integer> reachable) {
        for (Heading heading : Heading.values()) {
            int next = graph.neighbour(path.getLast(), heading);
            if (next >= 0 && !path.contains(next) && !(next == port.to() && path.size() < 3)) {
                path.addLast(next);
                if (next == port.to()) {
                    reachable.addAll(path);
                } else {
                    gather(graph, path, port, reachable);
                }
                path.removeLast();
            }
        }
    }

    /** Straight pieces: both ends of each, and what so short a one costs more; a loop has four corners at least. */
    private long pieces(boolean[] corner) {
        int first = 0;
        while (!corner[first]) {
            first++;
        }
        long cost = 0;
        int straight = 0;
        for (int i = 1; i <= corner.length; i++) {
            if (corner[(first + i) % corner.length]) {
                List<Integer> extra = graph.straightCost().extra();
                cost += straight > 0
                        ? graph.straightCost().end() + graph.straightCost().end()
                        : 0;
                cost += straight > 0 && straight <= extra.size() ? extra.get(straight - 1) : 0;
                straight = 0;
            } else {
                straight++;
            }
        }
        return cost;
    }

    /** Null if a bend is forbidden. */
    private Rating rate(List<Integer> cycle, PortPair port, Set<Integer> reachable) {
        int size = cycle.size();
        boolean[] corner = new boolean[size];
        long objective = 0;
        int offAxis = 0;
        int heated = 0;
        int crowded = 0;
        for (int i = 0; i < size; i++) {
            Heading back = graph.headingTo(cycle.get(i), cycle.get((i + size - 1) % size));
            Heading on = graph.headingTo(cycle.get(i), cycle.get((i + 1) % size));
            corner[i] = back != on.opposite();
            objective += corner[i] ? 1 : 0;
            crowded += corner[i] && graph.isCrowded(cycle.get(i)) ? 1 : 0;
            heated += graph.price(cycle.get(i)) > 0 ? 1 : 0;
            boolean inside = i > 0 && i + 1 < size;
            if (inside && !graph.bendAllowed(cycle.get(i), back, on)) {
                return null;
            }
            Axis axis = problem.preference().axis();
            offAxis += (axis == Axis.X && on.dy() != 0) || (axis == Axis.Y && on.dx() != 0) ? 1 : 0;
        }
        long turns = objective;
        objective = graph.turnCost() * turns + pieces(corner);
        long shortRuns = 0;
        for (int i = 0; i < size; i++) {
            shortRuns += corner[i] && corner[(i + 1) % size] ? 1 : 0;
        }
        for (int node : reachable) {
            objective += cycle.contains(node) ? 0 : graph.price(node);
        }
        long clearances = Math.round(2000 * problem.preference().bendClearanceInSpacings());
        long length = 1000 * (heated - turns) - clearances * (turns - shortRuns);
        return new Rating(objective, length, crowded, offAxis, port.rank());
    }
}
