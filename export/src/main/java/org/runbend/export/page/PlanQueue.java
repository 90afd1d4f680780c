package org.runbend.export.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** Plans one after the other in a few slots, each in a process of its own; one process always stands ready for the next. */
final class PlanQueue implements AutoCloseable {
    private static final int TRIALS = 20;
    private static final long PAUSE = 50;

    private final Limits limits;
    private final Path folder;
    private final Supplier<PlanProcess> starter;
    private final Map<String, PlanRun> runs = new LinkedHashMap<>();
    private final Deque<PlanRun> waiting = new ArrayDeque<>();
    private final ScheduledExecutorService clock =
            Executors.newSingleThreadScheduledExecutor(task -> daemon(task, "plan-clock"));
    private PlanProcess ready;
    private int busy;
    private boolean closed;

    /**
     * A queue.
     *
     * @param folder where files of kits go; it belongs to this queue
     * @param starter starts a process that waits for a request
     */
    PlanQueue(Limits limits, Path folder, Supplier<PlanProcess> starter) {
        this.limits = limits;
        this.folder = folder;
        this.starter = starter;
    }

    Path folder() {
        return folder;
    }

    /** Starts a process ahead, where one is to stand ready. */
    void prepare() {
        if (!limits.ahead()) {
            return;
        }
        PlanProcess made = starter.get();
        synchronized (this) {
            if (!closed && (ready == null || !ready.isAlive())) {
                ready = made;
                return;
            }
        }
        made.end();
    }

    /** Puts a plan in the queue; refused where too many wait. */
    synchronized PlanRun ask(PlanRequest request) throws IOException {
        if (closed) {
            throw new Refused(503, "the page is ending");
        }
        waiting.removeIf(PlanRun::isOver);
        if (waiting.size() >= limits.queue()) {
            throw new Refused(429, "too many plans wait already; try again when some are done");
        }
        PlanRun run = new PlanRun(request, folder);
        Files.createDirectories(run.folder());
        runs.put(run.id(), run);
        waiting.add(run);
        run.events().add("queued", Map.of("before", Math.max(0, busy + waiting.size() - limits.slots())));
        forgetOldest();
        next();
        return run;
    }

    private synchronized void next() {
        if (!closed && busy < limits.slots() && !waiting.isEmpty()) {
            PlanRun run = waiting.poll();
            if (run.isOver()) {
                next();
                return;
            }
            busy++;
            daemon(() -> work(run), "plan").start();
        }
    }

    private void work(PlanRun run) {
        ScheduledFuture<?> alarm = null;
        try {
            PlanProcess process = take();
            if (run.begin(process)) {
                alarm = clock.schedule(
                        () -> run.end("This plan took longer than a plan may take."),
                        limits.time().toMillis(),
                        TimeUnit.MILLISECONDS);
                run.follow(process);
            }
        } finally {
            run.end("A fault of our own: the plan could not be begun. Your floor is kept.");
            if (alarm != null) {
                alarm.cancel(false);
            }
            synchronized (this) {
                busy--;
            }
            next();
        }
    }

    private PlanProcess take() {
        PlanProcess process;
        synchronized (this) {
            process = ready;
            ready = null;
        }
        ScheduledFuture<?> unused = clock.schedule(this::prepareIfIdle, 1, TimeUnit.SECONDS);
        return process != null && process.isAlive() ? process : starter.get();
    }

    /** While plans are made, getting ready would take their processor. */
    private void prepareIfIdle() {
        boolean idle;
        synchronized (this) {
            idle = busy == 0 && ready == null && !closed;
        }
        if (idle) {
            prepare();
        } else {
            synchronized (this) {
                if (!closed && ready == null) {
                    ScheduledFuture<?> unused = clock.schedule(this::prepareIfIdle, 1, TimeUnit.SECONDS);
                }
            }
        }
    }

    /** A plan that is kept. */
    synchronized PlanRun find(String id) {
        PlanRun run = runs.get(id);
        if (run == null) {
            throw new Refused(404, "this plan is not kept any more; plan again");
        }
        return run;
    }

    synchronized boolean isBusy() {
        return busy > 0 || !waiting.isEmpty();
    }

    private void forgetOldest() {
        for (PlanRun old : List.copyOf(runs.values())) {
            if (runs.size() <= limits.kept()) {
                return;
            }
            if (old.isOver()) {
                runs.remove(old.id());
                remove(old.folder());
            }
        }
    }

    /** Removes a folder of ours with all that lies in it; a process that is just ending may still write into it for a moment. */
    static void remove(Path folder) {
        for (int i = 0; i < TRIALS && Files.exists(folder) && !removed(folder); i++) {
            try {
                Thread.sleep(PAUSE);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
    }

    private static boolean removed(Path folder) {
        try (Stream<Path> found = Files.walk(folder)) {
            for (Path path : found.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
            return true;
        } catch (IOException | UncheckedIOException e) {
            return false;
        }
    }

    private static Thread daemon(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }

    /** Ends all plans and removes their files. */
    @Override
    public void close() {
        List<PlanRun> all;
        synchronized (this) {
            closed = true;
            waiting.clear();
            all = List.copyOf(runs.values());
            if (ready != null) {
                ready.end();
            }
        }
        all.forEach(run -> run.end("The page has ended."));
        clock.shutdownNow();
        remove(folder);
    }
}
