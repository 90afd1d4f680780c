package org.runbend.optimizer.loop.search;

/**
 * Makes a loop better by {@link Wishes} at equal turns and equal price units left out: windows of the lattice in turn are
 * laid anew, each the best of all ways to lay it, until no window of any shape gains.
 *
 * <p>A window knows the corners of the loop beyond its border, so links over the border count as those inside. Equal ways
 * are taken too, each round in another order, so that the loop wanders.
 */
final class TieSearch {
    /** States in a layer of a window: chosen, not measured. */
    private static final int STATES_PER_LAYER = 6_000;

    private final Setting setting;
    private final PriceUnits prices;
    private final Guide guide;
    private final Wishes wishes;
    private final WindowTiling tiling;
    private final long mostStates;

    private int[] legs = {};
    private int portLink;
    private long spent;

    /**
     * A search with so much work.
     *
     * @param guide for the units that the loop leaves out
     * @param mostStates work
     */
    TieSearch(Setting setting, PriceUnits prices, Guide guide, long mostStates) {
        this.setting = setting;
        this.prices = prices;
        this.guide = guide;
        this.wishes =
                new Wishes(setting.problem().preference(), setting.frontier().size(), 1);
        this.tiling = new WindowTiling(setting.region());
        this.mostStates = mostStates;
    }

    /** Legs by step of the best loop met. */
    int[] improve(int[] start) {
        legs = start.clone();
        portLink = setting.portLink(legs);
        int idle = 0;
        for (int round = 0; idle < tiling.shapes() && spent < mostStates; round++) {
            long before = value(legs);
            for (int[] locals : tiling.windows(round)) {
                if (spent < mostStates) {
                    relay(locals);
                }
            }
            idle = value(legs) < before ? 0 : idle + 1;
        }
        return legs.clone();
    }

    long spent() {
        return spent;
    }

    private long value(int[] loop) {
        return wishes.of(setting.frontier(), loop);
    }

    private void relay(int[] locals) {
        Cancelling.check();
        WindowFrame frame = new WindowFrame(setting, legs, locals, portLink);
        spent += locals.length;
        if (!frame.isOpen()) {
            return;
        }
        TiePasses passes = frame.passes(prices, guide, STATES_PER_LAYER);
        int[] found = passes.mark() ? passes.choose(frame.wish(wishes)) : new int[0];
        spent += passes.total();
        if (found.length > 0) {
            legs = frame.with(found);
        }
    }
}
