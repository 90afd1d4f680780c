package org.runbend.optimizer.loop.search;

import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What is settled before the first pass: the reduced costs for the numbers of units that may be best, and the order of the nodes
 * in which a short pass with the most promising of them makes fewest states.
 */
final class Prelude {
    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final ConfigurationProgram program;
    private final Map<Integer, ReducedCosts> reducedCostsByUnits = new TreeMap<>();
    private final ReducedCosts promising;
    private final OrderTrial trial;

    Prelude(BlockProblem given) {
        PriceUnits units = given.frontier().pricesPieces()
                ? PriceUnits.inside(given.frontier())
                : new PriceUnits(given.frontier());
        ConfigurationProgram first = new ConfigurationProgram(new Configurations(given.frontier()), units);
        Map<Integer, ReducedCosts> found = new TreeMap<>();
        int next = units.first();
        long least = Long.MAX_VALUE;
        while (next <= units.unitsFrom(0)
                && boundFrom(next, found, units, given.frontier().turnCost()) < least) {
            ReducedCosts reducedCosts = first.reducedCosts(next);
            found.put(next, reducedCosts);
            least = Math.min(least, objective(reducedCosts, units));
            next += units.step();
        }
        ReducedCosts best = found.values().stream()
                .min(Comparator.comparingLong(reducedCosts -> objective(reducedCosts, units)))
                .orElseThrow();
        trial = new OrderTrial(given, units, best);
        int[] steps = IntStream.of(trial.best()).map(given.frontier()::step).toArray();
        blockProblem = given.inOrder(trial.best());
        prices = units.inOrder(steps);
        program = first.inOrder(blockProblem.frontier(), steps);
        found.forEach((u, reducedCosts) -> reducedCostsByUnits.put(u, reducedCosts.inOrder(steps)));
        promising = best;
    }

    private static long objective(ReducedCosts reducedCosts, PriceUnits prices) {
        return reducedCosts.shapeBound() + prices.price() * reducedCosts.units();
    }

    /** Rounded up. */
    private static long boundFrom(
            int units, Map<Integer, ReducedCosts> reducedCostsByUnits, PriceUnits prices, int turnCost) {
        long bound = 4L * turnCost + prices.price() * units;
        for (ReducedCosts reducedCosts : reducedCostsByUnits.values()) {
            bound = Math.max(bound, reducedCosts.objectiveFrom(units, prices.price()));
        }
        return bound;
    }

    BlockProblem blockProblem() {
        return blockProblem;
    }

    PriceUnits prices() {
        return prices;
    }

    ConfigurationProgram program() {
        return program;
    }

    /** Reduced costs by units, for the order chosen. */
    Map<Integer, ReducedCosts> reducedCostsByUnits() {
        return reducedCostsByUnits;
    }

    /** Slack of the trial's passes. */
    long slack() {
        return promising.slack(promising.shapeBound());
    }

    /** States of a pass with that slack. */
    long early() {
        return trial.early();
    }

    /** States of such a pass back. */
    long late() {
        return trial.late();
    }

    long spent() {
        return trial.spent();
    }
}
