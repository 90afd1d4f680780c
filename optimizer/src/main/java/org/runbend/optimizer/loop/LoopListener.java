package org.runbend.optimizer.loop;

/** Hears of each loop that is better than all before it, while the solver goes on. */
@FunctionalInterface
public interface LoopListener {
    /** A listener that hears nothing. */
    LoopListener SILENT = loop -> {};

    /** Called with what the better loop leaves out and how often it turns. */
    void better(TradeOff loop);
}
