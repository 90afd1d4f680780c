package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** Figures of the page, printed; on request alone, as times depend on the machine. */
@EnabledIfSystemProperty(named = "page.bench", matches = "true")
class PageBenchTest {
    private static final int CLIENTS = 8;

    @TempDir
    Path folder;

    /** From click to first loop, to the laid plan and to the alternatives: the camper on a page that stood ready. */
    @Test
    void clickToLoop() throws Exception {
        try (Browser browser = Browser.start(folder);
                ServedPage page = ServedPage.start(folder)) {
            browser.open(page.address());
            browser.click("[data-job='camper.yaml']");
            browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 12");
            Browser.pause(15_000); // the process that stands ready has warmed up
            browser.click("#lay");
            browser.waitUntil("return performance.getEntriesByName('over').length > 0");
            for (String mark : List.of("first-loop", "laid", "files", "alternatives")) {
                Object millis = browser.script(
                        "return Math.round(performance.getEntriesByName(arguments[0])[0].startTime"
                                + " - performance.getEntriesByName('lay')[0].startTime)",
                        mark);
                System.out.println("click to " + mark + ": " + millis + " ms");
            }
        }
    }

    /** Script time of each frame while a corner of a floor of 25 m2 is dragged, with twelve things on it. */
    @Test
    void framesWhileDragging() throws Exception {
        try (Browser browser = Browser.start(folder);
                ServedPage page = ServedPage.start(folder, "--cold")) {
            StringBuilder things = new StringBuilder();
            for (int i = 0; i < 12; i++) {
                things.append(String.format(
                        Locale.ROOT,
                        "    - {name: bolt %d, kind: bolt, point: [%d, %d]}%n",
                        i,
                        500 + 350 * i,
                        800 + 200 * i));
            }
            Files.writeString(
                    page.folder().resolve("wide.yaml"),
                    Files.readString(page.folder().resolve("closet.yaml"))
                            .replaceAll(
                                    "(?s)floor:.*?\\nlayout:",
                                    "floor:\n  outline: [[0, 0], [3000, 0], [3000, 300],"
                                            + " [5000, 300], [5000, 5000], [2600, 5000], [2600, 5300], [0, 5300]]\n  keepOut:\n"
                                            + things + "  port: {at: [0, 700]}\nlayout:"));
            browser.open(page.address());
            browser.click("[data-job='wide.yaml']");
            browser.waitUntil("return document.querySelectorAll('.handle.corner').length === 8");
            // what a frame's script takes: the pointer's listener and the painting that it asks for
            browser.script("""
                    window.frames = [];
                    let sum = 0;
                    const svg = document.getElementById('drawing');
                    svg.addEventListener('pointermove', () => { window.began = performance.now(); }, true);
                    document.addEventListener('pointermove', () => { sum += performance.now() - window.began; });
                    const ask = window.requestAnimationFrame;
                    window.requestAnimationFrame = (paint) => ask((now) => {
                        const start = performance.now();
                        paint(now);
                        window.frames.push(sum + performance.now() - start);
                        sum = 0;
                    });
                    """);
            for (int round = 0; round < 20; round++) {
                browser.dragByMouse("[data-id='corner-4']", round % 2 == 0 ? -400 : 400, round % 2 == 0 ? -300 : 300);
            }
            List<Double> frames = new ArrayList<>();
            ((List<?>) browser.script("return window.frames")).forEach(f -> frames.add(((Number) f).doubleValue()));
            frames.sort(null);
            System.out.printf(
                    Locale.ROOT,
                    "script time a frame while dragging: %d frames, median %.2f ms, 95th percentile %.2f ms%n",
                    frames.size(),
                    frames.get(frames.size() / 2),
                    frames.get(frames.size() * 95 / 100));
        }
    }

    /** Many plans by several clients: memory of the server after a fifth of them and after all, and no answer of another. */
    @Test
    void manyPlans() throws Exception {
        int plans = Integer.getInteger("page.plans", 500);
        try (ServedPage page = ServedPage.start(folder, "--cold").enter()) {
            ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
            TreeMap<Integer, Long> memory = new TreeMap<>();
            for (int part : List.of(plans / 5, plans)) {
                List<Future<Boolean>> all = new ArrayList<>();
                int from = memory.isEmpty() ? 0 : memory.lastKey();
                for (int i = from; i < part; i++) {
                    int number = i;
                    all.add(clients.submit(() -> ownAnswer(page, number)));
                }
                for (Future<Boolean> one : all) {
                    assertTrue(one.get());
                }
                memory.put(part, live(page.process().pid()));
                System.out.println(part + " plans: the server holds " + memory.get(part) + " kB of live heap, "
                        + resident(page.process().pid()) / 1024 + " MB resident");
            }
            clients.shutdown();
            assertEquals(0, page.process().descendants().count());
            assertTrue(memory.get(plans) <= memory.get(plans / 5) * 1.1, memory::toString);
        }
    }

    /** Whether a plan of a floor of its own size tells of that floor in every event and file. */
    private static boolean ownAnswer(ServedPage page, int number)
            throws IOException, InterruptedException, ExecutionException {
        String title = "Floor number " + number + ".";
        String text = """
                job: %s
                order: %d
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [%d, 0], [%d, 750], [0, 750]]
                  port: {at: [0, 375]}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """.formatted(title, number, 900 + number, 900 + number);
        String id = page.planned("floor-" + number + ".yaml", text);
        String kit = page.get("api/plans/" + id + "/files/kit.json").body();
        return kit.contains("\"job\": \"" + title + "\"") && kit.contains("\"width\": " + (900 + number) + ".0");
    }

    /** Heap that is in use after a collection, kB, by the JDK's own tool: resident memory grows until all of the heap was touched. */
    private static long live(long pid) throws IOException {
        jcmd(pid, "GC.run");
        long sum = 0;
        Matcher used = Pattern.compile("generation +total \\d+K, used (\\d+)K").matcher(jcmd(pid, "GC.heap_info"));
        while (used.find()) {
            sum += Long.parseLong(used.group(1));
        }
        return sum;
    }

    private static String jcmd(long pid, String command) throws IOException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(), Long.toString(pid), command)
                .start();
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    /** Resident memory of a process, kB; of Linux. */
    private static long resident(long pid) throws IOException {
        return Files.readAllLines(Path.of("/proc/" + pid + "/status")).stream()
                .filter(l -> l.startsWith("VmRSS:"))
                .mapToLong(l -> Long.parseLong(l.replaceAll("\\D", "")))
                .findFirst()
                .orElseThrow();
    }
}
