package org.runbend.export.page;

import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.LongSupplier;
import org.runbend.optimizer.work.Progress;

/** Tells steps and sketches of a plan as events; no more sketches than an eye can follow. */
final class ToldProgress implements Progress {
    private static final long NANOS_BETWEEN = 80_000_000;

    private final BiConsumer<String, Map<String, Object>> tell;
    private final LongSupplier clock;
    private long last;
    private boolean any;

    ToldProgress(BiConsumer<String, Map<String, Object>> tell, LongSupplier clock) {
        this.tell = tell;
        this.clock = clock;
    }

    @Override
    public void step(Step step) {
        tell.accept("step", Map.of("what", step.what(), "at", step.at(), "of", step.of()));
    }

    @Override
    public boolean looks() {
        return true;
    }

    @Override
    public synchronized void sketch(Sketch sketch) {
        long now = clock.getAsLong();
        if (any && now - last < NANOS_BETWEEN) {
            return;
        }
        any = true;
        last = now;
        List<Object> lines = sketch.lines().stream()
                .map(line ->
                        (Object) line.stream().map(p -> List.of(p.x(), p.y())).toList())
                .toList();
        tell.accept("sketch", Map.of("lines", lines));
    }
}
