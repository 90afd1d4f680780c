package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.OutsideReader;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;

/**
 * Drawings written by ezdxf, read with {@code outline}, against what a person expects of them: a table that was written down
 * before the reader was changed. The job file that comes out is read as any other.
 */
class CustomerDrawingsTest {
    private static final Path WORKSHOP = Path.of("..", "examples", "workshop.yaml");
    private static final Pattern FIRST = Pattern.compile("(?s)\n  outline:\n    - (\\[[^\\]]*\\])");

    /** Arcs are chords within half a millimetre in a job as it was read: that much area, m2. */
    private static final double AREA = 0.0015;

    @TempDir
    Path folder;

    @Test
    void asAPersonExpects() throws IOException {
        Path script = Files.write(folder.resolve("draw.py"), resource("customer_drawings.py"));
        List<String> drawn = OutsideReader.python(script, List.of("ezdxf"), folder.toString())
                .lines()
                .toList();
        assertTrue(drawn.size() >= 43 + 8);
        Files.copy(WORKSHOP, folder.resolve("workshop.yaml"));
        List<Row> rows = rows();
        assertTrue(drawn.stream().allMatch(d -> rows.stream().anyMatch(r -> r.drawing.equals(d))));
        List<String> wrong = new ArrayList<>();
        for (Row row : rows) {
            wrong.addAll(wrong(row));
        }
        assertEquals("", String.join("\n", wrong));
    }

    private List<String> wrong(Row row) throws IOException {
        List<String> arguments = new ArrayList<>(
                List.of("outline", folder.resolve(row.drawing + ".dxf").toString(), "--replace"));
        row.said
                .lines()
                .flatMap(l -> List.of(l.split(" ", -1)).stream())
                .filter(s -> !s.isEmpty())
                .forEach(arguments::add);
        CommandRun run = CommandRun.of(arguments.toArray(String[]::new));
        String printed = run.out() + run.err();
        List<String> wrong = new ArrayList<>();
        boolean refused = row.area.equals("refused");
        if (run.code() != (refused ? 2 : 0)) {
            wrong.add("exit code " + run.code());
        } else if (refused) {
            wrong.addAll(run.err().lines().count() == 1 ? List.of() : List.of("more than one line"));
        } else {
            wrong.addAll(wrongJob(row));
        }
        row.printed.stream().filter(p -> !printed.contains(p)).forEach(p -> wrong.add("not said: " + p));
        return wrong.isEmpty()
                ? List.of()
                : List.of(row.drawing + " " + row.said + ": " + String.join("; ", wrong) + "\n  " + printed.strip());
    }

    private List<String> wrongJob(Row row) throws IOException {
        Path file = folder.resolve(row.drawing + ".yaml");
        String draft = Files.readString(file);
        Matcher first = FIRST.matcher(draft);
        assertTrue(first.find(), draft);
        String filled = OutlineCommandTest.filled(draft)
                .replaceFirst("    at: \\[0, 700\\]", Matcher.quoteReplacement("    at: " + first.group(1)));
        Job.FloorPlan floor = JobReader.read(Files.writeString(file, filled), Optional.empty())
                .floor();
        List<String> wrong = new ArrayList<>();
        double area = area(floor.outline()) / 1e6;
        if (Math.abs(area - Double.parseDouble(row.area)) > AREA) {
            wrong.add("area " + area);
        }
        String outline = draft.substring(
                draft.indexOf("  outline:"),
                draft.indexOf("back to 0") < 0 ? draft.length() : draft.indexOf("  port:"));
        int end = Math.min(
                index(outline, "  marks:"), Math.min(index(outline, "  keepOut:"), index(outline, "  unheated:")));
        long arcs = Pattern.compile("\\{arc:")
                .matcher(outline.substring(0, end))
                .results()
                .count();
        if (arcs != Long.parseLong(row.arcs)) {
            wrong.add("arcs " + arcs);
        }
        Map<String, Integer> kinds = new TreeMap<>();
        floor.keepOuts().forEach(k -> kinds.merge(k.kind().name().toLowerCase(Locale.ROOT), 1, Integer::sum));
        if (!kinds.equals(row.kinds())) {
            wrong.add("keep-outs " + kinds);
        }
        if (floor.unheated().size() != Integer.parseInt(row.unheated)) {
            wrong.add("unheated " + floor.unheated().size());
        }
        return wrong;
    }

    private static int index(String text, String word) {
        int at = text.indexOf(word);
        return at < 0 ? text.length() : at;
    }

    private static double area(List<Point> ring) {
        double twice = 0;
        for (int i = 0; i < ring.size(); i++) {
            Point a = ring.get(i);
            Point b = ring.get((i + 1) % ring.size());
            twice += a.x() * b.y() - b.x() * a.y();
        }
        return Math.abs(twice) / 2;
    }

    private static List<Row> rows() throws IOException {
        return new String(resource("customer_drawings.md"), java.nio.charset.StandardCharsets.UTF_8)
                .lines()
                .filter(l -> l.startsWith("| ") && !l.startsWith("| drawing"))
                .map(Row::of)
                .toList();
    }

    private static byte[] resource(String name) throws IOException {
        try (java.io.InputStream in = OutsideReader.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        }
    }

    private record Row(
            String drawing,
            String said,
            String area,
            String arcs,
            String keepOuts,
            String unheated,
            List<String> printed) {
        static Row of(String line) {
            List<String> cells = List.of(
                            line.substring(1, line.lastIndexOf('|')).split("\\|", -1))
                    .stream()
                    .map(String::strip)
                    .toList();
            List<String> printed = List.of(cells.get(7).split(";;", -1)).stream()
                    .map(String::strip)
                    .filter(p -> !p.isEmpty())
                    .collect(Collectors.toList());
            return new Row(cells.get(0), cells.get(1), cells.get(3), cells.get(4), cells.get(5), cells.get(6), printed);
        }

        Map<String, Integer> kinds() {
            Map<String, Integer> kinds = new TreeMap<>();
            if (!keepOuts.equals("-")) {
                for (String part : keepOuts.split(", ", -1)) {
                    kinds.put(part.split(" ", -1)[0], Integer.parseInt(part.split(" ", -1)[1]));
                }
            }
            return kinds;
        }
    }
}
