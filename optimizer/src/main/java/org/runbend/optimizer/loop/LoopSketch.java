package org.runbend.optimizer.loop;

import java.util.List;
import java.util.OptionalLong;

/**
 * A quick look at a problem: how good a loop a narrow beam finds. Serves to choose between lattices before one of them is
 * solved in earnest; proves nothing.
 *
 * <p>Work: at most {@value #BEAM} states after each node, so about a tenth of a second on 400 nodes.
 */
public final class LoopSketch {
    private static final int BEAM = 1500;

    /** Objective (turns + prices left out) of the loop found in the block worth most; empty if none was found. */
    public OptionalLong objective(LoopProblem problem) {
        BiconnectedBlock best = null;
        for (BiconnectedBlock block : BiconnectedBlock.all(problem.graph())) {
            boolean open = !portsOf(problem, block).isEmpty();
            if (open && (best == null || block.price(problem.graph()) > best.price(problem.graph()))) {
                best = block;
            }
        }
        if (best == null) {
            return OptionalLong.empty();
        }
        Setting setting = new Setting(problem, best, portsOf(problem, best));
        if (!setting.isRepresentable()) {
            return OptionalLong.empty();
        }
        Sweep beam = new Sweep(setting.frontier(), setting.packing(), Sweep.NONE);
        beam.runBeam(BEAM);
        return beam.best() == Sweep.NONE ? OptionalLong.empty() : OptionalLong.of(beam.best());
    }

    private static List<PortPair> portsOf(LoopProblem problem, BiconnectedBlock block) {
        return problem.ports().stream()
                .filter(p -> block.contains(p.from()) && block.contains(p.to()))
                .toList();
    }
}
