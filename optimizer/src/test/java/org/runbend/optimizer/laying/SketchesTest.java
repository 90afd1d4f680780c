package org.runbend.optimizer.laying;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/** Who watches sees a loop before the search in earnest has begun, and each sketch is a closed loop of the floor. */
class SketchesTest {
    private final List<List<Progress.Place>> shown = Collections.synchronizedList(new ArrayList<>());
    private final List<Integer> shownBefore = Collections.synchronizedList(new ArrayList<>());

    @Test
    void aLoopIsShownBeforeItIsLaidInEarnest() throws IOException {
        Job job = JobReader.read(Path.of("..", "examples", "cabin-boat.yaml"), Optional.empty());
        new LoopLaying().lay(job, LoopPipes.bendRadius(job), new Work(new Watcher(), 2));
        assertFalse(shownBefore.isEmpty(), "the search in earnest began");
        assertTrue(shownBefore.get(0) >= 1, "something was seen by then");
        for (List<Progress.Place> line : shown) {
            assertEquals(line.size(), new HashSet<>(line).size(), "no place twice");
            for (int i = 0; i < line.size(); i++) {
                Progress.Place a = line.get(i);
                Progress.Place b = line.get((i + 1) % line.size());
                assertEquals(job.layout().spacing(), Math.hypot(a.x() - b.x(), a.y() - b.y()), 1e-6);
            }
        }
    }

    private final class Watcher implements Progress {
        @Override
        public void step(Step step) {
            if (step.what().startsWith("laying the loop over")) {
                shownBefore.add(shown.size());
            }
        }

        @Override
        public boolean looks() {
            return true;
        }

        @Override
        public void sketch(Sketch sketch) {
            shown.addAll(sketch.lines());
        }
    }
}
