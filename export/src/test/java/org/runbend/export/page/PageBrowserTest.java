package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlTree;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;
import org.runbend.export.OutsideReader;
import org.runbend.export.cli.DrawnLoops;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.read.JobReader;

/** A real browser does the whole job, as a person would who knows neither README nor job files: by what the screen says. */
class PageBrowserTest {
    /** The referee, which is no part of the project and lies beside it where it is at hand. */
    private static final Path REFEREE = Path.of("..", "..", "shared", "tools", "check_kit.py");

    @TempDir
    static Path folder;

    private static ServedPage page;
    private static Browser browser;

    @BeforeAll
    static void start() throws Exception {
        browser = Browser.start(folder);
        page = ServedPage.start(folder, "--cold");
        browser.open(page.address());
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

    /** The page at its start, as in a new tab. */
    private static void fresh() {
        browser.driver().manage().window().setSize(new Dimension(1280, 900));
        browser.driver().get("about:blank");
        browser.open(page.base());
    }

    /** The draft as the command line would read it. */
    private static Job job() throws IOException {
        Path file = page.folder().resolve("as-drafted.yaml");
        Files.writeString(file, browser.draftText());
        return JobReader.read(file, Optional.empty(), new DrawnLoops());
    }

    private static List<Point> outline() throws IOException {
        return job().floor().outline();
    }

    private static List<Point> points(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(new Point(xy[i], xy[i + 1]));
        }
        return points;
    }

    private static void rectangle(String length, String width) {
        browser.clickOn("Rectangle");
        browser.type("#new-rectangle-length", length);
        browser.type("#new-rectangle-width", width);
        browser.click("details.shape[open] button.main");
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 4");
    }

    private static void waitForKit() {
        browser.waitUntil("return document.getElementById('zip') !== null");
        browser.waitUntil("return document.getElementById('stop') === null");
    }

    /** What somebody does who wants a kit: a floor, a thing on it, the loop, the files; then the job file for next time. */
    @Test
    void aFloorIsDrawnByMouseAndItsKitTaken() throws Exception {
        fresh();
        browser.accessible("start");
        browser.picture("start");
        rectangle("1500", "1000");
        browser.dragByMouse("[data-id='corner-2']", -200, 0);
        browser.dragByMouse("[data-id='side-0']", 0, 100);
        assertEquals(points(0, 100, 1500, 100, 1300, 1000, 0, 1000), outline());
        browser.clickOn("On it");
        browser.clickOn("Drain");
        browser.dragByMouse("[data-id='keepOut-0']", -300, -150);
        Point drain = new Point(450, 400); // the middle of the floor is 750, 550
        assertEquals(drain, job().floor().keepOuts().get(0).bare() instanceof Shape.Circle c ? c.centre() : null);
        browser.accessible("a thing is chosen");
        browser.picture("thing");
        browser.clickOn("Kit");
        browser.click("#temperatures");
        browser.clickOn("Lay the loop");
        browser.accessible("at work");
        waitForKit();
        browser.waitUntil("return document.getElementById('heat-shown') !== null");
        browser.accessible("the kit is whole");
        browser.picture("temperatures");
        browser.click("#heat-shown");
        browser.picture("kit");
        browser.script("document.querySelector('.bar-button').focus()");
        assertTrue(browser.has(".pieces polygon.lit"), "the bar's pieces are seen on the floor");
        browser.click("#zip");
        Map<String, Path> kit = unzipped(browser.downloaded("kit.zip"));
        browser.clickOn("Save");
        browser.accessible("save");
        browser.type("#save-name", "drawn-by-mouse");
        browser.click("dialog button.main");
        browser.waitUntil("return document.getElementById('kept').textContent.startsWith('Saved')");
        Path saved = page.folder().resolve("drawn-by-mouse.yaml");
        sameAsByCommand(saved, kit);
        referee(saved, kit);
    }

    private static Map<String, Path> unzipped(Path zip) throws IOException {
        Map<String, Path> files = new TreeMap<>();
        try (ZipFile file = new ZipFile(zip.toFile())) {
            for (ZipEntry entry : file.stream().toList()) {
                Path copy = folder.resolve("taken-" + entry.getName());
                try (InputStream in = file.getInputStream(entry)) {
                    Files.write(copy, in.readAllBytes());
                }
                files.put(entry.getName(), copy);
            }
        }
        return files;
    }

    /** What the page saved the command reads, and plans alike. */
    private static void sameAsByCommand(Path saved, Map<String, Path> kit) throws IOException {
        Path out = folder.resolve("by-command");
        CommandRun run = CommandRun.of("plan", saved.toString(), "--out", out.toString(), "--quiet", "--temperatures");
        assertTrue(run.code() <= 1, run::err);
        assertEquals(Files.readString(out.resolve("kit.json")), Files.readString(kit.get("kit.json")));
        assertEquals(-1, Files.mismatch(out.resolve("drawing.dxf"), kit.get("drawing.dxf")));
        assertEquals(1, JsonIn.read(kit.get("kit.json")).at("loops").list().size());
    }

    private static void referee(Path job, Map<String, Path> kit) {
        if (!Files.exists(REFEREE)) {
            return; // what it knows is held by tests of our own too
        }
        String told = OutsideReader.python(
                REFEREE.toAbsolutePath().normalize(),
                List.of("yaml", "shapely", "ezdxf"),
                job.toString(),
                kit.get("kit.json").toString(),
                kit.get("drawing.dxf").toString());
        assertTrue(told.contains(" 0 failed"), told);
    }

    @Test
    void aFloorIsDrawnByTouch() throws Exception {
        fresh();
        browser.driver().executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
        try {
            browser.tap("details.shape:nth-of-type(2) summary"); // the L
            browser.waitUntil("return document.querySelector('details.shape[open]') !== null");
            browser.tap("details.shape[open] button.main");
            browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 6");
            browser.dragByTouch("[data-id='corner-1']", 0, 150);
            browser.dragByTouch("[data-id='side-4']", 0, 200);
            assertEquals(points(0, 0, 3200, 150, 3200, 1300, 1800, 1300, 1800, 2600, 0, 2600), outline());
            browser.tap("#tab-things");
            browser.tap("#add-pillar");
            browser.dragByTouch("[data-id='keepOut-0']", -500, -300);
            assertEquals("pillar", job().floor().keepOuts().get(0).name());
            browser.tap("#undo");
            Browser.pause(400);
            browser.tap("#undo");
            browser.waitUntil("return document.querySelector('[data-id=\"keepOut-0\"]') === null");
            assertEquals(0, job().floor().keepOuts().size(), browser::draftText);
            browser.tap("#redo");
            browser.waitUntil("return document.querySelector('[data-id=\"keepOut-0\"]') !== null");
            assertEquals(1, job().floor().keepOuts().size());
        } finally {
            browser.driver().executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", false));
        }
    }

    /** From the first key to the loop, and its end before it is done. */
    @Test
    void aFloorIsDrawnByKeysAndItsPlanStopped() throws Exception {
        fresh();
        tabTo("summary", "Rectangle");
        browser.keys(Keys.ENTER);
        tabTo("#new-rectangle-length", "");
        browser.keys(Keys.chord(Keys.CONTROL, "a"), "4.8 m", Keys.ENTER);
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 4");
        tabTo("[data-id='corner-2']", "");
        browser.keys(Keys.ARROW_LEFT, Keys.chord(Keys.SHIFT, Keys.ARROW_UP), Keys.chord(Keys.ALT, Keys.ARROW_RIGHT));
        assertEquals(points(0, 0, 4800, 0, 4791, 1700, 0, 1600), outline());
        tabTo("#tab-floor", "");
        browser.keys(Keys.ARROW_RIGHT);
        tabTo("#add-bolt", "");
        browser.keys(Keys.ENTER);
        browser.waitUntil("return document.querySelector(\"[data-id='keepOut-0']\") !== null");
        tabTo("#thing-x", "");
        browser.keys(Keys.chord(Keys.CONTROL, "a"), "1000", Keys.ENTER);
        assertEquals("bolt", job().floor().keepOuts().get(0).name());
        assertTrue(browser.draftText().contains("point: [1000, 850]"), browser::draftText);
        tabTo("#lay", "");
        browser.keys(Keys.ENTER);
        browser.waitUntil(
                "return document.activeElement.id === 'lay' && document.activeElement.textContent === 'Stop'");
        while (page.process().descendants().noneMatch(ProcessHandle::isAlive)) {
            Browser.pause(10);
        }
        long begun = System.nanoTime();
        browser.keys(Keys.ENTER);
        browser.waitUntil("return document.getElementById('plan-words').textContent === 'Stopped.'");
        while (page.process().descendants().anyMatch(ProcessHandle::isAlive)) {
            assertTrue(Duration.ofNanos(System.nanoTime() - begun).toSeconds() < 30);
            Browser.pause(10);
        }
        long millis = Duration.ofNanos(System.nanoTime() - begun).toMillis();
        assertTrue(millis < 1000, () -> "free after " + millis + " ms");
    }

    /** Goes on by the tab key until something is reached, as who has no mouse must. */
    private static void tabTo(String css, String words) {
        for (int i = 0; i < 120; i++) {
            if (Boolean.TRUE.equals(browser.script(
                    "return document.activeElement.matches(arguments[0]) && document.activeElement.textContent.includes(arguments[1])",
                    css,
                    words))) {
                return;
            }
            browser.keys(Keys.TAB);
        }
        throw new AssertionError("no way by keys to " + css);
    }

    @Test
    void aJobIsOpenedChangedAndSavedWithItsRemarks() throws Exception {
        fresh();
        browser.click("[data-job='camper.yaml']");
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 12");
        browser.clickOn("On it");
        browser.clickOn("seat bolt left (bolt)");
        browser.type("#thing-y", "1100");
        browser.clickOn("Job file");
        browser.waitUntil("return document.getElementById('text').value.includes('[2400, 1100]')");
        browser.accessible("job file");
        browser.picture("text");
        browser.clickOn("Save");
        browser.type("#save-name", "camper-moved.yaml");
        browser.click("dialog button.main");
        browser.waitUntil("return document.getElementById('kept').textContent.startsWith('Saved')");
        String before = Files.readString(page.folder().resolve("camper.yaml"));
        assertEquals(
                before.replace("point: [2400, 1050]", "point: [2400, 1100]"),
                Files.readString(page.folder().resolve("camper-moved.yaml")),
                "one number and nothing else");
    }

    @Test
    void aWrongOutlineIsSaidAtItsCorner() throws Exception {
        fresh();
        rectangle("1500", "1000");
        browser.dragByMouse("[data-id='corner-2']", 100, -1400);
        browser.waitUntil("return !document.getElementById('faults').hidden");
        assertTrue(
                browser.element("#faults").getText().contains("ross"),
                browser.element("#faults").getText());
        assertTrue(browser.has(".handle.corner.wrong") && browser.has(".cross"), "corner and place are marked");
        assertFalse(browser.element("#lay").isEnabled());
        browser.accessible("faults");
        browser.picture("faults");
        browser.click("#faults .line");
        assertTrue((Boolean) browser.script(
                "const t = document.getElementById('text'); return t.value.slice(t.selectionStart, t.selectionEnd).includes('outline')"
                        + " || t.value.slice(t.selectionStart, t.selectionEnd).includes('- [')"));
        browser.click("#undo");
        browser.waitUntil("return document.getElementById('faults').hidden");
        assertEquals(points(0, 0, 1500, 0, 1500, 1000, 0, 1000), outline());
    }

    @Test
    void faultsOfATextStandAtTheirLines() {
        fresh();
        rectangle("1500", "1000");
        browser.clickOn("Job file");
        browser.waitUntil("return document.getElementById('text').value.includes('edge: 75')");
        browser.script(
                "const t = document.getElementById('text'); t.focus(); t.value = t.value.replace('edge: 75', 'egde: 75');"
                        + " t.dispatchEvent(new Event('input'))");
        browser.waitUntil(
                "return document.getElementById('faults').innerText.includes(\"the nearest known key is 'edge'\")");
        browser.script("const t = document.getElementById('text'); t.value = t.value.replace('egde: 75', 'edge: 80');"
                + " t.dispatchEvent(new Event('input'))");
        browser.waitUntil("return document.getElementById('faults').hidden");
        browser.clickOn("Pipe, heat");
        assertEquals("80", browser.element("#wish-layout-edge").getDomProperty("value"));
        browser.type("#wish-layout-edge", "90");
        assertTrue(browser.draftText().contains("edge: 90"), browser::draftText);
    }

    @Test
    void tabsAreApartAndAReloadLosesNothing() throws Exception {
        fresh();
        rectangle("1500", "1000");
        String first = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(WindowType.TAB);
        browser.open(page.base());
        rectangle("1800", "900");
        browser.dragByMouse("[data-id='corner-1']", 100, 0);
        assertEquals(1900, outline().get(1).x());
        browser.driver().navigate().refresh();
        browser.waitUntil("return document.documentElement.dataset.ready === 'yes'");
        assertEquals(1900, outline().get(1).x());
        browser.driver().close();
        browser.driver().switchTo().window(first);
        assertEquals(1500, outline().get(1).x());
        browser.driver().navigate().refresh();
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 4");
        assertEquals(1500, outline().get(1).x());
    }

    @Test
    void aSmallScreenZoomAndTheDarkAreNoHindrance() throws Exception {
        fresh();
        browser.screen(390, 844, 1);
        try {
            rectangle("1500", "1000");
            for (String tab : List.of("On it", "Pipe, heat", "Kit", "Job file", "Floor")) {
                browser.clickOn(tab);
                nothingSticksOut(tab);
            }
            browser.accessible("390 pixels");
            browser.picture("narrow");
            browser.screen(640, 450, 2); // 1280 x 900 at 200 %
            nothingSticksOut("zoom of 200 %");
            browser.accessible("zoom");
            browser.picture("zoom");
        } finally {
            browser.ownScreen();
        }
        browser.dark(true);
        try {
            for (String tab : List.of("On it", "Pipe, heat", "Job file", "Kit")) {
                browser.clickOn(tab);
                browser.accessible("dark, " + tab);
            }
            browser.picture("dark");
        } finally {
            browser.dark(false);
        }
    }

    /** A run of the loop is taken elsewhere by mouse and by keys: pipe lies along there, and all else is laid again. */
    @Test
    void aRunIsMovedAndTheRestLaidAgain() throws Exception {
        fresh();
        browser.click("[data-job='closet.yaml']");
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 4");
        browser.clickOn("Lay the loop");
        waitUntilLaidAgain();
        browser.clickOn("Move a run");
        browser.element("[data-id='run-1']");
        browser.accessible("runs can be moved");
        browser.picture("move-run");
        String unmoved = browser.draftText();
        touching(() -> browser.dragByTouch("[data-id='run-1']", 0, -30));
        assertTrue(browser.draftText().contains("mustRun"), browser::draftText);
        browser.click("#undo");
        assertEquals(unmoved, browser.draftText());
        waitUntilLaidAgain();
        browser.element("[data-id='run-1']");
        browser.dragByMouse("[data-id='run-1']", 0, 20);
        String text = browser.draftText();
        assertTrue(text.contains("mustRun"), text);
        waitUntilLaidAgain();
        browser.picture("moved-run");
        assertTrue(runsAlong(), "pipe lies along the line");
        browser.script("document.querySelector(\"[data-id='rule-0']\").focus()");
        browser.keys(Keys.ARROW_DOWN);
        browser.waitUntil("return document.getElementById('choose-rule-0') !== null");
        double before = line(text).get(0).y();
        assertEquals(before - 10, line(browser.draftText()).get(0).y(), 0.01);
        assertEquals("rule-0", browser.script("return document.activeElement.dataset.id ?? ''"));
        waitUntilLaidAgain();
        assertTrue(runsAlong(), "pipe lies along the line");
        browser.clickUntil("#drop-rule-0", "return document.getElementById('drop-rule-0') === null");
        assertFalse(browser.draftText().contains("mustRun"), browser::draftText);
    }

    private static void waitUntilLaidAgain() {
        browser.waitUntil(
                "return document.querySelector('.plan.old') === null && document.getElementById('zip') !== null");
    }

    private static List<Point> line(String job) {
        Matcher line = Pattern.compile("mustRun:\\s*\\[\\[([-\\d.]+), ([-\\d.]+)\\], \\[([-\\d.]+), ([-\\d.]+)\\]\\]")
                .matcher(job);
        assertTrue(line.find(), job);
        double[] xy = new double[4];
        for (int i = 0; i < xy.length; i++) {
            xy[i] = Double.parseDouble(line.group(i + 1));
        }
        return points(xy);
    }

    /** Whether a run of the kit on the screen covers the line that the job asks for; read from its numbers alone. */
    private static boolean runsAlong() throws IOException {
        List<Point> line = line(browser.draftText());
        Object kit = ((JavascriptExecutor) browser.driver())
                .executeAsyncScript(
                        "const done = arguments[0]; fetch(document.getElementById('zip').getAttribute('href')"
                                + ".replace('kit.zip', 'files/kit.json')).then(r => r.text()).then(done)");
        Path file = Files.writeString(folder.resolve("moved.json"), String.valueOf(kit));
        return JsonIn.read(file).at("loops").list().get(0).at("elements").list().stream()
                .filter(e -> e.at("kind").text().equals("run"))
                .anyMatch(e -> covers(e, line));
    }

    private static boolean covers(JsonIn run, List<Point> line) {
        List<JsonIn> from = run.at("from").list();
        List<JsonIn> to = run.at("to").list();
        double low = Math.min(from.get(0).number(), to.get(0).number());
        double high = Math.max(from.get(0).number(), to.get(0).number());
        boolean level = Math.abs(from.get(1).number() - line.get(0).y()) < 0.6
                && Math.abs(to.get(1).number() - line.get(0).y()) < 0.6;
        double left = Math.min(line.get(0).x(), line.get(1).x());
        double right = Math.max(line.get(0).x(), line.get(1).x());
        return level && low <= left + 0.6 && high >= right - 0.6;
    }

    /** A side is curved by mouse, by keys and by its number; the reader of jobs finds the same arc. */
    @Test
    void aSideIsCurved() throws Exception {
        fresh();
        rectangle("1500", "1000");
        browser.clickAt("[data-id='side-1']");
        browser.element("[data-id='round-1']");
        browser.dragByMouse("[data-id='round-1']", 200, 0);
        assertTrue(browser.draftText().contains("{arc: [[1700, 500], [1500, 1000]]}"), browser::draftText);
        assertEquals(1700, widest(), 0.5);
        browser.accessible("a curved side");
        browser.picture("curved");
        browser.script("document.querySelector(\"[data-id='round-1']\").focus()");
        browser.keys(Keys.ARROW_LEFT);
        assertTrue(browser.draftText().contains("{arc: [[1690, 500], [1500, 1000]]}"), browser::draftText);
        browser.dragByMouse("[data-id='corner-2']", 0, 200); // the curve goes along with its corner
        assertEquals(1500 + 190 * 1.2, widest(), 0.6);
        browser.type("#side-rise", "-150");
        assertTrue(browser.draftText().contains("{arc: [[1350, 600], [1500, 1200]]}"), browser::draftText);
        browser.click("#undo");
        touching(() -> {
            browser.tap("[data-id='side-0']");
            browser.element("[data-id='round-0']");
            Browser.pause(400); // a touch right after a tap would be a double tap
            browser.dragByTouch("[data-id='round-0']", 0, -120);
        });
        assertTrue(browser.draftText().contains("{arc: [[750, -120], [1500, 0]]}"), browser::draftText);
        browser.click("#undo");
        browser.clickAt("[data-id='side-1']");
        browser.type("#side-rise", "0");
        assertFalse(browser.draftText().contains("arc"), browser::draftText);
        assertEquals(points(0, 0, 1500, 0, 1500, 1200, 0, 1000), outline());
    }

    private static void touching(Runnable hand) {
        browser.driver().executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
        try {
            hand.run();
        } finally {
            browser.driver().executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", false));
        }
    }

    private static double widest() throws IOException {
        return outline().stream().mapToDouble(Point::x).max().orElseThrow();
    }

    private static void nothingSticksOut(String state) {
        assertTrue(
                (Boolean) browser.script(
                        "return document.scrollingElement.scrollWidth <= document.scrollingElement.clientWidth"),
                state);
    }

    /** A tape read wrongly is named, as triangles of whole sides say by Pythagoras. */
    @Test
    void tapeMeasuresMakeAFloorAndTheWrongOneIsShown() throws Exception {
        fresh();
        browser.clickOn("From tape measures");
        browser.type("#new-tape-corners", "5");
        browser.click("details.shape[open] button.main");
        browser.waitUntil("return document.getElementById('tape-9') !== null");
        // a house seen from the side: triangles of 5, 12, 13 and 4, 3, 5, and the ridge from a corner of the floor
        List<String> lengths =
                List.of("2400", "1000", "1500", "1500", "1000", "2600", "2247.2", "2247.2", "2600", "2400");
        for (int i = 0; i < lengths.size(); i++) {
            browser.type("#tape-" + i, lengths.get(i));
        }
        browser.waitUntil("return document.getElementById('faults').hidden");
        assertEquals(points(0, 0, 2400, 0, 2400, 1000, 1200, 1900, 0, 1000), rounded(outline()));
        browser.type("#tape-8", "2750");
        browser.waitUntil("return document.getElementById('tape-words').textContent === 'Take again: B to E.'");
        assertTrue(browser.words().contains("B to E (take it again)"), browser::words);
        browser.accessible("tape");
        browser.picture("tape");
        browser.type("#tape-8", "2600");
        browser.waitUntil("return document.getElementById('tape-words').textContent.startsWith('Type what')"
                + " && document.getElementById('faults').hidden");
        browser.click("#tape-to-outline");
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 5");
        assertTrue(browser.draftText().contains("outline:"), browser::draftText);
    }

    private static List<Point> rounded(List<Point> points) {
        return points.stream()
                .map(p -> new Point(Math.rint(p.x()) + 0.0, Math.rint(p.y()) + 0.0))
                .toList();
    }

    /** A drawing with two closed lines: which one is the floor is asked; one that is no drawing is said to be none. */
    @Test
    void aDrawingBeginsAJob() throws Exception {
        Path drawing = folder.resolve("cabins.dxf");
        Files.writeString(
                drawing,
                "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n"
                        + polyline(0, 0, 2600, 0, 2600, 1500, 0, 1500)
                        + polyline(4000, 0, 6400, 0, 6400, 1400, 4000, 1400) + "0\nENDSEC\n0\nEOF\n");
        fresh();
        browser.choose(drawing);
        browser.waitUntil("return document.querySelectorAll('[data-contour]').length === 2");
        browser.accessible("contours");
        browser.picture("contours");
        browser.click("[data-contour='2']");
        browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 4");
        assertEquals(points(4000, 0, 6400, 0, 6400, 1400, 4000, 1400), outline());
        assertTrue(browser.draftText().contains("# A job begun from the drawing"), browser::draftText);
        Files.writeString(folder.resolve("none.dxf"), "no drawing");
        browser.clickOn("Open");
        browser.choose(folder.resolve("none.dxf"));
        browser.waitUntil("return document.getElementById('notice').innerText.includes('none.dxf')");
    }

    private static String polyline(int... xy) {
        StringBuilder text = new StringBuilder("0\nPOLYLINE\n8\n0\n66\n1\n70\n1\n");
        for (int i = 0; i < xy.length; i += 2) {
            text.append("0\nVERTEX\n8\n0\n10\n")
                    .append(xy[i])
                    .append("\n20\n")
                    .append(xy[i + 1])
                    .append('\n');
        }
        return text.append("0\nSEQEND\n").toString();
    }

    /** The same draft in two tabs would be written by both: the second goes on with a copy. */
    @Test
    void theSameDraftInTwoTabsBecomesTwo() throws Exception {
        fresh();
        rectangle("1500", "1000");
        browser.draftText();
        String address = browser.driver().getCurrentUrl();
        String first = browser.driver().getWindowHandle();
        browser.driver().switchTo().newWindow(WindowType.TAB);
        browser.open(address);
        browser.waitUntil("return document.getElementById('notice').innerText.includes('open in another tab')");
        assertFalse(browser.driver().getCurrentUrl().equals(address));
        browser.dragByMouse("[data-id='corner-1']", 100, 0);
        assertEquals(1600, outline().get(1).x());
        browser.driver().close();
        browser.driver().switchTo().window(first);
        assertEquals(1500, outline().get(1).x());
    }

    /** A job that somebody sent: its title is a text, and it reads no file outside the folder. */
    @Test
    void aJobThatSomebodySentDoesNoHarm() throws Exception {
        Path sent = folder.resolve("sent.yaml");
        Files.writeString(
                sent,
                Files.readString(page.folder().resolve("camper.yaml"))
                        .replaceFirst("job: .*", "job: '<img src=x onerror=\"document.title=1;window.hacked=1\">'")
                        .replace("name: shower drain", "name: '<script>window.hacked=1</script>'")
                        .replace("catalog: workshop.yaml", "catalog: ../../../../etc/passwd"));
        fresh();
        browser.choose(sent);
        browser.waitUntil("return document.getElementById('faults').innerText.includes('outside the folder')");
        assertFalse(browser.words().contains("root:"));
        browser.clickOn("On it");
        assertTrue(browser.words().contains("<script>window.hacked=1</script>"));
        assertEquals(null, browser.script("return window.hacked ?? null"));
        Files.write(folder.resolve("odd.yaml"), new byte[] {'P', 'K', 3, 4, (byte) 0xff, 0});
        browser.clickOn("Open");
        browser.choose(folder.resolve("odd.yaml"));
        browser.waitUntil("return document.getElementById('notice').innerText.includes('is no text')");
    }

    /** The tree that the page keeps of every example is what the library's reader finds in the file. */
    @Test
    void examplesAreShownAsTheyAre() throws Exception {
        fresh();
        for (String name : List.of("booth-u.yaml", "pottery-pillars.yaml", "cabin-boat.yaml")) {
            browser.driver().get("about:blank");
            browser.open(page.base());
            browser.click("[data-job='" + name + "']");
            Path file = page.folder().resolve(name);
            Job job = JobReader.read(file, Optional.empty(), new DrawnLoops());
            browser.waitUntil("return document.getElementById('title').value === arguments[0]", job.title());
            assertEquals(Files.readString(file), browser.draftText());
            Map<String, Object> tree = YamlTree.of(SourceFile.read(file));
            assertTrue(tree.containsKey("floor"));
            assertEquals(
                    (long) job.floor().keepOuts().size(),
                    browser.script("return document.querySelectorAll('.thing.keepOut').length"));
        }
    }
}
