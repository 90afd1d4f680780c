package org.runbend.export.dxf.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;

/**
 * Drawings of other people's test suites, in a folder beside the project: each is read or refused in one line, and model
 * space holds as many entities of each type as ezdxf counts.
 */
class SamplesTest {
    @TempDir
    Path folder;

    @Test
    void countsAreThoseOfEzdxf() throws IOException {
        List<Path> files = files();
        Map<String, String> theirs = ezdxf(files);
        int both = 0;
        for (Path file : files) {
            Optional<DxfDrawing> ours = read(file);
            String counts = theirs.get(file.toString());
            if (ours.isPresent() && !counts.equals("refused")) {
                assertEquals(counts, ours.get().counts().toString(), file.toString());
                both++;
            } else if (ours.isEmpty()) {
                boolean named = file.getFileName().toString().startsWith("bad-");
                assertTrue(named || counts.equals("refused"), () -> file + ": ezdxf reads it, we do not");
            }
        }
        int seen = both;
        assertTrue(seen > 100, () -> seen + " files were read by both");
    }

    private static Optional<DxfDrawing> read(Path file) {
        try {
            return Optional.of(new DxfReader().read(file, Optional.empty()));
        } catch (DxfFault e) {
            assertFalse(e.getMessage().contains("\n"));
            assertTrue(e.getMessage().startsWith(file + ": "), e.getMessage());
            return Optional.empty();
        }
    }

    private Map<String, String> ezdxf(List<Path> files) throws IOException {
        Path script = folder.resolve("count.py");
        try (InputStream in = OutsideReader.class.getResourceAsStream("count_dxf.py")) {
            Files.write(script, in.readAllBytes());
        }
        List<String> names = files.stream().map(Path::toString).toList();
        Map<String, String> counts = new TreeMap<>();
        OutsideReader.python(script, List.of("ezdxf"), names.toArray(String[]::new))
                .lines()
                .filter(l -> l.startsWith("counts\t"))
                .forEach(l -> counts.put(l.split("\t", -1)[1], l.split("\t", -1)[2]));
        return counts;
    }

    private static List<Path> files() throws IOException {
        Path at = Path.of("").toAbsolutePath();
        while (at != null && !Files.isDirectory(at.resolve("shared/data/dxf-samples"))) {
            at = at.getParent();
        }
        assumeTrue(at != null, "the folder of sample drawings is not there");
        List<Path> files = new ArrayList<>();
        try (Stream<Path> all = Files.walk(at.resolve("shared/data/dxf-samples"))) {
            all.filter(f -> f.toString().toLowerCase(Locale.ROOT).endsWith(".dxf"))
                    .sorted()
                    .forEach(files::add);
        }
        assertTrue(files.size() > 100);
        return files;
    }
}
