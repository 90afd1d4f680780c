package org.runbend.export.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.export.CommandRun;

/** Runs through {@code faults.md}: each row's case gives just the lines of the table, code 2, and writes nothing. */
class FaultTableTest {
    /** Calls that tell a person something. */
    private static final Pattern TELLS = Pattern.compile("\\.fault\\(|\\.wrong\\(|faultAt\\(|\\bbad\\(path|\\bat\\(file"
            + "|new Unbuildable\\(|new OutputRefused\\(|new NotRigid\\(|Require\\.that\\(");

    private static final Pattern TEXT = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

    /** What no file can bring about, as a stricter reader stands before it, or what another test holds. */
    private static final List<String> NO_ROW = List.of(
            // records that readers cannot offend, as they read numbers and lists within bounds
            "must not be negative",
            // a page alone sends jobs, and its own tests say this
            "lies outside the folder of the page",
            // a day of orders is no kit; its own test says this
            "the output folder holds files but no batch of ours",
            "share %s must be 0 to 100",
            "coil length must be on offer",
            "stock length must be on offer",
            "grooves must be 1 or 2",
            "curve needs two points",
            "at least one cutter must be at hand",
            "routing: play",
            "routing: bendPlay",
            "routing: depthPlay",
            "routing: pad",
            "routing: leastWeb",
            "routing: leastRest",
            "trim %s mm must be",
            "labour: cut",
            "labour: stopSetting",
            "labour: coilChange",
            "labour: bend",
            "labour: groove",
            "labour: plate",
            "labour: watt",
            "its aid %s is not among the items",
            "part number %s stands twice",
            "three capital letters of ISO 4217",
            "no lengths were measured",
            "at least one guide bush must be at hand",
            "layers: colour",
            "panels: kerf",
            "panels: trim",
            "panels: leastPart",
            "panels: tolerances",
            "panels: at least one screw",
            "panels: a screw of %s mm",
            "hundredths of a percent",
            "validDays %s must be",
            "is not sold alone",
            // held by QuoteCommandTest, as they are about sizes and no file
            "mm: a side of ",
            "the catalog has no pipe ",
            "the catalog has no single-groove plate for pipe ",
            "a plan of this floor fails a check",
            // no job of the table lays a floor of boards in a moment; its lengths are held by SeededFloorsTest
            "mm takes screws of",
            // what no joints do is found by trying them, which no file of the table does in a moment
            "build.boards",
            // held by GuideCommandTest and RouterGuideTest, as check draws no guide
            "no cutter of routing.cutters goes",
            "mm to turn and ends above the board",
            "mm turn and ends above the board",
            "mm has no plate left between slots",
            // held by the test of drawn loops on the command line: an option that check does not have
            "--improve needs a loop that somebody drew",
            // held by HeatCommandTest, as check does not have the option
            "--temperatures needs build and heating",
            // held by IntakeTest and the tests of the survey
            "files extend each other in a row",
            "corners with the chords of its arcs",
            "the lengths leave the floor loose",
            "may stand in two places",
            "no floor without crossing sides",
            // held by the tests of the loop, the plates and the coils
            "the floor is too wide to lay a loop on yet",
            "no closed loop is possible",
            "the pipe cannot turn into a hole anywhere",
            "the coils do not do",
            "the plates cannot cover what is asked",
            // held by OutputFolderTest, OutputFolderKillTest and BadInputTest, as user or disk must be special
            "cannot be read",
            // held by DrawnLoopCommandTest, as it needs a drawing
            "the loop measures",
            "the loop lies off the floor",
            "the loop turns straight back at [",
            "points, at most",
            // held by OutlineCommandTest
            "a job file ends with .yaml",
            "exists and is no file; name another with --out",
            "exists and is not as Runbend wrote it",
            "file; name a new file",
            "name another file, or say --replace",
            "cannot be written");

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
            assertEquals(
                    row.lines(),
                    lines("plan", job, "--out", folder.resolve("out").toString()));
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

    static Stream<Arguments> oddities() throws IOException {
        String good = new String(
                FaultTable.class.getResourceAsStream("faults/job.yaml").readAllBytes(), UTF_8);
        return Stream.of(
                        List.of("byte-order mark", "job: Trial floor", "\\xEF\\xBB\\xBFjob: Trial floor"),
                        List.of("carriage return and line feed", "", good.replace("\n", "\\r\\n")),
                        List.of("carriage return alone", "", good.replace("\n", "\\r")),
                        List.of("end of document", "", good + "...\\n"),
                        List.of("no line break at the end", "", good.strip()),
                        List.of("yes is a text", "order: T-1", "order: yes"),
                        List.of("a date is a text", "order: T-1", "order: T-1\\ndate: 2026-02-31"),
                        List.of("leading zeros are decimal", "spacing: 150", "spacing: 0150"),
                        List.of("exponent", "spacing: 150", "spacing: 1.5e2"),
                        List.of("plus", "spacing: 150", "spacing: +150"),
                        List.of("metres", "spacing: 150", "spacing: 0.15 m"),
                        List.of("quoted number", "spacing: 150", "spacing: \"150\""),
                        List.of(
                                "text of every script",
                                "job: Trial floor",
                                "job: \"\u0623\u0631\u0636 \uD83D\uDE90 e\u0301 \u202Egnp\""),
                        List.of("text of 500", "job: Trial floor", "job: «500×W»"))
                .map(o -> Arguments.of(o.toArray()));
    }

    /** Every message of the readers stands in a row, so a new one needs a row. */
    @Test
    void everyMessageHasARow() throws IOException {
        String table =
                FaultTable.rows().stream().flatMap(r -> r.lines().stream()).collect(Collectors.joining("\n"));
        List<String> missing = new ArrayList<>();
        int count = 0;
        for (Path file : sources()) {
            String source = Files.readString(file);
            Matcher m = TELLS.matcher(source);
            while (m.find()) {
                String said = longestPart(call(source, m.end()));
                count += said.length() < 8 ? 0 : 1;
                if (said.length() >= 8
                        && !table.contains(said)
                        && NO_ROW.stream().noneMatch(call(source, m.end())::contains)) {
                    missing.add(file.getFileName() + ": " + said);
                }
            }
        }
        assertTrue(count > 80, "messages found: " + count);
        assertEquals(List.of(), missing);
    }

    /** The texts of a call up to its end, one after the other; texts that are added up are one. */
    private static String call(String source, int from) {
        String rest = source.substring(from).replaceAll("\"\\s*\\+\\s*\"", "");
        StringBuilder texts = new StringBuilder();
        Matcher m = TEXT.matcher(rest);
        int at = 0;
        while (m.find(at) && !rest.substring(at, m.start()).contains(";")) {
            texts.append(m.group(1)).append('\n');
            at = m.end();
        }
        return texts.toString();
    }

    private static String longestPart(String texts) {
        return Stream.of(texts.split("\n|%[.0-9]*[sdf%]|\\\\.", -1))
                .map(String::strip)
                .max(Comparator.comparingInt(String::length))
                .orElse("");
    }

    /** All but the cutting engine, which knows no file: its checks hold its callers to their word. */
    private static List<Path> sources() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String room : List.of("catalog", "optimizer", "export")) {
            try (Stream<Path> all = Files.walk(Path.of("..", room, "src", "main", "java"))) {
                all.filter(p -> p.toString().endsWith(".java") && !p.toString().contains("cutting"))
                        .sorted()
                        .forEach(files::add);
            }
        }
        return files;
    }
}
