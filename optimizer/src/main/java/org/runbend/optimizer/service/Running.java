package org.runbend.optimizer.service;

import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import org.runbend.optimizer.work.Work;

/** A request that was begun. */
public final class Running<T> {
    private final Work work;
    private final FutureTask<T> task;

    Running(Work work, Supplier<T> what) {
        this.work = work;
        this.task = new FutureTask<>(() -> work.run(what));
    }

    Runnable task() {
        return task;
    }

    /**
     * Waits for the answer; an interruption of the waiting thread cancels the request.
     *
     * @throws CancellationException at once when the request is cancelled
     * @throws RuntimeException what the work failed with
     */
    public T get() {
        try {
            return task.get();
        } catch (InterruptedException e) {
            cancel();
            Thread.currentThread().interrupt();
            throw new CancellationException("the work was cancelled");
        } catch (ExecutionException e) {
            Throwable cause = e.getCause();
            if (cause instanceof Error error) {
                throw error;
            }
            throw (RuntimeException) cause;
        }
    }

    /** Ends the work as soon as may be; whoever waits for it is free at once. */
    public void cancel() {
        work.cancel();
        task.cancel(false);
    }

    /** Whether there is an answer, a failure, or nothing more to wait for. */
    public boolean isDone() {
        return task.isDone();
    }
}
