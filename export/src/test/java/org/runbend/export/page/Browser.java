package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementNotInteractableException;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.runbend.export.OutsideReader;

/** Debian's Chromium without a window, driven as a person would: by mouse, by touch, by keys. */
final class Browser implements AutoCloseable {
    /** How long a state is waited for before it is said that it does not come: long, as builds may run beside each other. */
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final ChromeDriver driver;
    private final Path downloads;

    private Browser(ChromeDriver driver, Path downloads) {
        this.driver = driver;
        this.downloads = downloads;
    }

    /** Starts it; the test is skipped with a word where it is not installed. */
    static Browser start(Path folder) throws IOException {
        Path chromium = OutsideReader.program("chromium");
        File driver = OutsideReader.program("chromedriver").toFile();
        Path downloads = Files.createDirectories(folder.resolve("downloads"));
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--window-size=1280,900",
                "--user-data-dir=" + folder.resolve("profile"));
        options.setExperimentalOption(
                "prefs",
                Map.of("download.default_directory", downloads.toString(), "download.prompt_for_download", false));
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(driver)
                .usingAnyFreePort()
                .build();
        return new Browser(new ChromeDriver(service, options), downloads);
    }

    ChromeDriver driver() {
        return driver;
    }

    Path downloads() {
        return downloads;
    }

    void open(String address) {
        driver.get(address);
        waitUntil("return document.documentElement.dataset.ready === 'yes'");
    }

    Object script(String code, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(code, arguments);
    }

    /** Waits until a script says true. */
    void waitUntil(String code, Object... arguments) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!Boolean.TRUE.equals(script(code, arguments))) {
            assertTrue(System.nanoTime() < end, () -> "waited in vain for: " + code + "\n" + words());
            pause(50);
        }
    }

    static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** What the page says in words. */
    String words() {
        return String.valueOf(script("return document.body.innerText"));
    }

    WebElement element(String css) {
        waitUntil("return document.querySelector(arguments[0]) !== null", css);
        return driver.findElement(By.cssSelector(css));
    }

    boolean has(String css) {
        return !driver.findElements(By.cssSelector(css)).isEmpty();
    }

    /** Clicks where the element is on the screen; the page may make it anew just then. */
    void click(String css) {
        steadily(css, () -> {
            WebElement element = element(css);
            script("arguments[0].scrollIntoView({block: 'center'})", element);
            element.click();
        });
    }

    /** Does something with an element; once more where the page made it anew meanwhile. */
    private static void steadily(String what, Runnable step) {
        for (int i = 0; ; i++) {
            try {
                step.run();
                return;
            } catch (StaleElementReferenceException e) {
                assertTrue(i < 5, what);
            }
        }
    }

    /** Clicks until a script says true: a click is lost where the page makes its part anew just then. */
    void clickUntil(String css, String code) {
        for (int i = 0; i < 5; i++) {
            if (has(css)) {
                click(css);
            }
            for (int wait = 0; wait < 100; wait++) {
                if (Boolean.TRUE.equals(script(code))) {
                    return;
                }
                pause(50);
            }
        }
        throw new AssertionError("clicked " + css + " in vain for: " + code + "\n" + words());
    }

    /** The button, or the like, that says this, as soon as it can be pressed. */
    void clickOn(String words) {
        String find = "const e = [...document.querySelectorAll('button, summary, a, label')]"
                + ".find(e => e.innerText.trim() === arguments[0] && e.offsetParent && !e.disabled);";
        for (int i = 0; ; i++) {
            waitUntil(find + " return e !== undefined", words);
            try {
                WebElement element =
                        (WebElement) script(find + " e?.scrollIntoView({block: 'center'}); return e ?? null", words);
                if (element != null) {
                    element.click();
                    return;
                }
            } catch (StaleElementReferenceException e) {
                assertTrue(i < 5, words);
            }
        }
    }

    /** Chooses a file in the dialog that opens; it is made anew when the server has told what there is. */
    void choose(Path file) {
        waitUntil("return document.querySelector('dialog[open] #start-choose') !== null");
        steadily("the dialog does not stay", () -> element("dialog[open] #start-choose")
                .sendKeys(file.toString()));
    }

    /** Takes one of the values of a list. */
    void select(String css, String value) {
        click(css);
        waitUntil(
                "const s = document.querySelector(arguments[0]); if (![...s.options].some((o) => o.value === arguments[1])) return false;"
                        + " s.value = arguments[1]; s.dispatchEvent(new Event('change', {bubbles: true})); return true",
                css,
                value);
    }

    /** Types into a field in place of what stands there, and leaves it; the page may make it anew before the first letter. */
    void type(String css, String text) {
        for (int i = 0; ; i++) {
            waitUntil(
                    "const e = document.querySelector(arguments[0]); if (!e || e.disabled) return false;"
                            + " e.focus(); e.select(); return document.activeElement === e",
                    css);
            try {
                driver.switchTo().activeElement().sendKeys(text + "\t");
                return;
            } catch (StaleElementReferenceException | ElementNotInteractableException e) {
                assertTrue(i < 5, css);
            }
        }
    }

    /** The middle of an element on the screen, in pixels. */
    double[] middle(String css) {
        element(css);
        List<?> place = (List<?>) script(
                "const b = document.querySelector(arguments[0]).getBoundingClientRect();"
                        + " return [b.x + b.width / 2, b.y + b.height / 2]",
                css);
        return new double[] {((Number) place.get(0)).doubleValue(), ((Number) place.get(1)).doubleValue()};
    }

    /** Pixels of the screen for a millimetre of the floor. */
    double scale() {
        return ((Number)
                        script(
                                "const s = document.getElementById('drawing'); return 1 / Math.max(s.viewBox.baseVal.width / s.clientWidth, s.viewBox.baseVal.height / s.clientHeight)"))
                .doubleValue();
    }

    /** A screen of another size, in pixels of CSS. */
    void screen(int width, int height, int scale) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", scale, "mobile", scale == 1));
    }

    void ownScreen() {
        driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    }

    /** Whether the user wants dark pages. */
    void dark(boolean on) {
        List<Map<String, String>> features =
                on ? List.of(Map.of("name", "prefers-color-scheme", "value", "dark")) : List.of();
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", features));
    }

    private void mouse(String type, double x, double y) {
        driver.executeCdpCommand(
                "Input.dispatchMouseEvent",
                Map.of("type", type, "x", x, "y", y, "button", "left", "buttons", 1, "clickCount", 1));
    }

    /** Presses an element of the drawing where it is. */
    void clickAt(String css) {
        double[] at = middle(css);
        mouse("mouseMoved", at[0], at[1]);
        mouse("mousePressed", at[0], at[1]);
        mouse("mouseReleased", at[0], at[1]);
    }

    /** Drags an element of the drawing by millimetres of the floor, y upward. */
    void dragByMouse(String css, double dx, double dy) {
        double[] from = middle(css);
        double scale = scale();
        mouse("mouseMoved", from[0], from[1]);
        mouse("mousePressed", from[0], from[1]);
        for (int i = 1; i <= 5; i++) {
            mouse("mouseMoved", from[0] + dx * scale * i / 5, from[1] - dy * scale * i / 5);
        }
        mouse("mouseReleased", from[0] + dx * scale, from[1] - dy * scale);
    }

    private void touch(String type, List<Map<String, Object>> points) {
        driver.executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", type, "touchPoints", points));
    }

    /** The same with a finger. */
    void dragByTouch(String css, double dx, double dy) {
        double[] from = middle(css);
        double scale = scale();
        touch("touchStart", List.of(Map.of("x", from[0], "y", from[1])));
        for (int i = 1; i <= 5; i++) {
            touch("touchMove", List.of(Map.of("x", from[0] + dx * scale * i / 5, "y", from[1] - dy * scale * i / 5)));
        }
        touch("touchEnd", List.of());
        pause(400); // a touch right after a stroke only ends the stroke
    }

    void tap(String css) {
        script("document.querySelector(arguments[0]).scrollIntoView({block: 'center'})", css);
        double[] at = middle(css);
        touch("touchStart", List.of(Map.of("x", at[0], "y", at[1])));
        touch("touchEnd", List.of());
    }

    void keys(CharSequence... keys) {
        steadily(
                "the focus does not stay anywhere",
                () -> driver.switchTo().activeElement().sendKeys(keys));
    }

    /** The draft of this tab as the server has it on disk. */
    String draftText() {
        waitUntil(
                "return ['Draft kept', 'Saved'].some(w => document.getElementById('kept').textContent.startsWith(w))");
        return String.valueOf(((JavascriptExecutor) driver)
                .executeAsyncScript("const done = arguments[0]; fetch('/api/draft?id=' + location.hash.slice(1))"
                        + ".then(r => r.json()).then(d => done(String(d.text)))"));
    }

    /** Waits for a download. */
    Path downloaded(String name) {
        Path file = downloads.resolve(name);
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!Files.exists(file)) {
            assertTrue(System.nanoTime() < end, () -> name + " was not downloaded");
            pause(50);
        }
        return file;
    }

    /** What axe-core finds that is serious or critical in the state shown: rule, element, what to do. */
    void accessible(String state) throws IOException {
        if (!Boolean.TRUE.equals(script("return 'axe' in window"))) {
            Path axe = OutsideReader.npmFolder("axe-core").resolve("node_modules/axe-core/axe.min.js");
            script(Files.readString(axe) + "; window.axe = axe");
        }
        Object found = ((JavascriptExecutor) driver).executeAsyncScript("""
                        const done = arguments[0];
                        axe.run(document, {resultTypes: ['violations']}).then(r => done(r.violations
                            .filter(v => ['serious', 'critical'].includes(v.impact))
                            .flatMap(v => v.nodes.map(n => v.id + ': ' + n.target.join(' ') + ': ' + n.failureSummary))));
                        """);
        assertEquals(List.of(), found, state);
    }

    /** Errors that the browser told since it was asked last; a refused answer of the server is none. */
    List<String> complaints() {
        List<String> all = new ArrayList<>();
        for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
            if (entry.getLevel().equals(Level.SEVERE) && !entry.getMessage().contains("Failed to load resource")) {
                all.add(entry.getMessage());
            }
        }
        return all;
    }

    /** Keeps a picture of the state, where somebody asks for pictures. */
    void picture(String name) {
        String folder = System.getProperty("page.pictures", "");
        if (!folder.isEmpty()) {
            try {
                Files.createDirectories(Path.of(folder));
                Files.write(Path.of(folder, name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
