package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a user gets of heat: figures in kit.json, the report, the shaded floor, plates chosen by heat. */
class HeatCommandTest {
    private static final Path EXAMPLES = Path.of("..", "examples");

    @TempDir
    Path folder;

    @BeforeEach
    void catalog() throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
    }

    private Path job(String example) throws IOException {
        return job(example, "", "");
    }

    private Path job(String example, String written, String instead) throws IOException {
        String text = Files.readString(EXAMPLES.resolve(example + ".yaml"));
        assertTrue(text.contains(written), written);
        return Files.writeString(folder.resolve("job.yaml"), written.isEmpty() ? text : text.replace(written, instead));
    }

    private CommandRun plan(Path job, String... options) {
        List<String> args = new ArrayList<>(
                List.of("plan", job.toString(), "--out", folder.resolve("kit").toString()));
        args.addAll(List.of(options));
        return CommandRun.of(args.toArray(String[]::new));
    }

    private JsonIn kit() throws IOException {
        return JsonIn.read(folder.resolve("kit").resolve("kit.json"));
    }

    private String paper(String name) throws IOException {
        return OutsideReader.run(
                        "pdftotext",
                        "-layout",
                        folder.resolve("kit").resolve(name).toString(),
                        "-")
                .replaceAll("\\s+", " ");
    }

    private static List<String> texts(JsonIn array) {
        return array.list().stream().map(JsonIn::text).toList();
    }

    private static List<JsonIn> checks(JsonIn kit, String words) {
        return kit.at("checks").list().stream()
                .filter(c -> c.at("name").text().contains(words))
                .toList();
    }

    /** The paper's figures are those of kit.json, rounded; the file is listed; nothing that is no number gets out. */
    @ParameterizedTest
    @ValueSource(strings = {"camper", "cabin-boat", "sauna-rest"})
    void aPlanSaysWhatTheFloorGives(String example) throws IOException {
        CommandRun run = plan(job(example));
        assertEquals(0, run.code(), run::err);
        JsonIn kit = kit();
        JsonIn heating = kit.at("heating");
        double upward = heating.at("upward").number();
        assertTrue(upward > 50, "heating.upward");
        assertTrue(heating.at("upwardLeast").number() < upward);
        assertTrue(heating.at("upwardMost").number() > upward);
        for (String key : HeatKeys.NUMBERS) {
            assertTrue(Double.isFinite(heating.at(key).number()), key);
        }
        assertEquals(61, heating.at("warmUp").list().size());
        assertTrue(texts(kit.at("files")).contains("heat.pdf"));
        String paper = paper("heat.pdf");
        assertEquals(
                upward,
                Double.parseDouble(paper.replaceFirst("^.*?([0-9.]+) W into a room.*$", "$1")),
                0.006 * upward,
                paper);
        assertTrue(paper.contains("Highest supply that keeps every limit"), paper);
        assertFalse(paper.contains("NaN"), paper);
        assertTrue(run.out().contains("Heat: " + Math.round(upward) + " W into the room"), run::out);
        assertEquals(1, checks(kit, "freezing point").size(), "frost is said once");
        assertEquals(1, checks(kit, "hottest floor surface").size());
        assertEquals(0, checks(kit, "under wood").size(), "reckoned limits stand for the rule of thumb");
    }

    /** Without a build-up nothing is reckoned: the rules of thumb stay, and the kit is as it was. */
    @Test
    void aPlanWithoutBuildStillPlans() throws IOException {
        String text =
                Files.readString(EXAMPLES.resolve("sauna-rest.yaml")).replaceAll("(?m)^build:.*(\\R +.*)*\\R", "");
        assertFalse(text.contains("build:"));
        CommandRun run = plan(Files.writeString(folder.resolve("job.yaml"), text));
        assertEquals(0, run.code(), run::err);
        JsonIn kit = kit();
        assertFalse(kit.has("heating"));
        assertFalse(Files.exists(folder.resolve("kit").resolve("heat.pdf")));
        assertEquals(1, checks(kit, "freezing point").size());
        CommandRun shaded = plan(folder.resolve("job.yaml"), "--temperatures");
        assertEquals(2, shaded.code());
        assertEquals(
                "build: is missing: --temperatures needs build and heating to reckon with",
                shaded.err().strip().replaceFirst("^.*?(build: is)", "$1"));
    }

    /** Coolant that freezes fails the plan, and then the report says loudly that nobody is to cut. */
    @Test
    void aPlanThatFreezesIsNotCut() throws IOException {
        Path job = job("sauna-rest", "heating: {", "heating: {coldest: -40, ");
        Files.writeString(job, Files.readString(job).replaceFirst("(coldest: -40.*?), coldest: -?\\d+", "$1"));
        CommandRun run = plan(job);
        assertEquals(1, run.code(), run::out);
        assertEquals(
                "fail", checks(kit(), "freezing point").get(0).at("verdict").text());
        assertTrue(paper("heat.pdf").contains("DO NOT CUT"));
    }

    /** Who sleeps on a floor whose valve sticks open at 80 degrees C is burnt. */
    @Test
    void aSleeperIsNotBurnt() throws IOException {
        CommandRun run = plan(job("sauna-rest", "sleeping: no", "sleeping: yes, source: 80"));
        assertEquals(1, run.code(), run::out);
        assertEquals("fail", checks(kit(), "mattress").get(0).at("verdict").text());
    }

    /** A job with a circuit: parts, balance, sensor and a stuck valve on paper, the same figures in kit.json. */
    @Test
    void theCircuitIsOnPaper() throws IOException {
        assertEquals(0, plan(job("cabin-boat")).code());
        JsonIn circuit = kit().at("heating").at("circuit");
        double taken = circuit.at("floor").number()
                + circuit.at("cylinder").number()
                + circuit.at("blowers").number()
                + circuit.at("kept").number();
        assertEquals(circuit.at("source").number(), taken, 0.01);
        assertTrue(circuit.at("stuckOpen").at("surface").number()
                > circuit.at("surface").number() + 3);
        String paper = paper("heat.pdf");
        for (String words : List.of(
                "Circuit and floor sensor",
                "heater of its own, 900 to 4000 W, set to 65.0",
                "mixes 65.0 \u00b0C down to 42.0",
                "one wall between coolant and drinking water",
                "opens under 29.8 \u00b0C, closes over 32.3",
                "With the valve stuck open",
                "control, not a safety limit",
                String.format(
                        Locale.ROOT,
                        "open to the floor for %.0f %%",
                        100 * circuit.at("duty").number()))) {
            assertTrue(paper.contains(words), words + " is not in " + paper);
        }
        assertTrue(checks(kit(), "setting of the floor sensor").size() == 1);
    }

    /** What nobody said: frost and a sleeper are warned of, never more, and the lines say which key tells more. */
    @Test
    void aPlainJobIsToldWhatMatters() throws IOException {
        Path job = job("sauna-rest", ", coldest: -23", "");
        Files.writeString(job, Files.readString(job).replace("sleeping: no, ", ""));
        CommandRun run = plan(job);
        assertEquals(0, run.code(), run::err);
        List<JsonIn> warned = kit().at("checks").list().stream()
                .filter(c -> c.at("verdict").text().equals("warn"))
                .toList();
        assertEquals(
                List.of(true, true),
                warned.stream()
                        .map(c -> c.at("source").text().contains("heating."))
                        .toList(),
                run.out());
        assertTrue(run.out().contains("heating.sleeping says whether somebody sleeps on it"), run.out());
    }

    /** Coolant of 70 % glycol is known to nobody: one note, and the kit is whole. */
    @Test
    void whatCannotBeReckonedCostsANote() throws IOException {
        Path catalog = folder.resolve("workshop.yaml");
        String text = Files.readString(catalog);
        assertTrue(text.contains("base: propylene-glycol, share: 50%"));
        Files.writeString(
                catalog, text.replace("base: propylene-glycol, share: 50%", "base: propylene-glycol, share: 70%"));
        CommandRun run = plan(job("sauna-rest"));
        assertTrue(run.code() <= 1, run::err);
        JsonIn kit = kit();
        assertFalse(kit.has("heating"));
        assertEquals(
                1,
                texts(kit.at("remarks")).stream()
                        .filter(r -> r.startsWith("Heat and flow could not be reckoned: ") && r.contains("60 %"))
                        .count(),
                run.out());
        assertEquals(1, checks(kit, "freezing point").size(), "the catalog's freezing point stands in");
    }

    @Test
    void temperaturesAreWritten() throws IOException {
        CommandRun run = plan(job("cabin-boat"), "--temperatures");
        assertEquals(0, run.code(), run::err);
        Path kit = folder.resolve("kit");
        assertTrue(texts(kit().at("files")).containsAll(List.of("temperatures.svg", "temperatures.pdf")));
        assertTrue(paper("temperatures.pdf").contains("Surface of the floor in degrees C"));
        OutsideReader.run(
                "rsvg-convert",
                "-w",
                "300",
                kit.resolve("temperatures.svg").toString(),
                "-o",
                folder.resolve("t.png").toString());
        assertTrue(Files.size(folder.resolve("t.png")) > 1000);
    }

    /** As many plates as the heat takes: for a little fewer, for more than can be had all of them, and that is said. */
    @Test
    void platesAreChosenByHeat() throws IOException {
        double some = plated("75");
        double all = plated("5000");
        assertTrue(some < all, some + " " + all);
        assertTrue(texts(kit().at("remarks")).stream()
                .anyMatch(
                        r -> r.startsWith("Plates were chosen by heat: 5000 W are wanted") && r.contains("elsewhere")));
    }

    private double plated(String wanted) throws IOException {
        String text = Files.readString(EXAMPLES.resolve("cabin-boat.yaml"))
                .replaceFirst("coverage: \\d+%", "coverage: auto")
                .replace("heating: {", "heating: {wanted: " + wanted + ", ");
        CommandRun run = plan(Files.writeString(folder.resolve("job.yaml"), text));
        assertEquals(0, run.code(), run::err);
        JsonIn heating = kit().at("heating");
        if (!wanted.equals("5000")) {
            assertTrue(heating.at("upward").number() >= Double.parseDouble(wanted), "heating.upward");
        }
        return kit().at("plates").at("plated").number();
    }
}
