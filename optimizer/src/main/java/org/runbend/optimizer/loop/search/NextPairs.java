package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.TradeOff;

/**
 * What it would cost in turns to leave a little less or a little more out than a loop that was laid does: for people who
 * want to see why. Guided passes without loss, so the turns found are the least; where a pass grows long nothing is said.
 */
public final class NextPairs {
    /** States in a layer of a pass: chosen, not measured. */
    private static final int MOST_PER_LAYER = 100_000;
    /** For each number of nodes left out; chosen, not measured. */
    private static final long MOST_IN_ALL = 3_000_000;

    /** The pairs on either side of the loop's own, in order of nodes left out, and its own; of a stiff pipe its own alone. */
    public List<TradeOff> around(LoopProblem problem, LoopSolution loop) {
        TradeOff own = new TradeOff(loop.leftOut(), loop.turns(), loop.turnBound());
        List<TradeOff> pairs = new ArrayList<>();
        Optional<PortBlock> block =
                PortBlock.of(problem).stream().filter(b -> b.holds(loop.port())).findFirst();
        if (block.isEmpty() || problem.graph().isStiff()) {
            return List.of(own);
        }
        Setting setting = block.get().setting(problem);
        PriceUnits prices = new PriceUnits(setting.frontier());
        GuideProgram program = new GuideProgram(new Configurations(setting.frontier()), prices);
        if (prices.isUniform() && setting.isRepresentable()) {
            int units = loop.leftOut();
            find(setting, prices, program, units - prices.step()).ifPresent(pairs::add);
            pairs.add(own);
            find(setting, prices, program, units + prices.step()).ifPresent(pairs::add);
        }
        return pairs.isEmpty() ? List.of(own) : pairs;
    }

    private static Optional<TradeOff> find(Setting setting, PriceUnits prices, GuideProgram program, int units) {
        if (units < prices.first() || units > prices.unitsFrom(0)) {
            return Optional.empty();
        }
        Guide guide = program.guide(units);
        int nodes = setting.frontier().size() - units;
        long left = MOST_IN_ALL;
        for (int target : IntStream.iterate(guide.turnBound(), t -> t <= nodes, t -> t + 2)
                .toArray()) {
            GuidedSweep sweep = new GuidedSweep(setting, prices, guide, target);
            sweep.runExactly(MOST_PER_LAYER, left);
            left -= sweep.total();
            if (sweep.found().length > 0) {
                return Optional.of(new TradeOff(units, sweep.turns(), OptionalInt.of(sweep.turns())));
            }
            if (sweep.cut()) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }
}
