package org.runbend.optimizer.loop.search;

import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What is settled before the first pass: the guides of the numbers of units that may be best, and the order of the nodes
 * in which a short pass with the most promising of them makes fewest states.
 */
final class Prelude {
    private final Setting setting;
    private final PriceUnits prices;
    private final GuideProgram program;
    private final Map<Integer, Guide> guides = new TreeMap<>();
    private final Guide promising;
    private final OrderTrial trial;

    Prelude(Setting given) {
        PriceUnits units = new PriceUnits(given.frontier());
        GuideProgram first = new GuideProgram(new Configurations(given.frontier()), units);
        Map<Integer, Guide> found = new TreeMap<>();
        int next = units.first();
        long least = Long.MAX_VALUE;
        while (next <= units.unitsFrom(0) && boundFrom(next, found, units) < least) {
            Guide guide = first.guide(next);
            found.put(next, guide);
            least = Math.min(least, objective(guide, units));
            next += units.step();
        }
        Guide best = found.values().stream()
                .min(Comparator.comparingLong(guide -> objective(guide, units)))
                .orElseThrow();
        trial = new OrderTrial(given, units, best);
        int[] steps = IntStream.of(trial.best()).map(given.frontier()::step).toArray();
        setting = given.inOrder(trial.best());
        prices = units.inOrder(steps);
        program = first.inOrder(setting.frontier(), steps);
        found.forEach((u, guide) -> guides.put(u, guide.inOrder(steps)));
        promising = best;
    }

    private static long objective(Guide guide, PriceUnits prices) {
        return guide.turnBound() + prices.price() * guide.units();
    }

    /** In whole turns, rounded up. */
    private static long boundFrom(int units, Map<Integer, Guide> guides, PriceUnits prices) {
        long bound = 4 + prices.price() * units;
        for (Guide guide : guides.values()) {
            bound = Math.max(bound, -Math.floorDiv(-guide.objectiveFrom(units, prices.price()), Guide.SCALE));
        }
        return bound;
    }

    Setting setting() {
        return setting;
    }

    PriceUnits prices() {
        return prices;
    }

    GuideProgram program() {
        return program;
    }

    /** Guides by units, for the order chosen. */
    Map<Integer, Guide> guides() {
        return guides;
    }

    /** Slack of the trial's passes. */
    long slack() {
        return promising.slack(promising.turnBound());
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
