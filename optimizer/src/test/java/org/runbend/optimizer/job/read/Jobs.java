package org.runbend.optimizer.job.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.runbend.optimizer.job.Job;

/** A good job to change, and the folder of examples. */
final class Jobs {
    /** The examples, seen from the folder of this module, where the build runs its tests. */
    static final Path EXAMPLES = Path.of("..", "examples");

    static final String GOOD = """
            job: Trial floor
            order: T-1
            catalog: workshop.yaml
            floor:
              outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]
              keepOut:
                - {name: drain, circle: {centre: [700, 250], radius: 60}, clearance: 60}
              unheated: [{name: locker, polygon: [[2000, 0], [2400, 0], [2400, 300]]}]
              port: {at: [0, 75]}
            layout: {spacing: 150}
            pipe: {product: PX-16}
            plates: {product: [SP-1, SP-2]}
            """;

    private Jobs() {}

    /** Writes a job beside a copy of the demo catalog and reads it. */
    static Job read(Path folder, String text) throws IOException {
        Path catalog = folder.resolve("workshop.yaml");
        if (!Files.exists(catalog)) {
            Files.copy(EXAMPLES.resolve("workshop.yaml"), catalog);
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }
}
