package org.runbend.export.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/** All examples, each planned once for all tests of drawings. */
final class PlannedExamples {
    static final Path FOLDER = Path.of("..", "examples");
    private static final Map<Path, KitPlan> PLANS = new ConcurrentHashMap<>();

    private PlannedExamples() {}

    static List<Path> jobs() throws IOException {
        try (Stream<Path> all = Files.walk(FOLDER, 2)) {
            return all.filter(p -> p.toString().endsWith(".yaml"))
                    .filter(p -> !p.endsWith("workshop.yaml")
                            && !p.getFileName().toString().startsWith("catalog"))
                    .sorted()
                    .toList();
        }
    }

    static KitPlan plan(Path job) {
        return PLANS.computeIfAbsent(
                job, j -> new KitPlanner(Work.silent()).plan(JobReader.read(j, Optional.empty(), new DrawnLoops())));
    }
}
