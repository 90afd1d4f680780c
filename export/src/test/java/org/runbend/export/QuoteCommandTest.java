package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.source.Unit;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.OfferPart;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.KitChoosing;
import org.runbend.optimizer.quote.KitNeeds;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.QuoteLine;
import org.runbend.optimizer.work.Work;

/** Quotations from the command line, read back from kit.json and, by poppler, from paper. */
class QuoteCommandTest {
    private static final Path EXAMPLES = PlannedExamples.FOLDER;

    @TempDir
    Path folder;

    private static String text(Path paper) throws IOException {
        return OutsideReader.run("pdftotext", "-layout", paper.toString(), "-").replaceAll("\\s+", " ");
    }

    private static String amount(double minor) {
        return BigDecimal.valueOf(Math.round(minor), 2).toPlainString();
    }

    /**
     * The small booth, its figures reckoned anew from the lines of kit.json with decimals of the Java library: 3 % off, freight by weight
     * from the catalog's steps, 20 % on top. Each amount and each sentence of the quotation stands on paper; no cost does.
     */
    @Test
    void paperAndDataSayTheSame() throws IOException {
        Path kit = folder.resolve("kit");
        CommandRun run = CommandRun.of(
                "plan",
                EXAMPLES.resolve("booth-u.yaml").toString(),
                "--quote",
                "--discount",
                "3%",
                "--out",
                kit.toString());
        assertEquals(0, run.code(), run::err);
        JsonIn json = JsonIn.read(kit.resolve("kit.json"));
        JsonIn quote = json.at("quote");
        BigDecimal sum = BigDecimal.ZERO;
        for (JsonIn item : json.at("items").list()) {
            sum = sum.add(BigDecimal.valueOf(
                    item.at("price").number() * item.at("quantity").number()));
        }
        BigDecimal off = sum.multiply(new BigDecimal("0.03")).setScale(0, RoundingMode.HALF_UP);
        double weight = json.at("weight").number();
        BigDecimal freight = BigDecimal.valueOf(weight <= 5 ? 890 : weight <= 15 ? 1450 : 2200);
        BigDecimal net = sum.subtract(off).add(freight);
        BigDecimal tax = net.multiply(new BigDecimal("0.20")).setScale(0, RoundingMode.HALF_UP);
        assertEquals(0, sum.compareTo(BigDecimal.valueOf(quote.at("sum").number())));
        assertEquals(
                0,
                off.compareTo(
                        BigDecimal.valueOf(quote.at("discount").at("amount").number())));
        assertEquals(0, net.compareTo(BigDecimal.valueOf(quote.at("net").number())));
        assertEquals(0, tax.compareTo(BigDecimal.valueOf(quote.at("tax").number())));
        assertEquals(
                0, net.add(tax).compareTo(BigDecimal.valueOf(quote.at("gross").number())));

        String paper = text(kit.resolve("quote.pdf"));
        for (JsonIn item : quote.at("items").list()) {
            assertTrue(
                    paper.contains(amount(item.at("amount").number())),
                    () -> item.at("name").text() + " in " + paper);
        }
        for (String said : List.of(
                amount(quote.at("net").number()),
                amount(quote.at("tax").number()),
                amount(quote.at("gross").number()),
                "Less 3 % for this order -" + amount(off.doubleValue()),
                quote.at("validity").text(),
                "What we took for granted",
                "order KC-2043, plan " + json.at("fingerprint").text().substring(0, 12),
                "VAT 20 % of",
                "Standard kits beside it",
                amount(json.at("kitChoice").at("price").number()))) {
            assertTrue(paper.contains(said), () -> said + " in " + paper);
        }
        assertFalse(paper.contains("cost "), paper);
        assertFalse(paper.contains("21.25"), "what the workshop pays for the coil");
        assertTrue(json.at("files").list().stream().anyMatch(f -> f.text().equals("quote.pdf")));
        String word =
                OutsideReader.run("qpdf", "--check", kit.resolve("quote.pdf").toString());
        assertTrue(word.contains("No syntax or stream encoding errors found"), word);
    }

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    /**
     * Every example is priced (its offer is verified as it is made), its paper says each line and each sum as the offer has them, and holds no
     * word of cost; where kits suit, they are proved the least and what is told of them adds up.
     */
    @ParameterizedTest
    @MethodSource("jobs")
    void everyExampleIsPriced(Path job) throws IOException {
        KitPlan plan = PlannedExamples.plan(job);
        Offer offer = OfferPart.of(plan, Optional.of(new Rate(250)), Work.silent());
        String text = text(Files.write(folder.resolve("q.pdf"), KitFiles.quote(plan, offer, Paper.A4)));
        Catalog prices = plan.job().catalog();
        assertFalse(Pattern.compile("(?i)\\bcosts?\\b").matcher(text).find(), text);
        if (!plan.isSound()) {
            assertTrue(text.contains("No price yet"), text);
            return;
        }
        for (QuoteLine line : offer.quote().lines()) {
            assertTrue(text.contains(prices.money(line.amount()).bare()), () -> line + " in " + text);
        }
        assertTrue(
                text.contains(
                        "To pay " + prices.money(offer.quote().totals().gross()).bare()),
                text);
        boolean metric = plan.job().written().unit() == Unit.MM; // inches stand in brackets behind lengths
        for (String sentence : metric ? offer.quote().granted() : List.<String>of()) {
            String start = sentence.substring(0, Math.min(24, sentence.length()))
                    .replaceAll("\\s+", " ")
                    .strip();
            assertTrue(text.contains(start), () -> start + " in " + text);
        }
        assertTrue(lastLinesStandWithTheSum(), text);
        boolean pays = offer.kits().filter(k -> k.price() == plan.total()).isEmpty();
        assertEquals(
                offer.kits().isPresent() && pays, text.contains("Standard kits beside it"), "kits at the same price");
        offer.kits().filter(k -> pays).ifPresent(k -> {
            assertTrue(k.isProvedLeast());
            assertEquals(k.isCheaper(), text.contains("What you give up for that"), text);
            assertTrue(
                    text.contains(
                            "Kits with what is added " + prices.money(k.price()).bare()),
                    text);
        });
    }

    /** No page begins with the sum alone: two lines of the offer stand over it. */
    private boolean lastLinesStandWithTheSum() throws IOException {
        String paged = OutsideReader.run(
                "pdftotext", "-layout", folder.resolve("q.pdf").toString(), "-");
        for (String page : paged.split("\f", -1)) {
            int foot = page.indexOf("what is to pay");
            if (foot >= 0 && !page.contains("In it:")) {
                return page.substring(0, foot).contains("what it is");
            }
        }
        return true;
    }

    /** The camper mixes plates; a kit that holds single ones serves it for less when it is plated with those alone. */
    @Test
    void kitsAreTriedWithTheirOwnPlates() {
        KitPlan plan = PlannedExamples.plan(EXAMPLES.resolve("camper.yaml"));
        KitChoice asPlanned = new KitChoosing().choose(KitNeeds.of(plan)).orElseThrow();
        KitChoice chosen =
                OfferPart.of(plan, Optional.empty(), Work.silent()).kits().orElseThrow();
        assertEquals(Optional.empty(), asPlanned.platesAlone());
        assertEquals(Optional.of("SP-1"), chosen.platesAlone());
        assertTrue(chosen.price() < asPlanned.price(), chosen.price() + " " + asPlanned.price());
        assertEquals(plan.total(), chosen.madeToMeasure());
    }

    /** One sum in yen: 10 % of tax, half a yen rounded up; what it stands for is named without prices. */
    @Test
    void lumpSumInYen() throws IOException {
        KitPlan plan = PlannedExamples.plan(EXAMPLES.resolve("ways-in/tea-house.yaml"));
        Offer offer = OfferPart.of(plan, Optional.empty(), Work.silent());
        byte[] paper = KitFiles.quote(plan, offer, Paper.A4);
        String text = text(Files.write(folder.resolve("q.pdf"), paper));
        long net = offer.quote().totals().net();
        long tax = (2 * net + 10) / 20; // a tenth, rounded half up, in whole numbers
        for (String said : List.of(
                "Floor-heating kit, ",
                "In it: 1 ",
                "consumption tax 10 % of " + net + " " + tax,
                "To pay " + (net + tax),
                "holds for 14 days from")) {
            assertTrue(text.contains(said), () -> said + " in " + text);
        }
        assertArrayEquals(paper, KitFiles.quote(plan, offer, Paper.A4), "same plan, same bytes");
    }

    /** A plan that fails has no price on paper or terminal; here coolant would freeze at the cold that it must stand. */
    @Test
    void whatFailsHasNoPrice() throws IOException {
        Path job = failing();
        Path paper = folder.resolve("q.pdf");
        CommandRun run = CommandRun.of("quote", job.toString(), "--out", paper.toString());
        assertEquals(1, run.code(), run::err);
        assertTrue(run.out().contains("No firm price: the plan fails"), run::out);
        assertFalse(run.out().contains("To pay"), run::out);
        String text = text(paper);
        assertTrue(text.contains("DO NOT CUT"), text);
        assertTrue(text.contains("No price yet"), text);
        assertFalse(
                Pattern.compile("\\d\\.\\d\\d (EUR)?")
                        .matcher(text.replaceAll("\\d\\.\\d\\d (m2|m of)", ""))
                        .find(),
                text);
    }

    private Path failing() throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        String job = Files.readString(EXAMPLES.resolve("booth-u.yaml"));
        return Files.writeString(folder.resolve("booth.yaml"), job.replaceFirst("coldest: -\\d+", "coldest: -40"));
    }

    /**
     * A floor measured later, with a bolt and plates on 85 % of what can take them, comes to a price within the range that two sizes
     * gave; the same in metres and feet.
     */
    @Test
    void aMeasuredFloorFallsIntoTheRange() throws IOException {
        String catalog = EXAMPLES.resolve("workshop.yaml").toString();
        CommandRun range = CommandRun.of("quote", "--size", "1700x1300", "--catalog", catalog);
        assertEquals(0, range.code(), range::err);
        Matcher m = Pattern.compile(
                        "2\\.21 m2\\): (\\d+\\.\\d\\d) to (\\d+\\.\\d\\d) EUR, VAT included, sending included")
                .matcher(range.out());
        assertTrue(m.find(), range::out);
        Path job = Files.writeString(folder.resolve("hut.yaml"), """
                job: Hut
                order: H-1
                catalog: '%s'
                floor:
                  outline: [[0, 0], [1700, 0], [1700, 1300], [0, 1300]]
                  keepOut: [{name: bolt, kind: bolt, point: [900, 600]}]
                  port: {at: [0, 400]}
                pipe: {product: PX-16, tails: [800, 1200]}
                plates: {product: [SP-1, SP-2], coverage: 85%%}
                """.formatted(
                        EXAMPLES.resolve("workshop.yaml").toAbsolutePath()));
        CommandRun quote = CommandRun.of("quote", job.toString());
        assertEquals(0, quote.code(), quote::err);
        Matcher paid = Pattern.compile("To pay +(\\d+\\.\\d\\d)").matcher(quote.out());
        assertTrue(paid.find(), quote::out);
        double price = Double.parseDouble(paid.group(1));
        double least = Double.parseDouble(m.group(1));
        double most = Double.parseDouble(m.group(2));
        assertTrue(
                least <= price && price <= most && most < 1.6 * least, least + " to " + most + ", measured " + price);
    }

    /** A wide floor is priced with a plain loop; sizes in metres. */
    @Test
    void wideFloorsTakeAPlainLoop() {
        CommandRun run = CommandRun.of(
                "quote",
                "--size",
                "4m",
                "x",
                "2.2m",
                "--pipe",
                "PX-12",
                "--catalog",
                EXAMPLES.resolve("workshop.yaml").toString());
        assertEquals(0, run.code(), run::err);
        assertTrue(run.out().contains("A kit for 4000 x 2200 mm (8.80 m2): "), run::out);
        assertTrue(run.out().contains("plain loop"), run::out);
        assertTrue(run.out().contains("Pipe 12 x 2"), run::out);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "quote --discount 5 examples/booth-u.yaml | '5' is no share from 0 to 100% with at most two decimals, such as 5%",
                "quote --discount 101% examples/booth-u.yaml | '101%' is no share from 0 to 100%",
                "plan --discount 5% examples/booth-u.yaml | --discount 5 %: it is taken off a quotation: give --quote too",
                "quote | a job file is missing, or --size with --catalog",
                "quote --size 2600 --catalog examples/workshop.yaml | --size '2600': two lengths are wanted, such as 2600x1500",
                "quote --size 26x15 --catalog examples/workshop.yaml | 26 x 15 mm: a side of 400 to 12000 mm",
                "quote --size 6000x5000 --catalog examples/workshop.yaml | at most 25 m2",
                "quote --size 2600x1500 | --catalog FILE is missing",
                "quote --size 2600x1500 --catalog none.yaml | none.yaml: no such file",
                "quote --size 2600x1500 --catalog examples/workshop.yaml --pipe PX-17 | no pipe 'PX-17', the nearest one is PX-16",
                "quote --size 2600x1500 --catalog examples/workshop.yaml --spacing 30 | a length from 100 to 300 mm is wanted",
                "quote --size 2600x1500 --catalog examples/workshop.yaml --spacing 110 --pipe PX-16 | no single-groove plate for pipe PX-16",
                "quote --size 2600x1500 --catalog examples/workshop.yaml --out q.pdf | goes with no job file, --shelf or --out",
                "quote examples/booth-u.yaml --pipe PX-16 | go with --size; a job names its own",
                "quote --out examples/workshop.yaml examples/booth-u.yaml | is no .pdf file; name a new file"
            })
    void badUsageIsOneLine(String args, String said) {
        CommandRun run = CommandRun.of(args.replace("examples/", EXAMPLES + "/").split(" ", -1));
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count(), run::err);
        assertTrue(run.err().contains(said), run::err);
    }
}
