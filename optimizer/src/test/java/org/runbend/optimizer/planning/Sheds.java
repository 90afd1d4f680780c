package org.runbend.optimizer.planning;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.work.Work;

/** Jobs and plans of a garden shed beside the demo catalog, changed a line at a time. */
final class Sheds {
    private static final Path CATALOG = Path.of("..", "examples", "workshop.yaml");

    static final String SHED = """
            job: Garden shed
            order: GS-7
            catalog: workshop.yaml
            floor:
              outline: [[0, 0], [2700, 0], [2700, 1650], [0, 1650]]
              port: {at: [0, 75]}
            layout: {spacing: 150}
            pipe: {product: PX-16, tails: [500, 500]}
            plates: {product: [SP-1]}
            """;

    private Sheds() {}

    static Job job(Path folder, String text) throws IOException {
        return job(folder, text, Files.readString(CATALOG), Optional.empty());
    }

    static Job job(Path folder, String text, String catalog, Optional<Path> shelf) throws IOException {
        Files.writeString(folder.resolve("workshop.yaml"), catalog);
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), shelf);
    }

    /** The demo catalog with a text changed; it must stand there. */
    static String catalog(String from, String to) throws IOException {
        String text = Files.readString(CATALOG);
        if (!text.contains(from)) {
            throw new IllegalArgumentException("the catalog does not say " + from);
        }
        return text.replace(from, to);
    }

    static KitPlan plan(Job job) {
        return new KitPlanner(Work.silent()).plan(job);
    }
}
