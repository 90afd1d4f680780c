package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.search.LoopSolver;

/**
 * Shortens a loop of stiff pipe: the lines of nodes furthest from the port are given up, as many as it takes. A stiff loop
 * leaves some nodes out anyway, so a few more are offered first than it may pass.
 */
final class StiffShortening {
    /**
     * Lengths asked for, as shares of what is wanted, for stiff pipe leaves more out than it is asked to: chosen, not
     * measured.
     */
    private static final double[] OFFERED = {1.15, 1.1, 1.05, 1};

    private final LoopProblem problem;

    StiffShortening(LoopProblem problem) {
        this.problem = problem;
    }

    /** The best loop of at most so many nodes that was found; what is proved of the nodes offered is no bound for all. */
    Optional<LoopSolution> atMost(int nodes) {
        return Arrays.stream(OFFERED)
                .mapToObj(offered -> laid((int) Math.floor(offered * nodes)))
                .flatMap(Optional::stream)
                .filter(loop -> loop.cycle().size() <= nodes)
                .min(Comparator.comparingInt(LoopSolution::objective));
    }

    private Optional<LoopSolution> laid(int offered) {
        Subgraph near =
                new Subgraph(problem.graph(), nearest(Math.min(problem.graph().size(), offered)));
        List<PortPair> ports = near.ports(problem.ports(), Integer.MAX_VALUE);
        if (ports.isEmpty()) {
            return Optional.empty();
        }
        Answer<LoopSolution> outcome =
                new LoopSolver().solve(new LoopProblem(near.graph(), ports, problem.preference(), problem.limit()));
        return outcome instanceof Answer.Found<LoopSolution> found
                ? Optional.of(near.inWhole(found.it()).countedOn(problem.graph()))
                : Optional.empty();
    }

    /** Line after line from the port on, along the longer side; in ascending order. */
    private List<Integer> nearest(int count) {
        LatticeGraph graph = problem.graph();
        int port = problem.ports().get(0).from();
        List<Integer> all = new ArrayList<>();
        int columns = 0;
        int rows = 0;
        for (int n = 0; n < graph.size(); n++) {
            all.add(n);
            columns = Math.max(columns, Math.abs(graph.column(n) - graph.column(port)));
            rows = Math.max(rows, Math.abs(graph.row(n) - graph.row(port)));
        }
        boolean wide = columns >= rows;
        all.sort(Comparator.comparingInt((Integer n) ->
                        Math.abs(wide ? graph.column(n) - graph.column(port) : graph.row(n) - graph.row(port)))
                .thenComparingInt(n -> n));
        return all.subList(0, count).stream().sorted().toList();
    }
}
