package org.runbend.optimizer.mip;

import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.runbend.optimizer.work.Work;

/** The one watcher of native solvers: a second thread looks now and then whether an end is asked for. Else it changes nothing. */
public final class InterruptWatch {
    /**
     * How often it looks, ms: chosen, a twentieth of a second is soon enough; no answer depends on it but that of work that
     * was cancelled.
     */
    private static final long LOOK_MILLIS = 50;

    private InterruptWatch() {}

    /**
     * Solves.
     *
     * @param asksForEnd asked by the second thread
     * @param interrupt what ends the solver; called by the second thread, again and again until it has ended
     * @param solve what may take long; no thread touches the solver any more when it is back
     */
    public static <T> T solve(BooleanSupplier asksForEnd, Runnable interrupt, Supplier<T> solve) {
        Thread looker = new Thread(() -> look(asksForEnd, interrupt), "solver-watch");
        looker.setDaemon(true);
        looker.start();
        try {
            return solve.get();
        } finally {
            looker.interrupt();
            // the native solver must not be deleted while the other thread may still touch it
            Work.await(List.of(looker));
        }
    }

    private static void look(BooleanSupplier asksForEnd, Runnable interrupt) {
        try {
            while (true) {
                Thread.sleep(LOOK_MILLIS);
                if (asksForEnd.getAsBoolean()) {
                    interrupt.run();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
