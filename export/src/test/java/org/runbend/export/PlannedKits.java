package org.runbend.export;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.runbend.optimizer.plan.KitPlan;

/**
 * The examples' kits, each planned once for all test classes of a run that ask for it, as a plan takes seconds and is only
 * read: once by the command line into a folder, once in this process.
 */
final class PlannedKits implements AutoCloseable {
    static final Path EXAMPLES = PlannedExamples.FOLDER;

    static final String CATALOG = "workshop.yaml";

    private final Path folder;
    private final Map<Path, CommandRun> runs = new ConcurrentHashMap<>();

    private PlannedKits(Path folder) {
        this.folder = folder;
    }

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    /** What the command line said when it planned the job. */
    CommandRun run(Path job) {
        return runs.computeIfAbsent(job, j -> CommandRun.of("plan", j.toString(), "--out", of(j).toString()));
    }

    /** The job's output folder, filled. */
    Path folder(Path job) {
        run(job);
        return of(job);
    }

    /** Its kit.json. */
    JsonIn kit(Path job) throws IOException {
        return JsonIn.read(folder(job).resolve("kit.json"));
    }

    /** The plan made in this process. */
    KitPlan plan(Path job) {
        return PlannedExamples.plan(job);
    }

    /** How many jobs the command line has planned. */
    int count() {
        return runs.size();
    }

    private Path of(Path job) {
        return folder.resolve(nameOf(job));
    }

    static String nameOf(Path job) {
        return job.getFileName().toString().replace(".yaml", "");
    }

    @Override
    public void close() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** Hands the kits to constructors of test classes; they are thrown away at the end of the run. */
    static final class Supply implements ParameterResolver {
        @Override
        public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
            return parameter.getParameter().getType() == PlannedKits.class;
        }

        @Override
        public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
            return context.getRoot()
                    .getStore(Namespace.create(PlannedKits.class))
                    .getOrComputeIfAbsent(PlannedKits.class, key -> make(), PlannedKits.class);
        }

        private static PlannedKits make() {
            try {
                return new PlannedKits(Files.createTempDirectory("kits"));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
