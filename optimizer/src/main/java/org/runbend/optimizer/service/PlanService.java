package org.runbend.optimizer.service;

import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.runbend.catalog.product.Rate;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.choice.ChoicePlanner;
import org.runbend.optimizer.estimate.PriceRange;
import org.runbend.optimizer.estimate.RangeAsked;
import org.runbend.optimizer.estimate.RangeQuoting;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LoopView;
import org.runbend.optimizer.planning.ChangePlanner;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.planning.LoopInspector;
import org.runbend.optimizer.planning.OfferPart;
import org.runbend.optimizer.planning.PlateComparing;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.work.Work;

/**
 * Plans for everybody who asks. Each request runs under its own {@link Work} in one of a few slots; what finds no slot free
 * waits. A request that was cancelled keeps its slot until its last native call ends.
 *
 * <p>Failures come out of {@link Running#get}: {@link org.runbend.optimizer.job.Unbuildable} for a job that cannot be built
 * as asked, {@code IllegalStateException} for a plan of ours that a verifier refused.
 */
public final class PlanService implements AutoCloseable {
    private final ThreadPoolExecutor slots;

    /** A service that does so many requests at once, at least 1. */
    public PlanService(int slots) {
        AtomicInteger number = new AtomicInteger();
        this.slots = new ThreadPoolExecutor(slots, slots, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), task -> {
            Thread thread = new Thread(task, "plan-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
    }

    /** Begins to plan the kit of a job. */
    public Running<KitPlan> plan(Job job, Work work) {
        return begin(work, () -> new KitPlanner(work).plan(job));
    }

    /** Begins to plan a job whose floor changed after a kit was cut for it. */
    public Running<ChangePlanner.Changed> planAfter(EarlierKit was, Job job, Work work) {
        return begin(work, () -> new ChangePlanner(work).plan(job, was));
    }

    /** Begins to plan the floor of a plan in several ways. */
    public Running<Choice> choose(KitPlan asked, Work work) {
        return begin(work, () -> new ChoicePlanner(work).choose(asked));
    }

    /** The same; whoever waits hears what there is to choose from so far, whenever it has grown. */
    public Running<Choice> choose(KitPlan asked, Work work, Consumer<Choice> early) {
        return begin(work, () -> new ChoicePlanner(work).choose(asked, early));
    }

    /** Begins to pack the plates of a plan at other coverages, for comparison. */
    public Running<KitPlan> comparePlates(KitPlan plan, Work work) {
        return begin(work, () -> {
            work.step("comparing plates");
            return new PlateComparing().compare(plan);
        });
    }

    /**
     * Begins to price a plan by the terms of its catalog, and to hold the standard kits against it.
     *
     * @param discount asked for this order, if one is
     */
    public Running<Offer> offer(KitPlan plan, Optional<Rate> discount, Work work) {
        return begin(work, () -> {
            work.step("pricing");
            return OfferPart.of(plan, discount, work);
        });
    }

    /** Begins to price a floor of which only two sizes are known. */
    public Running<PriceRange> range(RangeAsked asked, Work work) {
        return begin(work, () -> new RangeQuoting(
                        job -> KitPlanner.atAGlance(work.hushed()).plan(job), work)
                .range(asked));
    }

    /** Begins to lay the loop of a job, to be looked at on its lattice. */
    public Running<LoopView> look(Job job, Work work) {
        return begin(work, () -> new LoopInspector(work).inspect(job));
    }

    private <T> Running<T> begin(Work work, Supplier<T> what) {
        Running<T> running = new Running<>(work, what);
        slots.execute(running.task());
        return running;
    }

    /** How many requests keep a slot, cancelled ones that have not come to their end among them. */
    public int busy() {
        return slots.getActiveCount();
    }

    /** Takes no more requests; those that run go on. */
    @Override
    public void close() {
        slots.shutdown();
    }
}
