package org.runbend.optimizer.loop.search;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import org.runbend.optimizer.loop.LoopProblem;

/**
 * A quick look at a problem: how good a loop a narrow beam finds. Serves to choose between lattices before one of them is
 * solved in earnest; proves nothing.
 *
 * <p>Work: at most {@value #BEAM} states after each node, so about a tenth of a second on 400 nodes.
 */
public final class LoopSketch {
    /** States a layer: chosen, not measured; the time it takes is said above. */
    private static final int BEAM = 1500;
    /** Numbers of units asked for a bound; chosen, not measured. */
    private static final int UNITS = 3;

    /**
     * A loop found in passing.
     *
     * @param objective turns + prices left out
     * @param nodes its nodes in order
     */
    public record Rough(long objective, List<Integer> nodes) {}

    /** The loop found in the block worth most; empty if none was found. */
    public Optional<Rough> rough(LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return Optional.empty();
        }
        BlockProblem blockProblem = blocks.get(0).blockProblem(problem);
        if (!blockProblem.isRepresentable()) {
            return Optional.empty();
        }
        if (problem.graph().isStiff()) {
            StiffSweep stiff = new StiffSweep(blockProblem, StiffSweep.NONE);
            stiff.run(BEAM, Long.MAX_VALUE);
            return stiff.best() == StiffSweep.NONE
                    ? Optional.empty()
                    : Optional.of(new Rough(stiff.best(), blockProblem.cycle(stiff.trace())));
        }
        Sweep beam = new Sweep(blockProblem.frontier(), blockProblem.encoding(), Sweep.NONE);
        beam.runBeam(BEAM);
        return beam.best() == Sweep.NONE
                ? Optional.empty()
                : Optional.of(new Rough(beam.best(), blockProblem.cycle(beam.trace())));
    }

    /** Objective (turns + prices left out) of the loop found in the block worth most; empty if none was found. */
    public OptionalLong objective(LoopProblem problem) {
        return rough(problem).map(r -> OptionalLong.of(r.objective())).orElseGet(OptionalLong::empty);
    }

    /**
     * About what the best loop in the block worth most costs: turns + prices left out by linear programs for the least
     * numbers of nodes left out. Mostly a few turns too low, also where a beam finds nothing; empty if there is no block.
     *
     * <p>Work: three linear programs, together a second on 400 nodes.
     */
    public OptionalLong estimate(LoopProblem problem) {
        List<PortBlock> blocks = PortBlock.of(problem);
        if (blocks.isEmpty()) {
            return OptionalLong.empty();
        }
        Frontier frontier = blocks.get(0).blockProblem(problem).frontier();
        PriceUnits prices = new PriceUnits(frontier);
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(frontier), prices);
        return LongStream.iterate(prices.first(), u -> u <= prices.unitsFrom(0), u -> u + prices.step())
                .limit(UNITS)
                .map(u -> program.reducedCosts((int) u).shapeBound() + prices.price() * u)
                .min();
    }
}
