package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Prices in a currency have its decimals (ISO 4217: yen none, euro two, dinar of Kuwait three) in every line and paper. */
class CurrencyTest {
    private static final Path EXAMPLES = Path.of("..", "examples");
    private static final Pattern AMOUNT = Pattern.compile("(\\d+)(?:\\.(\\d+))? (JPY|KWD|EUR)\\b");

    @TempDir
    Path folder;

    /** A small floor with two ways to lay it, a designer's loop and every paper with a price. */
    @ParameterizedTest
    @ValueSource(strings = {"JPY", "KWD", "EUR"})
    void everywhere(String currency) throws IOException {
        String catalog =
                Files.readString(EXAMPLES.resolve("workshop.yaml")).replace("currency: EUR", "currency: " + currency);
        if (currency.equals("JPY")) {
            catalog = catalog.replaceAll("(cost|price|hour): (\\d+)\\.(\\d\\d)", "$1: $2$3");
        }
        Files.writeString(folder.resolve("workshop.yaml"), catalog);
        Path own = folder.resolve("own-loop.yaml");
        Files.writeString(
                own,
                Files.readString(EXAMPLES.resolve("ways-in/own-loop.yaml"))
                        .replace("../workshop.yaml", "workshop.yaml"));
        Path closet = folder.resolve("closet.yaml");
        Files.copy(EXAMPLES.resolve("closet.yaml"), closet);
        int decimals = currency.equals("JPY") ? 0 : currency.equals("KWD") ? 3 : 2;
        List<String> improved = List.of(
                "plan",
                own.toString(),
                "--improve",
                "--internal",
                "--out",
                out("own").toString());
        List<String> several = List.of(
                "plan",
                closet.toString(),
                "--alternatives",
                "--out",
                out("closet").toString());
        for (List<String> command : List.of(improved, several)) {
            CommandRun run = CommandRun.of(command.toArray(String[]::new));
            assertTrue(run.code() <= 1, run::err);
            assertTrue(check(run.out(), currency, decimals) >= 3, run::out);
        }
        int papers = 0;
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path paper :
                    files.filter(f -> f.toString().endsWith(".pdf")).sorted().toList()) {
                papers += check(text(paper), currency, decimals);
            }
        }
        assertTrue(papers >= 3, papers + " amounts on paper");
    }

    private Path out(String name) {
        return folder.resolve("kit-" + name);
    }

    /** How many amounts a text has; each has the decimals and the currency wanted. */
    private static int check(String text, String currency, int decimals) {
        Matcher amount = AMOUNT.matcher(text);
        int seen = 0;
        while (amount.find()) {
            assertEquals(currency, amount.group(3), amount::group);
            assertEquals(decimals, amount.group(2) == null ? 0 : amount.group(2).length(), amount::group);
            seen++;
        }
        return seen;
    }

    /** The example in yen, from its own catalog: the box's price is the whole sum of its lines. */
    @Test
    void yen() throws IOException {
        Path kit = out("yen");
        CommandRun run = CommandRun.of(
                "plan", EXAMPLES.resolve("ways-in/tea-house.yaml").toString(), "--prices", "--out", kit.toString());
        assertEquals(0, run.code(), run::err);
        JsonIn read = JsonIn.read(kit.resolve("kit.json"));
        long sum = 0;
        for (JsonIn item : read.at("items").list()) {
            sum += Math.round(item.at("price").number() * item.at("quantity").number());
        }
        assertTrue(run.out().contains(" " + sum + " JPY"), run::out);
        String list = text(kit.resolve("pick-list.pdf"));
        assertTrue(list.contains(Long.toString(sum)), list);
        assertFalse(Pattern.compile("\\b480\\.\\d|\\b2980\\.\\d").matcher(list).find(), list);
    }

    private static String text(Path paper) throws IOException {
        try (PDDocument document = Loader.loadPDF(paper.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }
}
