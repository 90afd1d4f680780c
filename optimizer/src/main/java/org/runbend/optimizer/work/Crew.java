package org.runbend.optimizer.work;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;

/** The threads of one work. */
final class Crew {
    private final Set<Thread> workers = new LinkedHashSet<>();
    private int spare;
    private boolean cancelled;

    /** A crew that may call in so many threads beside those of its callers. */
    Crew(int spare) {
        this.spare = spare;
    }

    /** The calling thread is interrupted by {@link #cancel} from now on; false if it was before. */
    synchronized boolean enter() {
        if (cancelled) {
            throw new CancellationException("the work was cancelled");
        }
        return workers.add(Thread.currentThread());
    }

    /** The calling thread is its own again, without an interruption that was meant for the work. */
    synchronized void leave() {
        workers.remove(Thread.currentThread());
        if (cancelled) {
            Thread.interrupted();
        }
    }

    synchronized void cancel() {
        cancelled = true;
        workers.forEach(Thread::interrupt);
    }

    /** Starts as many threads on the task as are spare, at most so many. */
    List<Thread> help(int most, Runnable task) {
        List<Thread> helpers = new ArrayList<>();
        while (helpers.size() < most && take()) {
            Thread helper = new Thread(() -> helpOn(task), "work-" + (helpers.size() + 1));
            helper.setDaemon(true);
            helper.start();
            helpers.add(helper);
        }
        return helpers;
    }

    private void helpOn(Runnable task) {
        try {
            enter();
            task.run();
        } catch (CancellationException e) {
            // who cancelled waits for no answer of this thread; its caller is interrupted too
        } finally {
            leave();
            giveBack();
        }
    }

    private synchronized boolean take() {
        if (spare == 0) {
            return false;
        }
        spare--;
        return true;
    }

    private synchronized void giveBack() {
        spare++;
    }

    /** Waits for helpers; an interruption is handed on to them and kept. */
    static void await(List<Thread> helpers) {
        boolean interrupted = false;
        for (Thread helper : helpers) {
            while (helper.isAlive()) {
                try {
                    helper.join();
                } catch (InterruptedException e) {
                    interrupted = true;
                    helpers.forEach(Thread::interrupt);
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
