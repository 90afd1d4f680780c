package org.runbend.optimizer.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/** What a change for even heat does on whole floors, by the measure that plans are compared with. */
class EvenHeatTest {
    /** At the same turns and places left out never more uneven, and on some floors less by at least so much. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"f01-rect, 0.1", "f12-odd, 0", "f02-arches, 0", "f08-closet, 0"})
    void evenHeatIsNeverMoreUneven(String floor, double gain) throws URISyntaxException {
        Job job = JobReader.read(
                Path.of(EvenHeatTest.class
                        .getResource("/floors/" + floor + ".yaml")
                        .toURI()),
                Optional.empty());
        KitPlan runs = plan(job, Job.Prefer.LONG_RUNS);
        KitPlan even = plan(job, Job.Prefer.EVEN_HEAT);
        assertEquals(runs.loops().get(0).turns(), even.loops().get(0).turns());
        assertEquals(runs.loops().get(0).leftOut(), even.loops().get(0).leftOut());
        double before = Unevenness.of(runs);
        double after = Unevenness.of(even);
        assertTrue(after <= before - gain, () -> floor + ": " + before + " -> " + after);
        assertTrue(even.isSound());
    }

    private static KitPlan plan(Job job, Job.Prefer prefer) {
        Job wished = job.with(job.floor(), job.layout().with(prefer));
        return new KitPlanner(Work.silent()).plan(wished);
    }
}
