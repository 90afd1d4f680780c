package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** Several good plans on the command line: the table, its files, and going on with one. */
class AlternativesCommandTest {
    @TempDir
    static Path folder;

    private static String closet;

    /** The folder of a plan with alternatives, made once: nothing writes into it again. */
    private static Path planned;

    /** How many alternatives the closet has, as its file says. */
    private static int count;

    /** The closet with more plates than it asks for: then there is a cheaper plan beside it. */
    @BeforeAll
    static void planThem() throws IOException {
        Path examples = Path.of("..", "examples");
        Files.copy(examples.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        String job = Files.readString(examples.resolve("closet.yaml"));
        assertTrue(job.contains("coverage: 70%"), job);
        Path written = folder.resolve("closet.yaml");
        Files.writeString(written, job.replace("coverage: 70%", "coverage: 90%"));
        closet = written.toString();
        planned = plan("planned", "--alternatives");
        count = JsonIn.read(planned.resolve("alternatives.json"))
                .at("alternatives")
                .list()
                .size();
    }

    private static Path plan(String name, String... more) {
        Path kit = folder.resolve(name);
        List<String> args = new ArrayList<>(List.of("plan", closet, "--out", kit.toString()));
        args.addAll(List.of(more));
        CommandRun run = CommandRun.of(args.toArray(String[]::new));
        assertEquals(0, run.code(), run::err);
        return kit;
    }

    @Test
    void theTableHasTheNumbersOfTheKits() throws IOException {
        JsonIn table = JsonIn.read(planned.resolve("alternatives.json"));
        assertTrue(count >= 2, "alternatives: " + count);
        for (int n = 1; n <= count; n++) {
            JsonIn row = table.at("alternatives").list().get(n - 1);
            JsonIn taken = JsonIn.read(
                    plan("taken-" + n, "--take", Integer.toString(n)).resolve("kit.json"));
            JsonIn loop = taken.at("loops").list().get(0);
            assertEquals(n, row.at("number").number());
            assertEquals(
                    loop.at("quarterBends").number(), row.at("quarterBends").number());
            assertEquals(loop.at("leftOut").number(), row.at("leftOut").number());
            assertEquals(loop.at("cutLength").number(), row.at("cutLength").number());
            assertEquals(loop.at("floorLength").number(), row.at("floorLength").number());
            assertEquals(
                    taken.at("plates").at("coverage").number(),
                    row.at("coverage").number());
            assertEquals(
                    taken.at("plates").at("pieces").list().size(),
                    row.at("pieces").number());
            assertEquals(taken.at("weight").number(), row.at("weight").number());
            assertEquals(taken.at("total").number(), row.at("total").number());
            assertEquals(
                    taken.at("output").at("watts").number(), row.at("upward").number());
            assertEquals(minutes(taken), row.at("minutes").number(), 0.51);
            assertEquals(
                    taken.at("work").at("seconds").number(),
                    row.at("work").at("seconds").number());
            assertEquals(minutes(taken), taken.at("work").at("seconds").number() / 60, 0.01);
            String text = Files.readString(folder.resolve("taken-" + n).resolve("kit.json"));
            assertTrue(text.contains("This kit is alternative " + n + " of " + count), text);
            assertFalse(text.contains("alternatives.pdf"));
        }
    }

    /**
     * Minutes by the times of the example catalog, seconds: 40 a quarter bend, 30 a metre of pipe on the floor, 20 a piece of plate laid;
     * 20 a cut, 60 a length that the stop is set to, 180 a coil.
     */
    private static double minutes(JsonIn kit) {
        double seconds = 0;
        for (JsonIn loop : kit.at("loops").list()) {
            for (JsonIn element : loop.at("elements").list()) {
                boolean bends = element.at("kind").text().equals("bend");
                seconds += bends ? 40 * Math.abs(element.at("turn").number()) / 90 : 0;
                seconds += 30 * element.at("length").number() / 1000;
            }
        }
        seconds += 20 * kit.at("plates").at("pieces").list().size();
        seconds += 20 * kit.at("sawWork").at("cuts").number();
        seconds += 60 * kit.at("sawWork").at("stopSettings").number();
        return (seconds + 180 * kit.at("coils").list().size()) / 60;
    }

    /** Nobody in the table is better at an aim than who is named for it. */
    @Test
    void aimsAreBestAtWhatTheySay() throws IOException {
        JsonIn table = JsonIn.read(planned.resolve("alternatives.json"));
        assertEquals("reckoned", table.at("heat").text());
        Map<String, ToDoubleFunction<JsonIn>> costs = Map.of(
                "warmest", row -> -Math.rint(row.at("upward").number()),
                "least-work", row -> row.at("minutes").number(),
                "least-price", row -> row.at("total").number(),
                "even-heat", row -> row.at("uneven").number());
        int named = 0;
        for (JsonIn row : table.at("alternatives").list()) {
            for (JsonIn aim : row.at("bestAt").list()) {
                ToDoubleFunction<JsonIn> cost = costs.getOrDefault(aim.text(), r -> 0);
                named += costs.containsKey(aim.text()) ? 1 : 0;
                for (JsonIn other : table.at("alternatives").list()) {
                    assertTrue(cost.applyAsDouble(row) <= cost.applyAsDouble(other), aim.text());
                }
            }
        }
        assertTrue(named >= 2, named + " aims named");
    }

    @Test
    void sameJobSameBytesAndTheFolderListsThem() throws IOException {
        Path again = plan("again", "--alternatives");
        for (String name : List.of("alternatives.pdf", "alternatives.json", "kit.json")) {
            assertArrayEquals(Files.readAllBytes(planned.resolve(name)), Files.readAllBytes(again.resolve(name)), name);
        }
        String text = Files.readString(planned.resolve("kit.json"));
        assertTrue(text.contains("\"alternatives.json\", \"alternatives.pdf\""), text);
        plan("again");
        assertFalse(Files.exists(again.resolve("alternatives.pdf")), "a later plan without them takes them away");
    }

    @ParameterizedTest
    @CsvSource({"0", "7"})
    void aNumberThatNoJobHas(int number) {
        refused(number, "alternatives are numbered from 1 to at most 6");
    }

    @Test
    void aNumberThatThisJobHasNot() {
        assertTrue(count < 6, "the closet has every number that can be asked for");
        refused(count + 1, "this job has " + count + " alternatives");
    }

    private static void refused(int number, String why) {
        Path kit = folder.resolve("refused");
        CommandRun run = CommandRun.of("plan", closet, "--out", kit.toString(), "--take", Integer.toString(number));
        assertEquals(2, run.code());
        assertEquals(
                "runbend plan: --take " + number + ": " + why + " (see 'runbend plan --help')",
                run.err().strip());
        assertFalse(Files.exists(kit));
    }

    /** Nobody reads letters under 6.5 points from a sheet on a bench (common practice). */
    @Test
    void lettersCanBeRead() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(planned.resolve("alternatives.pdf").toFile())) {
            PDFTextStripper letters = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    assertTrue(
                            text.getFontSizeInPt() >= 6.5,
                            text.getUnicode() + " has " + text.getFontSizeInPt() + " pt");
                    super.processTextPosition(text);
                }
            };
            String text = letters.getText(pdf);
            assertTrue(text.contains("Alternatives KC-2035") && text.contains("Take care: "), text);
            assertTrue(text.contains("40 s a quarter bend, 30 s a metre of groove, 20 s a plate laid"), text);
            for (String word : List.of("return", "quarter", "served", "uneven", "heat", "work", "plated")) {
                assertTrue(text.matches("(?s).*\\b" + word + "\\b.*"), "broken in the head: " + word + " in " + text);
            }
            assertFalse(text.matches("(?s).*\\d\\.\\s*\\n\\d.*"), "a number is broken in " + text);
        }
    }
}
