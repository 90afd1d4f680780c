package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopCost;
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
                ? Optional.of(rated(near.inWhole(found.it())))
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

    private LoopSolution rated(LoopSolution loop) {
        LatticeGraph graph = problem.graph();
        List<Integer> block = BiconnectedBlock.ofLink(
                        graph, loop.port().from(), loop.port().to())
                .orElseThrow()
                .nodes();
        boolean[] served = new boolean[graph.size()];
        loop.cycle().forEach(n -> served[n] = true);
        List<Integer> bare =
                block.stream().filter(n -> !served[n] && graph.price(n) > 0).toList();
        return new LoopSolution(
                loop.cycle(),
                loop.port(),
                loop.turns(),
                bare.size(),
                OptionalInt.empty(),
                (int) LoopCost.ofShape(graph, loop.cycle())
                        + bare.stream().mapToInt(graph::price).sum(),
                OptionalInt.empty(),
                List.of());
    }
}
