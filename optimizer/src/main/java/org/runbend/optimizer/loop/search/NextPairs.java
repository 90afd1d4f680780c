package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.runbend.optimizer.lattice.StraightCost;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.TradeOff;

/**
 * What it would cost in turns to leave a little less or a little more out than a loop that was laid does: for people who
 * want to see why. Bounded passes without loss, so the turns found are the least; where a pass grows long nothing is said.
 */
public final class NextPairs {
    /** States in a layer of a pass: chosen, not measured. */
    private static final int MOST_PER_LAYER = 100_000;
    /** For each number of nodes left out; chosen, not measured. */
    private static final long MOST_IN_ALL = 3_000_000;

    /** The pairs on either side of the loop's own, in order of nodes left out, and its own; of a stiff pipe its own alone. */
    public List<TradeOff> around(LoopProblem asked, LoopSolution loop) {
        LoopProblem problem = new LoopProblem(
                asked.graph().copy().turnCost(1).straightCost(StraightCost.NONE).build(),
                asked.ports(),
                asked.preference(),
                asked.limit());
        TradeOff own = new TradeOff(loop.leftOut(), loop.turns(), loop.turnBound());
        List<TradeOff> pairs = new ArrayList<>();
        Optional<PortBlock> block =
                PortBlock.of(problem).stream().filter(b -> b.holds(loop.port())).findFirst();
        if (block.isEmpty() || problem.graph().isStiff()) {
            return List.of(own);
        }
        BlockProblem blockProblem = block.get().blockProblem(problem);
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        if (prices.isUniform() && blockProblem.isRepresentable()) {
            int units = loop.leftOut();
            find(blockProblem, prices, program, units - prices.step()).ifPresent(pairs::add);
            pairs.add(own);
            find(blockProblem, prices, program, units + prices.step()).ifPresent(pairs::add);
        }
        return pairs.isEmpty() ? List.of(own) : pairs;
    }

    private static Optional<TradeOff> find(
            BlockProblem blockProblem, PriceUnits prices, ConfigurationProgram program, int units) {
        if (units < prices.first() || units > prices.unitsFrom(0)) {
            return Optional.empty();
        }
        ReducedCosts reducedCosts = program.reducedCosts(units);
        int nodes = blockProblem.frontier().size() - units;
        long left = MOST_IN_ALL;
        for (long target = reducedCosts.shapeBound(); target <= nodes; target += 2) {
            BoundedSweep sweep = new BoundedSweep(blockProblem, prices, reducedCosts, target);
            sweep.runExactly(MOST_PER_LAYER, left);
            left -= sweep.total();
            if (sweep.found().length > 0) {
                return Optional.of(new TradeOff(units, (int) sweep.shape(), OptionalInt.of((int) sweep.shape())));
            }
            if (sweep.truncated()) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }
}
