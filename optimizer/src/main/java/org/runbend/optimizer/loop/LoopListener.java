package org.runbend.optimizer.loop;

import java.util.List;
import java.util.function.Supplier;

/** Hears of each loop that is better than all before it, while the solver goes on. */
@FunctionalInterface
public interface LoopListener {
    /** A listener that hears nothing. */
    LoopListener SILENT = loop -> {};

    /** Called with what the better loop leaves out and how often it turns. */
    void better(TradeOff loop);

    /**
     * Called instead where the loop itself can be had too.
     *
     * @param nodes gives its nodes in order, if asked before the solver goes on
     */
    default void better(TradeOff loop, Supplier<List<Integer>> nodes) {
        better(loop);
    }
}
