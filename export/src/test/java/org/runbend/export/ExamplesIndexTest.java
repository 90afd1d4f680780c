package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The index of the examples names every job once, says a sentence of it and shows its own picture. */
class ExamplesIndexTest {
    private static final Path EXAMPLES = Path.of("..", "examples");
    private static final Pattern LINE =
            Pattern.compile("^\\| \\[(.+?\\.yaml)]\\((.+?)\\) \\| (.+?) \\| !\\[(.+?)]\\((.+?)\\) \\|$");

    private static final Pattern LINK = Pattern.compile("]\\(([^)]+)\\)");

    @Test
    void everyJobHasALineWithItsPicture() throws IOException {
        Map<String, String> listed = new TreeMap<>();
        for (String line : Files.readAllLines(EXAMPLES.resolve("README.md"))) {
            Matcher m = LINE.matcher(line);
            if (m.matches()) {
                assertEquals(m.group(1), m.group(2));
                assertTrue(m.group(3).endsWith(".") && m.group(3).length() >= 40, line);
                assertEquals(null, listed.put(m.group(2), m.group(5)), "listed twice: " + line);
            }
        }
        Map<String, String> jobs = ExamplesTest.jobs()
                .collect(Collectors.toMap(
                        j -> EXAMPLES.relativize(j).toString().replace('\\', '/'),
                        j -> "pictures/" + PlannedKits.nameOf(j) + ".svg",
                        (a, b) -> a,
                        TreeMap::new));
        assertEquals(jobs, listed);
        assertTrue(listed.size() >= 8, listed::toString);
    }

    @Test
    void everyLinkLeadsSomewhere() throws IOException {
        int seen = 0;
        for (String room : new String[] {"", "examples", "catalog", "optimizer", "export"}) {
            Path page = EXAMPLES.resolveSibling(room).resolve("README.md");
            Matcher m = LINK.matcher(Files.readString(page));
            while (m.find()) {
                assertTrue(Files.isRegularFile(page.resolveSibling(m.group(1))), page + ": " + m.group(1));
                seen++;
            }
        }
        assertTrue(seen > 40, "links: " + seen);
    }

    /** No picture is left behind when a job goes. */
    @Test
    void everyPictureIsOfAJob() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLES.resolve("pictures"))) {
            List<String> jobs = ExamplesTest.jobs()
                    .map(j -> PlannedKits.nameOf(j) + ".svg")
                    .sorted()
                    .toList();
            List<String> pictures = files.map(f -> f.getFileName().toString())
                    .filter(n -> n.endsWith(".svg"))
                    .sorted()
                    .toList();
            assertEquals(jobs, pictures);
        }
    }
}
