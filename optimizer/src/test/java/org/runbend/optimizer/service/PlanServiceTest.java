package org.runbend.optimizer.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/** Whoever asks for a plan can leave at any moment, and the next one finds everything as it was. */
class PlanServiceTest {
    private static final Path EXAMPLES = Path.of("..", "examples");
    /** 200 with {@code -Dcancelled.moments=200}. */
    private static final int MOMENTS = Integer.getInteger("cancelled.moments", 16);

    private static final int SEED = 20_261_126;

    /** Answers wait for nobody: far more than that and a page would hang. */
    private static final long FREE_WITHIN = TimeUnit.SECONDS.toNanos(1);

    @TempDir
    Path folder;

    private Job closet() {
        return JobReader.read(EXAMPLES.resolve("closet.yaml"), Optional.empty());
    }

    /**
     * Cancelled at seeded moments of planning a floor, its alternatives and their comparison, in every phase: the caller
     * is free within a second, the slot comes back, and the same job still gives the same plan.
     */
    @Test
    void cancelledAtAnyMoment() throws InterruptedException {
        Job job = JobReader.read(EXAMPLES.resolve("cabin-boat.yaml"), Optional.empty());
        Random random = new Random(SEED);
        List<Long> freeAfter = new ArrayList<>();
        Set<String> met = ConcurrentHashMap.newKeySet();
        try (PlanService service = new PlanService(1)) {
            Set<String> steps = Collections.synchronizedSet(new LinkedHashSet<>());
            KitPlan whole =
                    service.plan(job, Work.told(step -> steps.add(phase(step)))).get();
            List<String> phases = List.copyOf(steps);
            int stopped = 0;
            for (int i = 0; i < MOMENTS; i++) {
                boolean choosing = i % 10 == 0;
                String awaited = phases.get(i % phases.size());
                CountDownLatch reached = new CountDownLatch(1);
                Work work = Work.told(step -> {
                    if (choosing || phase(step).equals(awaited)) {
                        met.add(phase(step));
                        reached.countDown();
                    }
                });
                Running<?> running = choosing ? service.choose(whole, work) : service.plan(job, work);
                assertTrue(reached.await(1, TimeUnit.MINUTES), awaited);
                TimeUnit.MICROSECONDS.sleep(random.nextInt(20_000));
                long before = System.nanoTime();
                running.cancel();
                if (endedEarly(running)) {
                    stopped++;
                }
                freeAfter.add(System.nanoTime() - before);
            }
            assertTrue(freeAfter.stream().allMatch(t -> t < FREE_WITHIN), () -> "" + freeAfter);
            assertTrue(stopped > MOMENTS / 2, stopped + " were stopped");
            assertTrue(met.containsAll(phases) && phases.size() >= 4, () -> met + " of " + phases);
            assertEquals(whole, service.plan(job, Work.silent()).get());
            assertEquals(0, idle(service));
        }
    }

    /** What a step does, without its figures. */
    private static String phase(Progress.Step step) {
        return step.what().replaceAll("\\d.*", "");
    }

    private static boolean endedEarly(Running<?> running) {
        try {
            running.get();
            return false;
        } catch (CancellationException e) {
            return true;
        }
    }

    /** Slots kept once all native calls had their time. */
    private static int idle(PlanService service) throws InterruptedException {
        for (int i = 0; i < 300 && service.busy() > 0; i++) {
            TimeUnit.MILLISECONDS.sleep(100);
        }
        return service.busy();
    }

    /** Waiting may be interrupted instead: the work ends too, and the flag stays. */
    @Test
    void interruptedWhileWaiting() throws InterruptedException {
        try (PlanService service = new PlanService(1)) {
            Running<KitPlan> running = service.plan(closet(), Work.silent());
            Thread.currentThread().interrupt();
            assertThrows(CancellationException.class, running::get);
            assertTrue(Thread.interrupted());
            assertTrue(running.isDone());
            assertEquals(0, idle(service));
        }
    }

    /** A job that cannot be built fails as it does without a service. */
    @Test
    void faultsComeThrough() throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        Path tiny = folder.resolve("tiny.yaml");
        Files.writeString(tiny, """
                job: T
                order: T
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [120, 0], [120, 110], [0, 110]]
                  port: {at: [0, 50]}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """);
        Job job = JobReader.read(tiny, Optional.empty());
        try (PlanService service = new PlanService(1)) {
            Running<KitPlan> running = service.plan(job, Work.silent());
            assertEquals(
                    "floor.outline",
                    assertThrows(Unbuildable.class, running::get).key());
        }
    }

    /** Two at once in two slots, on one core each and on all, give what one gives alone; steps are counted up to their number. */
    @Test
    void threadsChangeNothing() {
        Job job = closet();
        List<Progress.Step> steps = new ArrayList<>();
        try (PlanService service = new PlanService(2)) {
            Running<KitPlan> one = service.plan(job, new Work(Progress.SILENT, 1));
            Running<KitPlan> other = service.plan(job, new Work(Progress.SILENT, 4));
            assertEquals(one.get(), other.get());
            KitPlan plan = one.get();
            Running<Choice> choice = service.choose(plan, new Work(Progress.SILENT, 1));
            Running<Choice> same = service.choose(
                    plan,
                    new Work(
                            s -> {
                                synchronized (steps) {
                                    steps.add(s);
                                }
                            },
                            3));
            assertEquals(choice.get(), same.get());
        }
        assertTrue(steps.stream().anyMatch(Progress.Step::isCounted), steps::toString);
        Progress.Step last = steps.get(steps.size() - 1);
        assertEquals(last.of(), last.at(), last::toString);
    }
}
