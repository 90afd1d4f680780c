package org.runbend.optimizer.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Improves a loop window by window: strips and blocks of the lattice in turn, each laid anew without loss. Loops of equal
 * cost are taken too, each round in another order, so that the loop wanders until some window gains. When nothing gains
 * any more, windows are tried with fewer and with more nodes left out.
 */
final class WindowSearch {
    /** Width and height in nodes. */
    private static final int[][] SHAPES = {{8, 40}, {40, 8}, {14, 14}, {11, 24}, {24, 11}};

    private static final int STATES_PER_LAYER = 20_000;
    /** Rounds without gain, as a multiple of the number of shapes. */
    private static final int PATIENCE = 3;

    private final Setting setting;
    private final PriceUnits prices;
    private final IntFunction<Guide> guides;
    private final Window window;
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
     * @param guides the guide for a number of units
     * @param mostStates work
     * @param goal objective at which there is nothing left to win
     */
    WindowSearch(Setting setting, PriceUnits prices, IntFunction<Guide> guides, long mostStates, long goal) {
        this.setting = setting;
        this.prices = prices;
        this.guides = guides;
        this.window = new Window(setting, prices, STATES_PER_LAYER);
        this.mostStates = mostStates;
        this.goal = goal;
    }

    /** Legs by step of the best loop met. */
    int[] improve(int[] start) {
        legs = start.clone();
        portLink = setting.portLink(legs);
        objective = setting.objective(legs);
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
        for (int round = 0; idle < PATIENCE * SHAPES.length && goesOn(); round++) {
            idle = round(round, 0) ? 0 : idle + 1;
        }
    }

    /** One round of each shape with another number of units, until one gains. */
    private boolean changeUnits(int change) {
        if (units + change < prices.first()) {
            return false;
        }
        for (int round = 0; round < SHAPES.length; round++) {
            if (round(round, change)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a window of this round gained; with a change of units the round ends there. */
    private boolean round(int round, int change) {
        long before = objective;
        Guide guide = guides.apply(units + change);
        for (int[] locals : windows(SHAPES[round % SHAPES.length], round)) {
            if (!goesOn() || (change != 0 && objective < before)) {
                break;
            }
            Window.Relaid relaid = window.relay(legs, locals, portLink, guide, change);
            spent += relaid.states();
            legs = relaid.legs();
            objective -= relaid.gain();
            units += relaid.gain() > 0 ? change : 0;
        }
        return objective < before;
    }

    /** Overlapping windows of a shape over the whole lattice; each round they lie and are swept otherwise. */
    private List<int[]> windows(int[] shape, int round) {
        Region region = setting.region();
        int[] columns = IntStream.range(0, region.size()).map(region::column).toArray();
        int[] rows = IntStream.range(0, region.size()).map(region::row).toArray();
        List<int[]> windows = new ArrayList<>();
        int left = IntStream.of(columns).min().orElse(0) - round / SHAPES.length * 2 % shape[0];
        int low = IntStream.of(rows).min().orElse(0) - round / SHAPES.length * 2 % shape[1];
        int right = IntStream.of(columns).max().orElse(0);
        int high = IntStream.of(rows).max().orElse(0);
        for (int r = low; r <= high; r += shape[1] / 2) {
            for (int c = left; c <= right; c += shape[0] / 2) {
                int[] locals = locals(c, r, shape, round);
                if (locals.length > 1) {
                    windows.add(locals);
                }
            }
        }
        return windows;
    }

    /** The nodes of a window, line by line across its shorter side, from one of its four corners. */
    private int[] locals(int column, int row, int[] shape, int round) {
        Region region = setting.region();
        int sx = (round & 1) == 0 ? 1 : -1;
        int sy = (round & 2) == 0 ? 1 : -1;
        Comparator<Integer> byColumn = Comparator.comparingInt(i -> sx * region.column(i));
        Comparator<Integer> byRow = Comparator.comparingInt(i -> sy * region.row(i));
        return IntStream.range(0, region.size())
                .filter(i -> region.column(i) >= column && region.column(i) < column + shape[0])
                .filter(i -> region.row(i) >= row && region.row(i) < row + shape[1])
                .boxed()
                .sorted(shape[0] < shape[1] ? byRow.thenComparing(byColumn) : byColumn.thenComparing(byRow))
                .mapToInt(Integer::intValue)
                .toArray();
    }
}
