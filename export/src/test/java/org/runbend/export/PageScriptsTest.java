package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page's modules, whose types stand in their remarks, held against them by the compiler of TypeScript. */
class PageScriptsTest {
    @Test
    void typesHold(@TempDir Path folder) throws IOException {
        Path scripts = Path.of("src/main/resources/org/runbend/export/page").toAbsolutePath();
        long modules;
        try (Stream<Path> files = Files.list(scripts)) {
            modules = files.filter(f -> f.toString().endsWith(".js")).count();
        }
        assertEquals(
                modules + " modules, no fault",
                OutsideReader.node(OutsideReader.resource(folder, "check_types.js"), "typescript", scripts.toString())
                        .strip());
    }
}
