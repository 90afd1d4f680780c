package org.runbend.optimizer.loop.search;

import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Improves a loop window by window: strips and blocks of the lattice in turn, each laid anew without loss. Loops of equal
 * cost are taken too, each round in another order, so that the loop wanders until some window gains. When nothing gains
 * any more, windows are tried with fewer and with more nodes left out.
 *
 * <p>Source: POPMUSIC (a solution is taken apart, and parts beside each other are solved again until none gains), Taillard and
 * Voss, in Essays and Surveys in Metaheuristics, 2002; from memory.
 */
final class WindowSearch {
    /** States in a layer of a window: chosen, not measured. */
    private static final int STATES_PER_LAYER = 20_000;
    /** Rounds without gain, as a multiple of the number of shapes; chosen, not measured. */
    private static final int PATIENCE = 3;

    private final BlockProblem blockProblem;
    private final PriceUnits prices;
    private final IntFunction<ReducedCosts> reducedCostsByUnits;
    private final Window window;
    private final WindowTiling tiling;
    private final long mostStates;
    private final long goal;

    private int[] legs = {};
    private int portLink;
    private int units;
    private long objective;
    private long spent;

    /**
     * A search with so much work.
     *
     * @param reducedCostsByUnits the reduced costs for a number of units
     * @param mostStates work
     * @param goal objective at which there is nothing left to win
     */
    WindowSearch(
            BlockProblem blockProblem,
            PriceUnits prices,
            IntFunction<ReducedCosts> reducedCostsByUnits,
            long mostStates,
            long goal) {
        this.blockProblem = blockProblem;
        this.prices = prices;
        this.reducedCostsByUnits = reducedCostsByUnits;
        this.window = new Window(blockProblem, prices, STATES_PER_LAYER);
        this.tiling = new WindowTiling(blockProblem.blockGraph());
        this.mostStates = mostStates;
        this.goal = goal;
    }

    /** Legs by step of the best loop met. */
    int[] improve(int[] start) {
        legs = start.clone();
        portLink = blockProblem.portLink(legs);
        objective = blockProblem.objective(legs);
        units = IntStream.range(0, legs.length)
                .filter(t -> legs[t] == 0)
                .map(prices::units)
                .sum();
        do {
            wander();
        } while (changeUnits(-prices.step()) || changeUnits(prices.step()));
        return legs.clone();
    }

    long spent() {
        return spent;
    }

    private boolean goesOn() {
        return spent < mostStates && objective > goal;
    }

    private void wander() {
        int idle = 0;
        for (int round = 0; idle < PATIENCE * tiling.shapes() && goesOn(); round++) {
            idle = round(round, 0) ? 0 : idle + 1;
        }
    }

    /** One round of each shape with another number of units, until one gains. */
    private boolean changeUnits(int change) {
        if (units + change < prices.first() || units + change > prices.unitsFrom(0)) {
            return false;
        }
        for (int round = 0; round < tiling.shapes(); round++) {
            if (round(round, change)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a window of this round gained; with a change of units the round ends there. */
    private boolean round(int round, int change) {
        long before = objective;
        ReducedCosts reducedCosts = reducedCostsByUnits.apply(units + change);
        for (int[] locals : tiling.windows(round)) {
            if (!goesOn() || (change != 0 && objective < before)) {
                break;
            }
            Window.Relaid relaid = window.relay(legs, locals, portLink, reducedCosts, change);
            spent += relaid.states();
            legs = relaid.legs();
            objective -= relaid.gain();
            units += relaid.gain() > 0 ? change : 0;
        }
        return objective < before;
    }
}
