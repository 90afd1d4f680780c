package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.work.Work;

/** Quick looks at several lattices run on as many threads as there are; the answer is that of one thread. */
class TwoThreadsTest {
    /** Floors on which several lattices reach equally many places. */
    @ParameterizedTest
    @ValueSource(strings = {"f02-arches", "f08-closet", "f12-odd"})
    void layAsOneDoes(String floor) throws URISyntaxException, InterruptedException, ExecutionException {
        Job job = JobReader.read(
                Path.of(TwoThreadsTest.class
                        .getResource("/floors/" + floor + ".yaml")
                        .toURI()),
                Optional.empty());
        assertEquals(laidOn(1, job), laidOn(2, job));
    }

    private static LaidFloor laidOn(int threads, Job job) throws InterruptedException, ExecutionException {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            return pool.submit(() -> new KitPlanner(Work.silent()).lay(job)).get();
        } finally {
            pool.shutdown();
        }
    }
}
