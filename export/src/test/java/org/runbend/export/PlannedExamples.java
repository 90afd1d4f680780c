package org.runbend.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.runbend.export.cli.DrawnLoops;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/** All examples, each planned once for all tests. */
public final class PlannedExamples {
    /** The examples, seen from the folder of a module, where the build runs its tests. */
    public static final Path FOLDER = Path.of("..", "examples");

    private static final Map<Path, KitPlan> PLANS = new ConcurrentHashMap<>();

    private PlannedExamples() {}

    /** The job files of the examples, in the order of their paths. */
    public static List<Path> jobs() throws IOException {
        try (Stream<Path> all = Files.walk(FOLDER, 2)) {
            return all.filter(p -> p.toString().endsWith(".yaml"))
                    .filter(p -> !p.endsWith("workshop.yaml")
                            && !p.getFileName().toString().startsWith("catalog"))
                    .sorted()
                    .toList();
        }
    }

    /** The plan of an example, made once in this process. */
    public static KitPlan plan(Path job) {
        return PLANS.computeIfAbsent(
                job, j -> new KitPlanner(Work.silent()).plan(JobReader.read(j, Optional.empty(), new DrawnLoops())));
    }
}
