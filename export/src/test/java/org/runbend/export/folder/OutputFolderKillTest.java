package org.runbend.export.folder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A run may be stopped at any moment, by a kill or by a full disk: the folder is the old one or the new one. */
class OutputFolderKillTest {
    private static final Swap NO_SWAP = (a, b) -> false;
    private static final int KILLS = 50;
    private static final String[] OLD = {"a.dxf", "gone.svg", "boards/p-01.dxf", "boards/p-02.dxf"};
    private static final String[] NEW = {"a.dxf", "b.csv", "boards/p-01.dxf", "boards/q-01.dxf"};

    @TempDir
    Path disks;

    private Path above;
    private Path kit;
    private int copies;

    @BeforeEach
    void lay() throws IOException {
        above = Files.createDirectory(disks.resolve("disk"));
        kit = above.resolve("kit");
    }

    private static Swap swap(boolean exchange) {
        return exchange ? Swap.ofSystem() : NO_SWAP;
    }

    /** Whether this disk can exchange; a system without it is told, as the tests below would show less there. */
    private void needExchange() throws IOException {
        Path a = Files.createDirectory(disks.resolve("a"));
        Path b = Files.createDirectory(disks.resolve("b"));
        assumeTrue(Swap.ofSystem().swap(a, b), "this file system exchanges no folders");
    }

    private void layForeign() throws IOException {
        Files.writeString(kit.resolve("letter.txt"), "mine");
        Files.createDirectories(kit.resolve("photos").resolve("2 floors"));
        Files.writeString(kit.resolve("photos").resolve("2 floors").resolve("a.txt"), "my photo");
        Files.createDirectories(kit.resolve("boards").resolve("sub"));
        Files.writeString(kit.resolve("boards").resolve("p-01.nc"), "my paths");
        Files.writeString(kit.resolve("boards").resolve("sub").resolve("b.txt"), "deep");
        Files.writeString(disks.resolve("elsewhere.txt"), "far away");
        Files.createSymbolicLink(kit.resolve("link.txt"), disks.resolve("elsewhere.txt"));
    }

    private static Map<String, String> foreign() {
        return Map.of(
                "letter.txt",
                "mine",
                "photos/2 floors/a.txt",
                "my photo",
                "boards/p-01.nc",
                "my paths",
                "boards/sub/b.txt",
                "deep",
                "link.txt",
                "far away");
    }

    private static Map<String, String> texts(String word, boolean foreign, String... names) {
        Map<String, String> texts = new TreeMap<>();
        TrialKit.files(word, names).forEach((n, b) -> texts.put(n, new String(b, UTF_8)));
        texts.putAll(foreign ? foreign() : Map.of());
        return texts;
    }

    /** What the disk would hold if the process were killed before each of the steps of a run; no names: of a look. */
    private List<Path> stopped(Path disk, boolean exchange, String... names) throws IOException {
        List<Path> stops = new ArrayList<>();
        Steps keep = step -> {
            Path copy = disks.resolve("stop-" + copies++);
            TrialKit.copy(disk, copy);
            stops.add(copy);
        };
        OutputFolder folder = new OutputFolder(disk.resolve("kit"), swap(exchange), keep);
        if (names.length > 0) {
            folder.write(TrialKit.files("new", names));
        } else {
            folder.checkOurs();
        }
        return stops;
    }

    /** Old or new and nothing else at once, and after the next look of Runbend no work folder is left either. */
    private void checkStops(List<Path> stops, boolean exchange, List<Map<String, String>> allowed) throws IOException {
        for (Path stop : stops) {
            Map<String, String> seen = TrialKit.seen(stop.resolve("kit"));
            if (exchange) {
                assertTrue(allowed.contains(seen), () -> stop + ": " + seen);
            } else {
                assertTrue(allowed.contains(seen) || !seen.containsKey("kit.json"), () -> stop + ": " + seen);
                allowed.get(0).forEach((name, text) -> assertTrue(isOurs(name) || text.equals(seen.get(name)), name));
            }
            checkHealed(stop, exchange, allowed);
        }
    }

    private static boolean isOurs(String name) {
        return name.equals("kit.json")
                || List.of(OLD).contains(name)
                || List.of(NEW).contains(name);
    }

    /** The clearing up may be killed too, at each of its steps. */
    private void checkHealed(Path stop, boolean exchange, List<Map<String, String>> allowed) throws IOException {
        List<Path> again = stopped(stop, exchange);
        checkClean(stop, allowed);
        for (Path second : again) {
            new OutputFolder(second.resolve("kit"), swap(exchange), Steps.NONE).checkOurs();
            checkClean(second, allowed);
        }
    }

    private static void checkClean(Path disk, List<Map<String, String>> allowed) throws IOException {
        Map<String, String> seen = TrialKit.seen(disk.resolve("kit"));
        assertTrue(allowed.contains(seen), () -> disk + ": " + seen);
        if (Files.exists(disk.resolve("kit"))) {
            assertEquals(List.of("kit"), List.copyOf(Disk.names(disk)));
        } else {
            assertEquals(List.of(), List.copyOf(Disk.names(disk)));
        }
        if (seen.containsKey("link.txt")) {
            assertTrue(Files.isSymbolicLink(disk.resolve("kit").resolve("link.txt")), "the foreign link is a link");
            assertFalse(Files.isSymbolicLink(disk.resolve("kit").resolve("letter.txt")));
            assertFalse(Files.isSymbolicLink(disk.resolve("kit").resolve("photos")));
            assertFalse(Files.isSymbolicLink(disk.resolve("kit").resolve("boards")));
            assertFalse(
                    Files.isSymbolicLink(disk.resolve("kit").resolve("boards").resolve("p-01.nc")));
            assertFalse(
                    Files.isSymbolicLink(disk.resolve("kit").resolve("boards").resolve("sub")));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void newFolderIsWholeOrAbsent(boolean exchange) throws IOException {
        List<Path> stops = stopped(above, exchange, NEW);
        assertTrue(stops.size() > 5, stops::toString);
        checkStops(stops, true, List.of(Map.of(), texts("new", false, NEW)));
    }

    /** Boards in both kits, in the old one alone, in the new one alone, where a shop laid a folder of that name before. */
    @ParameterizedTest
    @CsvSource({
        "true, true, true, true",
        "true, false, true, true",
        "false, true, true, true",
        "false, false, true, false",
        "true, true, true, false",
        "true, true, false, true"
    })
    void oldFolderIsOldOrNewAtEachStep(boolean exchange, boolean foreign, boolean boardsBefore, boolean boardsNow)
            throws IOException {
        if (exchange) {
            needExchange();
        }
        String[] old = boardsBefore ? OLD : new String[] {"a.dxf", "gone.svg"};
        String[] fresh = boardsNow ? NEW : new String[] {"a.dxf", "b.csv"};
        new OutputFolder(kit).write(TrialKit.files("old", old));
        if (foreign) {
            layForeign();
        }
        List<Path> stops = stopped(above, exchange, fresh);
        assertTrue(stops.size() > (foreign && exchange ? 18 : 10), stops::toString);
        checkStops(stops, exchange, List.of(texts("old", foreign, old), texts("new", foreign, fresh)));
        assertEquals(texts("new", foreign, fresh), TrialKit.seen(kit));
        checkClean(above, List.of(texts("new", foreign, fresh)));
        assertEquals(boardsNow || foreign, Files.exists(kit.resolve("boards")), "no empty folder is left");
    }

    /** A disk that is full from some step on: one line, and the folder is whole. */
    @ParameterizedTest
    @CsvSource({"true, true", "true, false", "false, true", "false, false"})
    void fullDiskLosesNothing(boolean exchange, boolean foreign) throws IOException {
        int failures = 0;
        boolean reached = true;
        for (int full = 0; reached; full++) {
            above = Files.createDirectory(disks.resolve("full-" + full));
            kit = above.resolve("kit");
            new OutputFolder(kit).write(TrialKit.files("old", OLD));
            if (foreign) {
                Files.writeString(kit.resolve("letter.txt"), "mine");
                Files.writeString(kit.resolve("boards").resolve("p-01.nc"), "my paths");
            }
            int from = full;
            int[] count = {0};
            Steps failing = step -> {
                if (count[0]++ >= from && !step.startsWith("remove") && !step.startsWith("delete the")) {
                    throw new FileSystemException(step, null, "No space left on device");
                }
            };
            OutputFolder folder = new OutputFolder(kit, swap(exchange), failing);
            boolean failed = false;
            try {
                folder.write(TrialKit.files("new", NEW));
            } catch (OutputRefused e) {
                failed = true;
                assertEquals(kit + ": the output folder cannot be written (No space left on device)", e.getMessage());
            }
            new OutputFolder(kit).checkOurs();
            Map<String, String> seen = TrialKit.seen(kit);
            Map<String, String> old = withLetter(texts("old", false, OLD), foreign);
            Map<String, String> fresh = withLetter(texts("new", false, NEW), foreign);
            assertTrue(seen.equals(fresh) || (failed && seen.equals(old)), () -> from + ": " + seen);
            assertEquals(List.of("kit"), List.copyOf(Disk.names(above)));
            failures += failed ? 1 : 0;
            reached = from < count[0];
        }
        assertTrue(failures >= 6, "steps that failed: " + failures);
    }

    private static Map<String, String> withLetter(Map<String, String> texts, boolean foreign) {
        if (foreign) {
            texts.put("letter.txt", "mine");
            texts.put("boards/p-01.nc", "my paths");
        }
        return texts;
    }

    /** A real limit of the kernel in place of a full disk: no process may write a file of over 40 kB. */
    @Test
    void realFailureWhileWriting() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "this system has no bash");
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Process child = new ProcessBuilder(List.of(
                        "/bin/bash",
                        "-c",
                        "ulimit -f 40; exec \"$@\"",
                        "bash",
                        java(),
                        "-XX:-UsePerfData",
                        "-cp",
                        classPath(),
                        WriterProcess.class.getName(),
                        kit.toString(),
                        "large"))
                .redirectErrorStream(true)
                .start();
        String said = new String(child.getInputStream().readAllBytes(), UTF_8);
        assertEquals(kit + ": the output folder cannot be written (File too large)\n", said);
        assertEquals(texts("old", false, "a.dxf"), TrialKit.seen(kit));
        assertEquals(List.of("kit"), List.copyOf(Disk.names(above)));
    }

    /** Fifty processes that write kit after kit, each killed by the system at a moment that a seed chooses. */
    @Test
    void fiftyKills() throws Exception {
        needExchange();
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf", "gone.svg"));
        layForeign();
        Random random = new Random(20_26);
        int between = 0;
        for (int i = 0; i < KILLS; i++) {
            Process child = new ProcessBuilder(List.of(
                            java(),
                            "-XX:TieredStopAtLevel=1",
                            "-XX:+UseSerialGC",
                            "-cp",
                            classPath(),
                            WriterProcess.class.getName(),
                            kit.toString(),
                            "forever"))
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            assertEquals('.', child.getInputStream().read(), "it has begun");
            TimeUnit.MICROSECONDS.sleep(random.nextInt(30_000));
            child.destroyForcibly().waitFor();
            between += Disk.names(above).size() - 1;
            checkWhole(TrialKit.seen(kit));
        }
        assertTrue(between > KILLS / 5, "kills that came while a kit was written: " + between);
        new OutputFolder(kit).write(TrialKit.files("last", "a.dxf"));
        checkClean(above, List.of(texts("last", true, "a.dxf")));
    }

    /** Where the locale knows ASCII alone, names of others that it cannot spell are kept, byte for byte. */
    @Test
    void namesThatTheLocaleCannotSpell() throws Exception {
        assumeTrue(System.getProperty("sun.jnu.encoding").equals("UTF-8"), "this system spells no such names");
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        for (String name : List.of("caf\u00E9.txt", "\u623F\u9593.pdf", "\uD83D\uDE00")) {
            Files.writeString(kit.resolve(name), "mine");
        }
        ProcessBuilder writer = new ProcessBuilder(
                java(), "-XX:-UsePerfData", "-cp", classPath(), WriterProcess.class.getName(), kit.toString(), "large");
        writer.environment().put("LC_ALL", "C");
        Process child = writer.redirectErrorStream(true).start();
        assertEquals("", new String(child.getInputStream().readAllBytes(), UTF_8));
        assertEquals(
                Set.of("a.dxf", "b.csv", "kit.json", "caf\u00E9.txt", "\u623F\u9593.pdf", "\uD83D\uDE00"),
                Disk.names(kit));
        assertFalse(Files.isSymbolicLink(kit.resolve("caf\u00E9.txt")));
        assertEquals("mine", Files.readString(kit.resolve("\u623F\u9593.pdf")));
        assertEquals(List.of("kit"), List.copyOf(Disk.names(above)));
    }

    private static void checkWhole(Map<String, String> seen) {
        String word = seen.getOrDefault("kit.json", "").replaceFirst("^.*\"job\": \"([^\"]*)\".*$", "$1");
        assertTrue(seen.equals(texts(word, true, WriterProcess.names(word))), seen::toString);
    }

    private static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }

    private static String classPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    }

    /** Two runs at once in one folder: the second does not clear up what the first is working on. */
    @Test
    void livingRunIsLeftInPeace() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Steps meanwhile = step -> {
            if (step.equals("write b.csv")) {
                new OutputFolder(kit).checkOurs();
            }
        };
        new OutputFolder(kit, Swap.ofSystem(), meanwhile).write(TrialKit.files("new", "a.dxf", "b.csv"));
        checkClean(above, List.of(texts("new", false, "a.dxf", "b.csv")));
    }

    /** A folder that only looks like one of ours, or holds what no journal lists, is not deleted. */
    @Test
    void onlyWhatTheJournalListsIsDeleted() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Path strange = Files.createDirectory(above.resolve(".runbend-77-5"));
        Files.writeString(strange.resolve("letter.txt"), "mine");
        Path other = Files.createDirectory(above.resolve(".runbend-1-6"));
        Files.write(other.resolve("journal"), new Journal("other kit", Set.of("a.dxf"), Set.of()).bytes());
        Path ours = Files.createDirectory(above.resolve(".runbend-1-7"));
        Files.write(ours.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        Files.createDirectory(ours.resolve("kit"));
        Files.writeString(ours.resolve("kit").resolve("a.dxf"), "half");
        Files.writeString(ours.resolve("kit").resolve("letter.txt"), "mine");
        new OutputFolder(kit).checkOurs();
        assertEquals(List.of(".runbend-1-6", ".runbend-77-5", "kit"), List.copyOf(Disk.names(above)));
        assertEquals("mine", Files.readString(strange.resolve("letter.txt")));
        assertEquals("mine", Files.readString(kit.resolve("letter.txt")), "what is not ours goes to the folder");
        assertEquals("old a.dxf", Files.readString(kit.resolve("a.dxf")));
    }

    /** A file that only its owner may move: everything is taken back, and files are replaced one by one. */
    @Test
    void foreignFileThatCannotBeMovedIsLeftWhereItIs() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.writeString(kit.resolve("letter.txt"), "mine");
        Files.writeString(kit.resolve("zebra.txt"), "mine too");
        Swap system = Swap.ofSystem();
        Swap stubborn = (a, b) -> !a.endsWith("zebra.txt") && system.swap(a, b);
        new OutputFolder(kit, stubborn, Steps.NONE).write(TrialKit.files("new", "a.dxf"));
        assertEquals("new a.dxf", Files.readString(kit.resolve("a.dxf")));
        assertEquals(List.of("a.dxf", "kit.json", "letter.txt", "zebra.txt"), List.copyOf(Disk.names(kit)));
        assertEquals("mine", Files.readString(kit.resolve("letter.txt")));
        assertFalse(Files.isSymbolicLink(kit.resolve("letter.txt")));
        assertEquals(List.of("kit"), List.copyOf(Disk.names(above)));
    }

    /** Permissions of the folder stay as somebody set them. */
    @Test
    void permissionsStay() throws IOException {
        assumeTrue(kit.getFileSystem().supportedFileAttributeViews().contains("unix"), "this system has no modes");
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.setAttribute(kit, "unix:mode", 02750);
        Object mode = Files.getAttribute(kit, "unix:mode");
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf"));
        assertEquals(mode, Files.getAttribute(kit, "unix:mode"));
    }

    /** Links: to a folder it is followed and stays; one that leads nowhere or round in a circle is refused. */
    @Test
    void links() throws IOException {
        Path real = above.resolve("real");
        new OutputFolder(real).write(TrialKit.files("old", "a.dxf"));
        Files.createSymbolicLink(kit, real);
        new OutputFolder(kit).write(TrialKit.files("new", "b.csv"));
        assertTrue(Files.isSymbolicLink(kit));
        assertEquals(texts("new", false, "b.csv"), TrialKit.seen(real));
        Path nowhere = Files.createSymbolicLink(above.resolve("nowhere"), above.resolve("gone"));
        Path circle = Files.createSymbolicLink(above.resolve("circle"), above.resolve("circle"));
        for (Path link : List.of(nowhere, circle)) {
            OutputFolder folder = new OutputFolder(link);
            assertEquals(
                    link + ": the output folder is a link that leads nowhere; name a folder",
                    assertThrows(OutputRefused.class, folder::checkOurs).getMessage());
        }
        assertEquals(List.of("circle", "kit", "nowhere", "real"), List.copyOf(Disk.names(above)));
    }

    /** A file of ours that became a link: the link is replaced, what it leads to is not. */
    @Test
    void linksInTheFolder() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Path letter = Files.writeString(above.resolve("letter.txt"), "mine");
        Files.delete(kit.resolve("a.dxf"));
        Files.createSymbolicLink(kit.resolve("a.dxf"), letter);
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf"));
        assertEquals("new a.dxf", Files.readString(kit.resolve("a.dxf")));
        assertEquals("mine", Files.readString(letter));
        Files.move(kit.resolve("kit.json"), above.resolve("kit.json"));
        Files.createSymbolicLink(kit.resolve("kit.json"), above.resolve("kit.json"));
        OutputFolder folder = new OutputFolder(kit);
        assertThrows(OutputRefused.class, folder::checkOurs);
    }

    @Test
    void folderInPlaceOfAFile() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.delete(kit.resolve("a.dxf"));
        Files.createDirectories(kit.resolve("a.dxf").resolve("deep"));
        OutputFolder folder = new OutputFolder(kit);
        OutputRefused e = assertThrows(OutputRefused.class, () -> folder.write(TrialKit.files("new", "a.dxf")));
        assertEquals(
                kit.resolve("a.dxf")
                        + ": a folder is where a file of ours belongs; rename it or name another output folder",
                e.getMessage());
        new OutputFolder(kit).write(TrialKit.files("new", "b.csv"));
        assertEquals(List.of("a.dxf", "b.csv", "kit.json"), List.copyOf(Disk.names(kit)));
        assertTrue(Files.isDirectory(kit.resolve("a.dxf").resolve("deep")));
    }
}
