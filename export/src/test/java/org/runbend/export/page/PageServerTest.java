package org.runbend.export.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlTree;
import org.runbend.export.CommandRun;
import org.runbend.export.PlannedExamples;
import org.runbend.export.cli.DrawnLoops;

/** The page's server does what the command line does, with the same files. */
class PageServerTest {
    /** Laid in a moment; without plates that take long to choose. */
    private static final String SMALL = """
            job: Small floor
            order: 1
            catalog: workshop.yaml
            floor:
              outline: [[0, 0], [1200, 0], [1200, 900], [0, 900]]
              port: {at: [0, 450]}
            pipe: {product: PX-16}
            plates: {product: SP-1}
            """;

    @TempDir
    static Path folder;

    private static ServedPage page;

    @BeforeAll
    static void start() throws Exception {
        page = ServedPage.start(folder, "--cold").enter();
    }

    @AfterAll
    static void end() {
        page.close();
    }

    private static String job(String name) throws IOException {
        return Files.readString(page.folder().resolve(name));
    }

    private static Map<String, byte[]> unzipped(byte[] zip) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        return files;
    }

    /** One plan: its events, its files byte by byte those of {@code plan}, and a title with script in it that stays a text. */
    @Test
    void aPlanIsWhatTheCommandWrites() throws Exception {
        String text = SMALL.replaceFirst("job: .*", "job: '<script>alert(1)</script>\" onload=\"x'");
        Files.writeString(page.folder().resolve("small.yaml"), text);
        String plan = page.plan("small.yaml", text);
        eventsTellHowItGoes(page.events(plan));
        Map<String, byte[]> zip = unzipped(page.bytes("api/plans/" + plan + "/kit.zip"));
        Path out = folder.resolve("by-command");
        CommandRun run = CommandRun.of(
                "plan", page.folder().resolve("small.yaml").toString(), "--out", out.toString(), "--quiet");
        assertTrue(run.code() <= 1, run::err);
        Set<String> names = new TreeSet<>();
        try (var files = Files.list(out)) {
            files.forEach(f -> names.add(f.getFileName().toString()));
        }
        assertEquals(names, zip.keySet());
        for (String name : names) {
            assertArrayEquals(Files.readAllBytes(out.resolve(name)), zip.get(name), name);
            assertArrayEquals(zip.get(name), page.bytes("api/plans/" + plan + "/files/" + name), name);
        }
        assertArrayEquals(
                page.bytes("api/plans/" + plan + "/kit.zip"),
                page.bytes("api/plans/" + plan + "/kit.zip"),
                "no clock in it");
        HttpResponse<String> picture = page.get("api/plans/" + plan + "/files/floor.svg");
        assertFalse(picture.body().contains("<script") || picture.body().contains("\" onload"), picture::body);
        String policy = picture.headers().firstValue("Content-Security-Policy").orElse("");
        assertTrue(policy.contains("default-src 'none'") && !policy.contains("script-src"), policy);
    }

    private static void eventsTellHowItGoes(List<String> events) {
        List<String> kinds = events.stream()
                .map(e -> e.substring(0, e.indexOf(' ')))
                .distinct()
                .toList();
        assertEquals("queued", kinds.get(0));
        assertTrue(kinds.indexOf("sketch") > 0 && kinds.indexOf("sketch") < kinds.indexOf("laid"), kinds::toString);
        assertTrue(kinds.containsAll(List.of("step", "laid", "kit", "files", "done")), kinds::toString);
        assertEquals("over {\"words\":\"\"}", events.get(events.size() - 1));
    }

    @Test
    void whatCannotBeLaidIsSaidAtItsLine() throws Exception {
        String text = SMALL.replaceFirst("outline: .*", "outline: [[0, 0], [350, 0], [350, 200], [0, 200]]");
        String events = String.join("\n", page.events(page.plan("small.yaml", text)));
        assertTrue(events.contains("refused {\"event\":\"refused\",\"faults\":[{"), events);
        assertTrue(events.matches("(?s).*\"line\":[1-9].*"), events);
    }

    @Test
    void cancellingFreesAtOnce() throws Exception {
        String plan = page.plan("pottery-pillars.yaml", job("pottery-pillars.yaml"), "alternatives", "true");
        CompletableFuture<List<String>> events = CompletableFuture.supplyAsync(() -> {
            try {
                return page.events(plan);
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        Thread.sleep(1500);
        long start = System.nanoTime();
        assertEquals(200, page.post("api/plans/" + plan + "/cancel", "{}").statusCode());
        List<String> heard = events.get(10, TimeUnit.SECONDS);
        long millis = Duration.ofNanos(System.nanoTime() - start).toMillis();
        assertEquals("over {\"words\":\"Stopped.\"}", heard.get(heard.size() - 1));
        assertTrue(millis < 1000, () -> millis + " ms");
        Thread.sleep(500);
        assertEquals(
                0, page.process().descendants().filter(ProcessHandle::isAlive).count(), "its process is gone");
    }

    /** Without a ledger there are neither orders nor a shelf. */
    @Test
    void withoutALedgerNothingOfItIsThere() throws Exception {
        assertEquals(404, page.get("api/stock").statusCode());
        assertEquals(404, page.post("api/stock", "{\"act\":\"undo\"}").statusCode());
        assertEquals(404, page.post("api/days", "{}").statusCode());
        assertFalse(page.get("api/session").body().contains("\"stock\""));
    }

    @Test
    void draftsLiveOnDiskAndOutliveThePage() throws Exception {
        String text = "job: Half a floor\norder: 7\n";
        page.post(
                "api/read",
                ServedPage.json("name", "half.yaml", "text", text, "draft", "d1234567890ab", "title", "Half a floor"));
        assertTrue(page.get("api/session").body().contains("Half a floor"));
        Path elsewhere = folder.resolve("again");
        Files.createDirectories(elsewhere);
        try (ServedPage again =
                ServedPage.startOn(folder, page.folder(), "--cold").enter()) {
            String draft = again.get("api/draft?id=d1234567890ab").body();
            assertTrue(draft.contains("Half a floor") && draft.contains("half.yaml"), draft);
        }
        try (var drafts = Files.walk(folder.resolve("drafts"))) {
            for (Path path : drafts.filter(Files::isDirectory).skip(1).toList()) {
                assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(path)));
            }
        }
    }

    @Test
    void savingNeverOverwritesWhatSomebodyElseChanged() throws Exception {
        assertEquals(200, save("mine.yaml", "job: one\n", "").statusCode());
        assertEquals(409, save("mine.yaml", "job: two\n", "").statusCode());
        assertEquals(200, save("mine.yaml", "job: two\n", "job: one\n").statusCode());
        Files.writeString(page.folder().resolve("mine.yaml"), "job: by hand\n");
        assertEquals(409, save("mine.yaml", "job: three\n", "job: two\n").statusCode());
        assertEquals("job: by hand\n", job("mine.yaml"));
    }

    private static HttpResponse<String> save(String name, String text, String known) throws Exception {
        return page.post("api/save", ServedPage.json("name", name, "text", text, "known", known));
    }

    static List<Path> examples() throws IOException {
        return PlannedExamples.jobs();
    }

    /** Whatever the page leaves as it is comes back letter by letter, and a job that it changes reads as the command reads it. */
    @ParameterizedTest
    @MethodSource("examples")
    void examplesOpenWithoutLosingAKey(Path example) throws IOException {
        StartFolder start = new StartFolder(PlannedExamples.FOLDER);
        JobSheet sheet = new JobSheet(start, new DrawnLoops());
        String name = PlannedExamples.FOLDER.relativize(example).toString();
        String text = start.open(name);
        Map<String, Object> shown = Json.read(Json.write(sheet.read(name, text)).getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), shown.get("faults"));
        assertTrue(shown.containsKey("floor"));
        @SuppressWarnings("unchecked")
        Map<String, Object> doc = (Map<String, Object>) shown.get("doc");
        assertEquals(YamlTree.of(SourceFile.read(example)), doc);
        assertEquals(text, sheet.edited(name, text, doc));
        doc.put("customer", "Somebody else");
        String changed = sheet.edited(name, text, doc);
        assertEquals(List.of(), sheet.read(name, changed).get("faults"));
    }

    @Test
    void theFileForTheBrowserIsForThisUserAlone() throws IOException {
        Path way = WayIn.write("http://127.0.0.1:1/", "token-word");
        try {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(way)));
            assertTrue(Files.readString(way).contains("method=\"post\" action=\"http://127.0.0.1:1/enter\""));
        } finally {
            Files.delete(way);
        }
    }

    @Test
    void thePageEndsWhenNobodyUsesItAndSaysSo() throws Exception {
        try (ServedPage idle = ServedPage.startOn(folder, page.folder(), "--idle", "1", "--cold")) {
            assertTrue(idle.process().waitFor(20, TimeUnit.SECONDS));
            assertTrue(String.join("\n", idle.rest()).contains("Nobody used the page for 1 s"));
            assertEquals(0, idle.process().exitValue());
        }
    }

    @Test
    void aPlanThatTakesTooLongEnds() throws Exception {
        try (ServedPage hasty = ServedPage.startOn(folder, page.folder(), "--longest", "1", "--cold")
                .enter()) {
            List<String> events = hasty.events(hasty.plan("pottery-pillars.yaml", job("pottery-pillars.yaml")));
            assertEquals(
                    "over {\"words\":\"This plan took longer than a plan may take.\"}", events.get(events.size() - 1));
        }
    }

    @Test
    void whatIsAskedWronglyIsOneLine() {
        CommandRun none = CommandRun.of("page", "no-such-folder");
        assertEquals(2, none.code());
        assertTrue(none.err().startsWith("runbend page: no-such-folder: no such folder"), none::err);
        CommandRun port = CommandRun.of("page", "--port", "70000");
        assertEquals(2, port.code());
        assertTrue(port.err().contains("a port is a number from 1 to 65535"), port::err);
    }
}
