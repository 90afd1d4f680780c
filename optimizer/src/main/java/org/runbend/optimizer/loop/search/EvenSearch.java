package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.runbend.optimizer.work.Work;

/**
 * Makes a loop more even by {@link WarmthSpread} at equal turns and equal price units left out. How even a loop is cannot be
 * told from its parts, so ways to lay a window are drawn, each the best by weights that a seeded generator gives to the
 * states of the nodes, and a way is taken if the whole loop is more even with it. Of ways that are about as even, the one
 * that {@link LowerLevels} put first is taken.
 */
final class EvenSearch {
    /** States in a layer of a window: chosen, not measured. */
    private static final int STATES_PER_LAYER = 4_000;

    /** The same where the window is the whole floor: chosen, not measured. */
    private static final int STATES_PER_WHOLE_LAYER = 40_000;

    /** Loops drawn at random weights from a window that is the whole floor: chosen, not measured. */
    private static final int DRAWN_WHOLE = 24;

    /** The same from any other window: chosen, not measured. */
    private static final int DRAWN = 10;

    /** Random weights are below this: chosen, not measured. */
    private static final int WEIGHTS = 1_000;
    /**
     * A less gain is none: bends of another radius and ends at the port are seen roughly here; chosen, not measured.
     */
    private static final double LEAST_GAIN = 0.004;
    /** Loops as even as each other to so much are told apart by the lower levels; chosen, not measured. */
    private static final double STEP = 0.005;

    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final ReducedCosts reducedCosts;
    private final WindowTiling tiling;
    private final WarmthSpread measure;
    private final LowerLevels lowerLevels;
    private final long mostStates;
    private final Random random = new Random(1);

    private int[] legs = {};
    private double uneven;
    private long tieValue;
    private int portLink;
    private long spent;

    /**
     * A search with so much work.
     *
     * @param reducedCosts for the units that the loop leaves out
     * @param mostStates work
     */
    EvenSearch(BlockProblem blockProblem, PriceUnits prices, ReducedCosts reducedCosts, long mostStates) {
        this.blockProblem = blockProblem;
        this.prices = prices;
        this.reducedCosts = reducedCosts;
        this.tiling = new WindowTiling(blockProblem.blockGraph());
        this.measure = new WarmthSpread(blockProblem.problem().graph());
        this.lowerLevels = new LowerLevels(blockProblem.problem().preference(), blockProblem.frontier(), 1);
        this.mostStates = mostStates;
    }

    /** Legs by step of the most even loop met; the given one if none is clearly more even. */
    int[] improve(int[] start) {
        legs = start.clone();
        portLink = blockProblem.portLink(legs);
        double before = unevenness(legs);
        uneven = before;
        tieValue = lowerLevels.of(legs);
        relay(wholeInOrder(), STATES_PER_WHOLE_LAYER, DRAWN_WHOLE);
        int idle = 0;
        for (int round = 0; idle < 2 * tiling.shapes() && spent < mostStates; round++) {
            double at = uneven;
            long tieValueAt = tieValue;
            for (int[] locals : tiling.windows(round)) {
                if (spent < mostStates) {
                    relay(locals, STATES_PER_LAYER, DRAWN);
                }
            }
            idle = uneven < at || tieValue < tieValueAt ? 0 : idle + 1;
        }
        return uneven < before - LEAST_GAIN ? legs.clone() : start.clone();
    }

    private double unevenness(int[] loop) {
        return blockProblem.unevenness(measure, loop);
    }

    private int[] wholeInOrder() {
        return IntStream.range(0, legs.length)
                .map(blockProblem.frontier()::local)
                .toArray();
    }

    private void relay(int[] locals, int mostPerLayer, int draws) {
        Work.check();
        WindowProblem windowProblem = new WindowProblem(blockProblem, legs, locals, portLink);
        spent += locals.length;
        TiePasses passes = windowProblem.isOpen() ? windowProblem.passes(prices, reducedCosts, mostPerLayer) : null;
        if (passes != null && passes.mark()) {
            draw(windowProblem, passes, draws).forEach(this::keepIfBetter);
        }
        spent += passes == null ? 0 : passes.total();
    }

    private List<int[]> draw(WindowProblem windowProblem, TiePasses passes, int draws) {
        List<int[]> drawn = new ArrayList<>();
        for (int i = 0; i <= draws; i++) {
            int[] weights = random.ints(16L * windowProblem.frontier().size(), 0, WEIGHTS)
                    .toArray();
            int[] found = passes.choose(
                    i == draws ? windowProblem.tieBreak(lowerLevels) : (step, at) -> weights[16 * step + at]);
            if (found.length > 0) {
                drawn.add(windowProblem.with(found));
            }
        }
        return drawn;
    }

    private void keepIfBetter(int[] loop) {
        double value = unevenness(loop);
        long tieBreak = lowerLevels.of(loop);
        int order = Double.compare(Math.floor(value / STEP), Math.floor(uneven / STEP));
        boolean better = order < 0 || (order == 0 && (tieBreak < tieValue || (tieBreak == tieValue && value < uneven)));
        if (better) {
            uneven = value;
            tieValue = tieBreak;
            legs = loop;
        }
    }
}
