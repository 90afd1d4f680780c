package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.interactions.Actions;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** A day's work with orders and shelf in a real browser; what it did is read back by the command line. */
class PageStockTest {
    @TempDir
    static Path folder;

    private static String ledger;
    private static ServedPage page;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        browser = Browser.start(folder);
        ledger = folder.resolve("shelf.db").toString();
        stock("init");
        stock("receive", "coil", "PX-10", "50m", "3");
        stock("receive", "opened", "PX-10", "14 m", "--id", "C70");
        stock("receive", "plate", "SP-10", "1000", "11");
        page = ServedPage.start(folder, "--cold", "--stock", ledger);
        Path monday = Files.createDirectories(page.folder().resolve("monday"));
        String closet = Files.readString(page.folder().resolve("closet.yaml"))
                .replace("catalog: workshop.yaml", "catalog: ../workshop.yaml");
        for (String order : List.of("M-1", "M-2")) {
            Files.writeString(monday.resolve(order + ".yaml"), closet.replaceFirst("order: .*", "order: " + order));
        }
        Files.writeString(
                monday.resolve("M-3.yaml"),
                closet.replaceFirst("order: .*", "order: M-3").replace("spacing: 100", "spacing: 20"));
        keptByAnotherPlan(closet);
        browser.open(page.address());
    }

    /** The order of the closet has stock already, by an earlier plan of it. */
    private static void keptByAnotherPlan(String closet) throws IOException {
        Path early = Files.writeString(
                page.folder().resolve("monday").resolve("early.txt"),
                closet.replaceFirst("job: .*", "job: as it was last week"));
        String kit = folder.resolve("early").toString();
        CommandRun plan = CommandRun.of("plan", early.toString(), "--out", kit, "--stock", ledger, "--quiet");
        assertEquals(0, plan.code(), plan::err);
        stock("reserve", kit);
    }

    private static void pressTwice(String css) {
        new Actions(browser.driver()).doubleClick(browser.element(css)).perform();
    }

    @AfterAll
    static void end() {
        if (browser != null) {
            browser.close();
        }
        if (page != null) {
            page.close();
        }
    }

    @AfterEach
    void nothingWentWrongQuietly() {
        assertEquals(List.of(), browser.complaints());
    }

    private static String stock(String... words) {
        List<String> all = new ArrayList<>(List.of("stock"));
        all.addAll(List.of(words));
        all.addAll(List.of("--stock", ledger));
        CommandRun run = CommandRun.of(all.toArray(String[]::new));
        assertEquals(0, run.code(), run::err);
        return run.out();
    }

    private static JsonIn json(String... words) throws IOException {
        Path file = folder.resolve("out.json");
        Files.writeString(file, stock(words));
        return JsonIn.read(file);
    }

    private static String state(String order) throws IOException {
        return json("orders", "--json").at("orders").list().stream()
                .filter(o -> o.at("order").text().equals(order))
                .findFirst()
                .map(o -> o.at("state").text())
                .orElse("");
    }

    private static long movements(String kind) {
        return stock("history", "--csv")
                .lines()
                .map(l -> l.split(",", -1))
                .filter(c -> c[3].equals(kind))
                .map(c -> c[0])
                .distinct()
                .count();
    }

    private static void waitForState(String order, String state) {
        browser.waitUntil(
                "return document.querySelector(`[data-order='${arguments[0]}'][data-state='${arguments[1]}']`) !== null",
                order,
                state);
    }

    private static void waitForWord(String words) {
        browser.waitUntil("return document.getElementById('shop-came').innerText.includes(arguments[0])", words);
    }

    /** A kit is laid, kept stock for, cut, taken back and cut again; then a folder of orders is cut together. */
    @Test
    void aDaysWorkIsDone() throws Exception {
        browser.driver().manage().window().setSize(new Dimension(1280, 900));
        browser.click("[data-job='closet.yaml']");
        browser.clickOn("Lay the loop");
        browser.waitUntil("return document.querySelector('#keep-stock:not(:disabled)') !== null");
        nothingMovesUnderTheHand("keep-stock");
        browser.accessible("stock of a plan");
        String order = JsonIn.read(kit()).at("order").text();
        String coil = JsonIn.read(kit()).at("coils").list().get(0).at("id").text();
        assertEquals("C70", coil, "the page plans from the shelf");
        browser.script("document.getElementById('keep-stock').scrollIntoView({block: 'center'})");
        pressTwice("#keep-stock");
        browser.waitUntil(
                "return document.querySelector('#keep-stock:not(:disabled)')?.innerText.startsWith('Give that back')");
        assertEquals(1, movements("reserve"), "what is kept for another plan is not given back unasked");
        browser.accessible("asked");
        browser.picture("asked");
        browser.script("document.getElementById('keep-stock').scrollIntoView({block: 'center'})");
        pressTwice("#keep-stock");
        browser.waitUntil("return document.getElementById('kept-stock').innerText.includes('stock is kept for it')");
        assertEquals(2, movements("reserve"), "pressed twice, done once");
        assertEquals("confirmed", state(order));
        Path kept = page.folder().resolve("kit-" + order);
        assertTrue(Files.exists(kept.resolve("pick-list.pdf")), "its papers can be cut by tomorrow");
        browser.picture("kept-stock");

        browser.click("#see-shop");
        waitForState(order, "confirmed");
        browser.accessible("orders and shelf");
        browser.picture("shop");
        browser.click("#confirm-" + order);
        waitForState(order, "cut");
        waitForWord("write ");
        browser.accessible("what came on the shelf");
        browser.picture("cut");
        List<String> ids = json("list", "--json").at("stock").list().stream()
                .map(r -> r.at("id").text())
                .filter(id -> !id.isEmpty())
                .toList();
        String said = browser.element("#shop-came").getText();
        assertTrue(ids.stream().anyMatch(id -> said.contains("write " + id + " on it")), said + ids);

        browser.click("#undo-2");
        waitForWord("Nothing was changed: movement 2 (receive) cannot be undone");
        browser.picture("refused");
        long cut = movements("confirm");
        browser.click("[aria-label$='confirm " + order + "']");
        waitForState(order, "confirmed");
        assertEquals("confirmed", state(order), "as if it had not been cut");
        browser.click("#confirm-" + order);
        waitForState(order, "cut");
        assertEquals(cut + 1, movements("confirm"));
        browser.click("#pack-" + order);
        waitForState(order, "packed");
        browser.click("#send-" + order);
        browser.waitUntil("return document.getElementById('orders-done') !== null");
        assertEquals("sent", state(order));

        assertEquals("monday-day", browser.element("#day-name").getDomProperty("value"));
        browser.click("#day-begin");
        browser.waitUntil("return document.getElementById('day-result') !== null");
        waitForState("monday-day", "confirmed");
        String result = browser.element("#day-result").getText();
        assertTrue(result.contains("2 orders, 1 different floors") && result.contains("1 left out"), result);
        assertTrue(result.contains("M-3.yaml"), result);
        assertFalse(result.contains(folder.toString()), "no path of the machine");
        browser.accessible("a day");
        browser.picture("day");
        String own = browser.element("[data-order='M-1']").getText();
        assertTrue(own.contains("cut with day monday-day"), own);
        assertFalse(browser.has("[data-order='M-1'] button"), "it goes with its day");
        JsonIn day = JsonIn.read(page.folder().resolve("monday-day").resolve("day.json"));
        assertEquals(2, day.at("orders").list().size());
        browser.click("#confirm-monday-day");
        waitForWord("Nothing was changed: short of");
        whatWasBoughtComes();
        browser.click("#confirm-monday-day");
        waitForState("monday-day", "cut");
        assertEquals("cut", state("monday-day"));
        assertFalse(browser.has("[data-order='monday-day'] button"), "its orders go on one by one");
        aPieceWasCutWrong();
        browser.click("#pack-M-1");
        waitForState("M-1", "packed");
        theShelfIsCounted();
        assertTrue(stock("audit").contains("add up"));
        dark();
        narrow();
    }

    /** Five plates by a form, once it has been filled in as it should be; and a note with what else there is. */
    private static void whatWasBoughtComes() throws IOException {
        browser.click("#came-part > summary");
        browser.select("#came-kind", "plate");
        browser.waitUntil("return document.getElementById('came-length').placeholder === '1000 mm'");
        browser.type("#came-product", "SP-10");
        browser.type("#came-length", "1 m");
        browser.type("#came-quantity", "five");
        browser.click("#came-do");
        waitForWord("Nothing was changed: quantity 'five' is no whole number");
        browser.accessible("goods come in");
        browser.picture("goods");
        browser.type("#came-quantity", "5");
        browser.click("#came-do");
        waitForWord("On the shelf (movement");
        assertEquals("", browser.element("#came-product").getDomProperty("value"), "ready for the next");
        Path note = Files.writeString(
                folder.resolve("note of today.csv"),
                "kind;product;length;quantity;batch\nopened;PX-10;19.5 m;;24-7\nitem;GL-5;;300;\n");
        long before = movements("receive");
        browser.element("#came-note").sendKeys(note.toString());
        waitForWord("opened coil");
        browser.element("#came-note").sendKeys(note.toString());
        waitForWord("nothing was changed");
        assertEquals(before + 1, movements("receive"), "a note that is read twice came once");
    }

    private static void aPieceWasCutWrong() throws IOException {
        List<JsonIn> cuts = json("orders", "M-1", "--json").at("cuts").list();
        JsonIn wrong = cuts.stream()
                .filter(c -> c.at("product").text().equals("SP-10"))
                .findFirst()
                .orElseThrow();
        browser.click("#spoil-M-1-part > summary");
        browser.select("#spoil-M-1-cut", wrong.at("cut").text());
        browser.type("#spoil-M-1-rest", "30");
        browser.accessible("a piece was cut wrong");
        browser.picture("spoiled");
        browser.click("#spoil-M-1-do");
        waitForWord("for " + wrong.at("goesTo").text() + " from");
        assertEquals(1, movements("spoil"));
        List<JsonIn> now = json("orders", "M-1", "--json").at("cuts").list();
        assertEquals(cuts.size(), now.size(), "as many pieces as before");
        assertFalse(
                now.stream()
                        .anyMatch(c -> c.at("cut").text().equals(wrong.at("cut").text())),
                "another piece");
    }

    private static void theShelfIsCounted() throws IOException {
        browser.click("#count-part > summary");
        browser.select("#count-what", "item GL-5");
        browser.waitUntil("return document.getElementById('count-amount').placeholder === '300 in the ledger'");
        browser.type("#count-amount", "288");
        browser.click("#count-do");
        waitForWord("300 in the ledger, 288 counted");
        assertTrue(stock("list", "--csv").contains("item,,GL-5,0,288,288,"), () -> stock("list", "--csv"));
    }

    /** While other ways of laying come in below, a button that somebody is about to press stays itself and where it is. */
    private static void nothingMovesUnderTheHand(String id) {
        browser.script(
                "window.aimed = document.getElementById(arguments[0]); aimed.scrollIntoView({block: 'center'});"
                        + " window.aimedAt = aimed.getBoundingClientRect().top",
                id);
        browser.waitUntil("return performance.getEntriesByName('over').length > 0");
        assertEquals(
                true, browser.script("return aimed === document.getElementById(arguments[0])", id), "the same button");
        double moved = ((Number) browser.script("return aimed.getBoundingClientRect().top - aimedAt")).doubleValue();
        assertEquals(0, moved, 1, "pixels");
    }

    private static Path kit() throws Exception {
        Object id = browser.script("return document.getElementById('zip').getAttribute('href').split('/')[3]");
        Path file = folder.resolve("kit-of-page.json");
        Object text = ((JavascriptExecutor) browser.driver())
                .executeAsyncScript(
                        "const done = arguments[1]; fetch(`/api/plans/${arguments[0]}/files/kit.json`).then(r => r.text()).then(done)",
                        id);
        Files.writeString(file, String.valueOf(text));
        return file;
    }

    private static void dark() throws IOException {
        browser.dark(true);
        try {
            browser.accessible("orders and shelf in the dark");
            browser.picture("shop-dark");
        } finally {
            browser.dark(false);
        }
    }

    private static void narrow() throws IOException {
        browser.screen(390, 844, 1);
        try {
            assertTrue(
                    (Boolean) browser.script(
                            "return document.scrollingElement.scrollWidth <= document.scrollingElement.clientWidth"),
                    "nothing sticks out");
            browser.accessible("orders and shelf at 390 pixels");
            browser.picture("shop-narrow");
        } finally {
            browser.ownScreen();
        }
    }
}
