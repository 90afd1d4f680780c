package org.runbend.optimizer.work;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What long work runs under: it tells its progress, may do things side by side, and can be ended from outside. What comes
 * of it does not depend on how many threads there are.
 *
 * <p>Cancelling interrupts every thread that works on it; steps deep in a search look at their own thread alone
 * ({@link #check}). A native call that cannot be interrupted runs on to its end.
 */
public final class Work {
    private final Progress progress;
    private final Crew crew;
    private final Known known;
    private final Memory memory;

    private Work(Progress progress, Crew crew, Known known, Memory memory) {
        this.progress = progress;
        this.crew = crew;
        this.known = known;
        this.memory = memory;
    }

    /**
     * Work.
     *
     * @param progress hears what it is at
     * @param threads how many may work at once, the caller's among them, at least 1
     */
    public Work(Progress progress, int threads) {
        this(progress, threads, Memory.NONE);
    }

    /** Work as above that some answers are known to, or are kept of. */
    public Work(Progress progress, int threads, Memory memory) {
        this(progress, new Crew(threads - 1), new Known(), memory);
    }

    /** Work on all cores that tells somebody how far it is. */
    public static Work told(Progress progress) {
        return new Work(progress, Runtime.getRuntime().availableProcessors());
    }

    /** Work on all cores that nobody watches. */
    public static Work silent() {
        return told(Progress.SILENT);
    }

    /** A part of this work, ended with it, whose steps nobody hears of. */
    public Work hushed() {
        return new Work(Progress.SILENT, crew, known, memory);
    }

    /** Waits for helpers to end; an interruption is handed on to them and kept. */
    public static void await(List<Thread> helpers) {
        Crew.await(helpers);
    }

    /** Tells that a step begins; a sentence part such as "packing plates". */
    public void step(String what) {
        progress.step(new Progress.Step(what, 0, 0));
    }

    /** Tells that one of several like steps begins, counted from 1. */
    public void step(String what, int at, int of) {
        progress.step(new Progress.Step(what, at, of));
    }

    /** Shows a sketch to whoever looks at sketches; it is not made for others. */
    public void sketch(Supplier<Progress.Sketch> sketch) {
        if (progress.looks()) {
            progress.sketch(sketch.get());
        }
    }

    /**
     * Goes on, or throws if this thread was interrupted; its flag stays set.
     *
     * @throws CancellationException if it was
     */
    public static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the work was cancelled");
        }
    }

    /**
     * The answer to a question, worked out once under this work and its parts: whoever asks an equal question later gets the same
     * answer. What fails is not kept.
     *
     * @param question a record that holds all that the answer depends on, and belongs to whoever asks
     * @param kind what the answer is
     * @param answer works it out
     */
    public <T> T once(Record question, Class<T> kind, Supplier<T> answer) {
        return known.once(question, kind, answer);
    }

    /** The answer to a question, asked of what is known beyond this work first; see {@link Memory#recall}. */
    public <T extends Record> T recall(Record question, Class<T> kind, Supplier<T> answer) {
        return memory.recall(question, kind, answer);
    }

    /** Ends the work: every thread that works on it is interrupted, and none begins. */
    public void cancel() {
        crew.cancel();
    }

    /**
     * Works on the calling thread, which {@link #cancel} interrupts until this returns.
     *
     * @throws CancellationException if the work was cancelled before it was done
     */
    public <T> T run(Supplier<T> what) {
        boolean entered = crew.enter();
        try {
            return what.get();
        } finally {
            if (entered) {
                crew.leave();
            }
        }
    }

    /**
     * Does something with each, side by side as far as threads are spare; the answers in the order of the questions. Of
     * several that fail the first in order is thrown.
     */
    public <A, B> List<B> each(List<A> all, Function<A, B> what) {
        List<B> answers = new ArrayList<>(Collections.nCopies(all.size(), null));
        List<Throwable> failures = new ArrayList<>(Collections.nCopies(all.size(), null));
        AtomicInteger next = new AtomicInteger();
        Runnable share = () -> {
            for (int i = next.getAndIncrement(); i < all.size(); i = next.getAndIncrement()) {
                try {
                    answers.set(i, what.apply(all.get(i)));
                } catch (RuntimeException | Error failure) {
                    failures.set(i, failure);
                }
            }
        };
        List<Thread> helpers = crew.help(all.size() - 1, share);
        share.run();
        Crew.await(helpers);
        for (Throwable failure : failures) {
            if (failure instanceof Error error) {
                throw error;
            }
            if (failure instanceof RuntimeException fault) {
                throw fault;
            }
        }
        return List.copyOf(answers);
    }
}
