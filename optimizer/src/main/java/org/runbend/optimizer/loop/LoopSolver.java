package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lays one closed loop of least turns plus prices of nodes left out.
 *
 * <p>Method: an exact dynamic program over the frontier of a node order. The work grows about threefold with each link
 * that is open at the widest place; beyond some width the duals of a linear program say which states cannot lead to a
 * good loop. What is not proved within the work limit has no bound. Where port pairs lie in several biconnected blocks,
 * the block that is worth most (sum of prices) is laid.
 */
public final class LoopSolver {
    /** A solver without settings; every limit comes with the problem. */
    public LoopSolver() {}

    /** Lays the loop, or says why not. */
    public LoopOutcome solve(LoopProblem problem) {
        List<Area> areas = areas(problem);
        if (areas.isEmpty()) {
            return new LoopOutcome.NoLoop("no port pair lies on a ring of linked nodes");
        }
        for (Area area : areas) {
            LoopOutcome outcome = lay(new Setting(problem, area.block, area.ports));
            if (!(outcome instanceof LoopOutcome.NoLoop)) {
                return outcome;
            }
        }
        return new LoopOutcome.NoLoop("every ring through a port pair needs a bend that is forbidden");
    }

    private static LoopOutcome lay(Setting setting) {
        if (setting.isNarrow()) {
            return new ExactLaying(setting).solve();
        }
        if (!setting.isRepresentable()) {
            return setting.tooWide("no state was tried");
        }
        return new GuidedLaying(setting).solve();
    }

    private record Area(BiconnectedBlock block, List<PortPair> ports) {}

    private static List<Area> areas(LoopProblem problem) {
        List<Area> areas = new ArrayList<>();
        for (BiconnectedBlock block : BiconnectedBlock.all(problem.graph())) {
            List<PortPair> ports = problem.ports().stream()
                    .filter(port -> block.contains(port.from()) && block.contains(port.to()))
                    .toList();
            if (!ports.isEmpty()) {
                areas.add(new Area(block, ports));
            }
        }
        areas.sort(Comparator.comparingLong((Area area) -> area.block.price(problem.graph()))
                .thenComparingInt(area -> area.block.size())
                .reversed());
        return areas;
    }
}
