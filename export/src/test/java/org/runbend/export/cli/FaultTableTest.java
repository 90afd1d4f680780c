package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.export.CommandRun;

/** Runs through {@code faults.md}: each row's case gives just the lines of the table, code 2, and writes nothing. */
class FaultTableTest {
    /** What a reader says, the first text in the call; texts of under 8 letters say nothing by themselves. */
    private static final Pattern SAID = Pattern.compile(
            "(?:\\.fault|faultAt|bad|at|Optional\\.of|Unbuildable|OutputRefused|NotRigid|wrong|Check\\.that)"
                    + "\\([^;]*?\"([^\"]{8,})\"[^;]*;");

    @TempDir
    Path folder;

    static Stream<FaultTable.Row> rows() throws IOException {
        return FaultTable.rows().stream();
    }

    private Set<String> names() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            Set<String> names = new TreeSet<>();
            all.forEach(p -> names.add(folder.relativize(p).toString()));
            return names;
        }
    }

    private List<String> lines(String... args) throws IOException {
        Set<String> before = names();
        CommandRun run = CommandRun.of(args);
        assertEquals(2, run.code(), run::err);
        assertEquals("", run.out());
        assertEquals(before, names(), "nothing is written");
        return run.err()
                .lines()
                .map(l -> l.replace(folder + File.separator, ""))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void tellsWhatTheTableSays(FaultTable.Row row) throws IOException {
        assumeTrue(Files.exists(Path.of("/dev/zero")) || !row.instead().contains("/"), "this system has no /dev");
        FaultTable.lay(row, folder);
        String job = folder.resolve("job.yaml").toString();
        if (row.file().equals("out")) {
            assertEquals(row.lines(), lines("plan", job, "--out", folder.resolve("out").toString()));
            return;
        }
        List<String> check = new ArrayList<>(List.of("check", job));
        if (row.file().equals("shelf.yaml")) {
            check.addAll(List.of("--shelf", folder.resolve("shelf.yaml").toString()));
        }
        assertEquals(row.lines(), lines(check.toArray(String[]::new)));
        check.set(0, "plan");
        int more = row.lines().size() - 1;
        String suffix = more == 0 ? "" : " (and " + more + " more: runbend check prints them all)";
        assertEquals(List.of(row.lines().get(0) + suffix), lines(check.toArray(String[]::new)));
    }

    /** Guard: what the rows spoil is good. */
    @Test
    void goodFilesAreGood() throws IOException {
        FaultTable.layGood(folder);
        String shelf = folder.resolve("shelf.yaml").toString();
        CommandRun run = CommandRun.of("check", folder.resolve("job.yaml").toString(), "--shelf", shelf);
        assertEquals(0, run.code(), run::err);
        assertEquals("", run.err());
    }

    /** Odd files that are right: the same floor as the good one, and none of the oddness comes out. */
    @ParameterizedTest
    @MethodSource("oddities")
    void oddButRight(String name, String written, String instead) throws IOException {
        FaultTable.layGood(folder);
        String job = folder.resolve("job.yaml").toString();
        String good = CommandRun.of("check", job).out();
        FaultTable.lay(new FaultTable.Row(name, "job.yaml", written, instead, List.of()), folder);
        CommandRun odd = CommandRun.of("check", job);
        assertEquals("", odd.err());
        assertEquals(good, odd.out());
    }

    static Stream<org.junit.jupiter.params.provider.Arguments> oddities() throws IOException {
        String good = new String(
                FaultTable.class.getResourceAsStream("faults/job.yaml").readAllBytes(),
                java.nio.charset.StandardCharsets.UTF_8);
        return Stream.of(
                        List.of("byte-order mark", "job: Trial floor", "\\xEF\\xBB\\xBFjob: Trial floor"),
                        List.of("carriage return and line feed", "", good.replace("\n", "\\r\\n")),
                        List.of("carriage return alone", "", good.replace("\n", "\\r")),
                        List.of("end of document", "goes: nowhere", "..."),
                        List.of("no line break at the end", "", good.strip()),
                        List.of("yes is a text", "order: T-1", "order: yes"),
                        List.of("a date is a text", "order: T-1", "order: T-1\\ndate: 2026-02-31"),
                        List.of("leading zeros are decimal", "spacing: 150", "spacing: 0150"),
                        List.of("exponent", "spacing: 150", "spacing: 1.5e2"),
                        List.of("plus", "spacing: 150", "spacing: +150"),
                        List.of("metres", "spacing: 150", "spacing: 0.15 m"),
                        List.of("quoted number", "spacing: 150", "spacing: \"150\""),
                        List.of("text of every script", "job: Trial floor", "job: \"\u0623\u0631\u0636 \uD83D\uDE90 e\u0301 \u202Egnp\""),
                        List.of("text of 500", "job: Trial floor", "job: «500×W»"))
                .filter(o -> o.get(1).isEmpty() || good.contains(o.get(1)))
                .map(o -> org.junit.jupiter.params.provider.Arguments.of(o.toArray()));
    }

    /** Every message of the readers stands in a row, so a new one needs a row. */
    @Test
    void everyMessageHasARow() throws IOException {
        String table = FaultTable.rows().stream()
                .flatMap(r -> r.lines().stream())
                .reduce("", (a, b) -> a + "\n" + b);
        List<String> missing = new ArrayList<>();
        int count = 0;
        for (Path file : sources()) {
            Matcher m = SAID.matcher(Files.readString(file).replaceAll("\"\\s*\\+\\s*\"", ""));
            while (m.find()) {
                count++;
                boolean said = Stream.of(m.group(1).split("%[.0-9]*[sdf%]|\\\\.", -1))
                        .map(String::strip)
                        .filter(part -> part.length() >= 8)
                        .allMatch(table::contains);
                if (!said && NO_ROW.stream().noneMatch(m.group(1)::contains)) {
                    missing.add(file.getFileName() + ": " + m.group(1));
                }
            }
        }
        assertTrue(count > 60, "messages found: " + count);
        assertEquals(List.of(), missing);
    }

    /** What no file can bring about, with the test that holds it instead. */
    private static final List<String> NO_ROW = List.of();

    private static List<Path> sources() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String room : List.of("catalog", "optimizer", "export")) {
            try (Stream<Path> all = Files.walk(Path.of("..", room, "src", "main", "java"))) {
                all.filter(p -> p.toString().endsWith(".java")).sorted().forEach(files::add);
            }
        }
        return files;
    }
}
