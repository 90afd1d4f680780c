package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A queue of one slot and one place to wait, with processes that never answer. */
class PlanQueueTest {
    @TempDir
    Path folder;

    /** Reads what it is told and says nothing. */
    static final class Silent {
        private Silent() {}

        public static void main(String[] args) throws Exception {
            System.in.transferTo(System.out);
        }
    }

    private PlanProcess silent() {
        return PlanProcess.start(
                List.of(
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Silent.class.getName()),
                folder,
                50);
    }

    @Test
    void whatFindsNoPlaceIsRefusedAndWhatWaitsMovesUp() throws Exception {
        List<PlanProcess> started = new ArrayList<>();
        Limits limits = new Limits(50, Duration.ofMinutes(1), 1, 1, 2, Duration.ofHours(1), false);
        Path plans = folder.resolve("plans");
        try (PlanQueue queue = new PlanQueue(limits, plans, () -> {
            PlanProcess process = silent();
            synchronized (started) {
                started.add(process);
            }
            return process;
        })) {
            PlanRequest request = new PlanRequest("a.yaml", "job: a", false, false);
            PlanRun first = queue.ask(request);
            PlanRun second = queue.ask(request);
            assertEquals(
                    429, assertThrows(Refused.class, () -> queue.ask(request)).status());
            waitFor(started, 1);
            first.end("Stopped.");
            assertTrue(first.isOver());
            waitFor(started, 2);
            assertFalse(second.isOver());
            PlanRun third = queue.ask(request);
            third.end("Stopped.");
            queue.ask(request);
            assertEquals(
                    404,
                    assertThrows(Refused.class, () -> queue.find(first.id())).status(),
                    "the oldest is forgotten");
            assertFalse(Files.exists(first.folder()));
        }
        assertFalse(Files.exists(plans), "a queue that closes leaves nothing behind");
        for (int i = 0; i < 500 && started.stream().anyMatch(PlanProcess::isAlive); i++) {
            Thread.sleep(20);
        }
        assertTrue(started.stream().noneMatch(PlanProcess::isAlive));
    }

    private static void waitFor(List<PlanProcess> started, int count) throws InterruptedException {
        for (int i = 0; i < 500; i++) {
            synchronized (started) {
                if (started.size() >= count) {
                    return;
                }
            }
            Thread.sleep(20);
        }
        throw new AssertionError("no process was started");
    }
}
