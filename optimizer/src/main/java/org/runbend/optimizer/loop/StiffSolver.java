package org.runbend.optimizer.loop;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Lays a loop for stiff pipe: no two turns follow each other but over the port link, which is not laid. So corners find
 * room for a radius up to one spacing.
 *
 * <p>Method: a narrow beam for a ceiling, then the frontier program without loss under it; what is not proved within the
 * work limit has no bound. A bound is that of loops of this kind.
 */
public final class StiffSolver {
    private static final int[] BEAMS = {3_000, 20_000};

    /** A solver without settings; every limit comes with the problem. */
    public StiffSolver() {}

    /** Lays the loop, or says why not. */
    public LoopOutcome solve(LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return new LoopOutcome.NoLoop("no port pair lies on a ring of linked nodes");
        }
        Setting setting = blocks.get(0).setting(problem);
        if (!setting.isRepresentable()) {
            return setting.tooWide("no state was tried");
        }
        long mostInAll = problem.limit().totalStates() / 3;
        StiffSweep best = null;
        for (int beam : BEAMS) {
            StiffSweep sweep = new StiffSweep(setting, StiffSweep.NONE);
            sweep.run(beam, mostInAll);
            best = best == null || sweep.best() < best.best() ? sweep : best;
            if (!sweep.cut()) {
                return proved(setting, sweep);
            }
        }
        StiffSweep exact = new StiffSweep(setting, best.best());
        exact.run((int) problem.limit().statesPerLayer(), mostInAll);
        return exact.cut() ? unproved(setting, exact.best() < best.best() ? exact : best) : proved(setting, exact);
    }

    private static LoopOutcome proved(Setting setting, StiffSweep sweep) {
        if (sweep.found().length == 0) {
            return new LoopOutcome.NoLoop("every ring through a port pair has two turns in a row");
        }
        OptionalInt turns = OptionalInt.of(setting.turnBound(
                sweep.best(), setting.trace(sweep.found()).leftOut()));
        return found(setting, setting.solution(sweep.found(), turns, OptionalInt.of((int) sweep.best()), List.of()));
    }

    private static LoopOutcome unproved(Setting setting, StiffSweep sweep) {
        return sweep.found().length == 0
                ? setting.tooWide("the work limit came first")
                : found(
                        setting,
                        setting.solution(sweep.found(), OptionalInt.empty(), OptionalInt.empty(), List.of()));
    }

    /** A loop may pass several port links; it begins at the best of those that excuse its turns in a row, if any. */
    private static LoopOutcome found(Setting setting, LoopSolution loop) {
        LatticeGraph graph = setting.problem().graph();
        for (PortPair port : setting.problem().ports()) {
            List<Integer> cycle = from(loop.cycle(), port);
            if (!cycle.isEmpty() && isStiff(graph, cycle)) {
                return new LoopOutcome.Found(new LoopSolution(
                        cycle,
                        port,
                        loop.turns(),
                        loop.leftOut(),
                        loop.turnBound(),
                        loop.objective(),
                        loop.objectiveBound(),
                        loop.pairs()));
            }
        }
        throw new IllegalStateException("no port excuses the loop's turns in a row");
    }

    /** The cycle from one end of a port to the other the long way round; empty if it does not pass the port's link. */
    private static List<Integer> from(List<Integer> cycle, PortPair port) {
        int size = cycle.size();
        int a = cycle.indexOf(port.from());
        if (a < 0) {
            return List.of();
        }
        boolean before = cycle.get((a + size - 1) % size) == port.to();
        boolean after = cycle.get((a + 1) % size) == port.to();
        int step = before ? 1 : size - 1;
        return before || after
                ? IntStream.range(0, size)
                        .mapToObj(i -> cycle.get((a + i * step) % size))
                        .toList()
                : List.of();
    }

    /** No two turns in a row and no forbidden corner, the port link taken as not laid. */
    private static boolean isStiff(LatticeGraph graph, List<Integer> cycle) {
        boolean turned = turns(graph, cycle, 0);
        for (int i = 1; i < cycle.size(); i++) {
            boolean turns = turns(graph, cycle, i);
            if ((turns && turned) || (i + 1 < cycle.size() && !isAllowed(graph, cycle, i))) {
                return false;
            }
            turned = turns;
        }
        return true;
    }

    private static boolean isAllowed(LatticeGraph graph, List<Integer> cycle, int i) {
        return graph.bendAllowed(
                cycle.get(i),
                graph.headingTo(cycle.get(i), cycle.get(i - 1)),
                graph.headingTo(cycle.get(i), cycle.get(i + 1)));
    }

    private static boolean turns(LatticeGraph graph, List<Integer> cycle, int i) {
        int before = cycle.get((i + cycle.size() - 1) % cycle.size());
        int after = cycle.get((i + 1) % cycle.size());
        return graph.column(before) != graph.column(after) && graph.row(before) != graph.row(after);
    }
}
