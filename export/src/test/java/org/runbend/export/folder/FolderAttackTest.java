package org.runbend.export.folder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.export.CommandRun;
import org.runbend.export.cli.FaultTable;

/** Folders that a customer sends may hold what looks like a work folder or a kit of ours: nothing outside is touched. */
class FolderAttackTest {
    @TempDir
    Path disk;

    private Path sent;
    private Path kit;
    private Path letter;
    private Path trap;

    @BeforeEach
    void lay() throws IOException {
        sent = Files.createDirectory(disk.resolve("sent"));
        kit = sent.resolve("kit");
        letter = Files.writeString(disk.resolve("letter.txt"), "mine");
        trap = Files.createDirectory(sent.resolve(".runbend-1-7"));
        Files.createDirectory(trap.resolve("kit"));
    }

    private static String said(Path folder) {
        try {
            return String.join("\n", new OutputFolder(folder).checkOurs());
        } catch (OutputRefused e) {
            return e.getMessage();
        }
    }

    private void checkUnharmed() throws IOException {
        assertEquals("mine", Files.readString(letter));
        assertFalse(Files.isSymbolicLink(letter));
        assertTrue(List.of("letter.txt", "sent").containsAll(Disk.names(disk)), () -> "new beside: " + disk);
    }

    /** The names of a journal lead out of the folder: with the folder's files as bait, and while files are replaced. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "../../letter.txt",
                "ABSOLUTE",
                "x/../../../letter.txt",
                "..",
                ".",
                ".bashrc",
                "a\\b",
                "C:x",
                "boards/../x",
                "boards/.x",
                "photos/x"
            })
    void namesThatLeadElsewhere(String name) throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        String bad = name.equals("ABSOLUTE") ? letter.toString() : name;
        Files.writeString(trap.resolve("in-place"), "");
        Files.writeString(trap.resolve("kit").resolve("letter.txt"), "theirs");
        for (Journal journal : List.of(
                new Journal("kit", Set.of("a.dxf"), Set.of(bad)), new Journal("kit", Set.of(bad), Set.of("a.dxf")))) {
            Files.deleteIfExists(trap.resolve("journal"));
            Files.write(trap.resolve("journal"), journal.bytes());
            said(kit);
            checkUnharmed();
            assertEquals("old a.dxf", Files.readString(kit.resolve("a.dxf")));
            assertTrue(Files.exists(trap.resolve("kit").resolve("letter.txt")), "left alone");
        }
    }

    /** A link in the place of the journal, of the folder in it or of one of its files. */
    @Test
    void links() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Path far = Files.write(disk.resolve("far"), new Journal("kit", Set.of("a.dxf"), Set.of("letter.txt")).bytes());
        Files.createSymbolicLink(trap.resolve("journal"), far);
        said(kit);
        assertTrue(Files.exists(far), "a journal that is a link is none");
        Files.delete(trap.resolve("journal"));
        Files.move(far, trap.resolve("journal"));
        Files.delete(trap.resolve("kit"));
        Files.createSymbolicLink(trap.resolve("kit"), disk);
        said(kit);
        checkUnharmed();
    }

    /** While files are replaced, a link is not put in the place of a file: it could lead to what is not to be sent on. */
    @Test
    void linkInPlaceOfANewFile() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.write(trap.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        Files.writeString(trap.resolve("in-place"), "");
        Files.createSymbolicLink(trap.resolve("kit").resolve("a.dxf"), letter);
        said(kit);
        assertEquals("old a.dxf", Files.readString(kit.resolve("a.dxf")));
        checkUnharmed();
    }

    /** A sub-folder that is a link, in the folder or in what looks like a killed run's: nothing goes where it leads. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void subFolderThatIsALink(boolean inPlace) throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Path far = Files.createDirectory(sent.resolve("far"));
        Files.writeString(far.resolve("p-01.dxf"), "far away");
        Files.createSymbolicLink(kit.resolve("boards"), far);
        Journal journal = new Journal("kit", Set.of("boards/q-01.dxf"), Set.of("boards/p-01.dxf"));
        Files.write(trap.resolve("journal"), journal.bytes());
        if (inPlace) {
            Files.writeString(trap.resolve("in-place"), "");
        }
        Files.createDirectory(trap.resolve("kit").resolve("boards"));
        Files.writeString(trap.resolve("kit").resolve("boards").resolve("q-01.dxf"), "theirs");
        Files.writeString(trap.resolve("kit").resolve("boards").resolve("z.txt"), "theirs");
        said(kit);
        assertEquals(List.of("p-01.dxf"), List.copyOf(Disk.names(far)));
        Files.delete(kit.resolve("boards"));
        said(kit);
        assertEquals("theirs", Files.readString(kit.resolve("boards").resolve("z.txt")), "not ours: brought back");
        Path second = Files.createDirectories(sent.resolve(".runbend-1-8").resolve("kit"));
        Files.write(second.resolveSibling("journal"), journal.bytes());
        if (inPlace) {
            Files.writeString(second.resolveSibling("in-place"), "");
        }
        Files.createSymbolicLink(second.resolve("boards"), far);
        said(kit);
        assertEquals(List.of("p-01.dxf"), List.copyOf(Disk.names(far)));
        checkUnharmed();
    }

    @Test
    void markThatIsALink() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.write(trap.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        Files.createSymbolicLink(trap.resolve("in-place"), letter);
        Files.writeString(trap.resolve("kit").resolve("a.dxf"), "theirs");
        said(kit);
        assertEquals("old a.dxf", Files.readString(kit.resolve("a.dxf")));
        checkUnharmed();
    }

    /** What is no journal stops no run and is no journal. */
    @ParameterizedTest
    @ValueSource(strings = {"kit %zz end", "kit kit.json%", "", "\u0000\u0000", "kit a%2"})
    void brokenJournals(String line) throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        String head = new String(new Journal("kit", Set.of("a.dxf"), Set.of()).bytes(), UTF_8)
                .lines()
                .findFirst()
                .get();
        Files.writeString(trap.resolve("journal"), head + "\nkit\n" + line + "\na.dxf\nend\n");
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf"));
        assertEquals("new a.dxf", Files.readString(kit.resolve("a.dxf")));
        checkUnharmed();
    }

    @Test
    void journalThatIsAFolderOrAPipe() throws Exception {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.createDirectories(trap.resolve("journal").resolve("deep"));
        Files.delete(trap.resolve("kit"));
        assertEquals("", said(kit));
        Path second = Files.createDirectory(sent.resolve(".runbend-1-8"));
        assumeTrue(
                new ProcessBuilder("mkfifo", second.resolve("journal").toString())
                                .start()
                                .waitFor()
                        == 0,
                "this system has no mkfifo");
        assertEquals("", said(kit));
        assertTrue(Files.exists(second.resolve("journal")));
    }

    /** A folder that others could have filled is left alone, with a word. */
    @Test
    void folderThatOthersCanWrite() throws IOException {
        assumeTrue(disk.getFileSystem().supportedFileAttributeViews().contains("unix"), "this system has no modes");
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.write(trap.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        Files.setAttribute(trap, "unix:mode", 0777);
        assertEquals(
                trap + ": left alone: it is named like a work folder of ours, but this user did not make it, or"
                        + " others can write in it",
                said(kit));
        assertTrue(Files.exists(trap.resolve("journal")));
        Files.setAttribute(trap, "unix:mode", 0700);
        assertEquals("", said(kit));
        assertFalse(Files.exists(trap), "the same folder, safe, is cleared up");
    }

    @Test
    void folderOfSomebodyElse() throws IOException {
        assumeTrue(System.getProperty("user.name").equals("root"), "only root gives files away");
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.write(trap.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        for (String name : List.of("", "journal")) {
            Files.setAttribute(trap.resolve(name), "unix:uid", 12345);
            assertTrue(said(kit).startsWith(trap + ": left alone"), name);
            assertTrue(Files.exists(trap.resolve("journal")));
            Files.setAttribute(trap.resolve(name), "unix:uid", 0);
        }
    }

    /** A job that is refused clears nothing up. */
    @Test
    void brokenJobTouchesNothing() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        Files.write(trap.resolve("journal"), new Journal("kit", Set.of("a.dxf"), Set.of()).bytes());
        Files.writeString(trap.resolve("kit").resolve("a.dxf"), "half");
        FaultTable.layGood(sent);
        Path job = sent.resolve("job.yaml");
        Files.writeString(job, Files.readString(job) + "colour: blue\n");
        CommandRun run = CommandRun.of("plan", job.toString(), "--out", kit.toString());
        assertEquals(2, run.code(), run.err());
        assertEquals("half", Files.readString(trap.resolve("kit").resolve("a.dxf")));
    }

    /** Names that a kit.json lists are deleted and replaced, so they are plain ones of the folder. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "../letter.txt",
                "ABSOLUTE",
                "..",
                "/",
                "C:letter.txt",
                "a/b",
                "boards/../letter.txt",
                "boards/b/c",
                "boards/",
                "\\u0000",
                "a\\nb",
                "\\u00e4"
            })
    void kitThatListsOthersFiles(String name) throws IOException {
        Files.createDirectory(kit);
        String bad = name.equals("ABSOLUTE") ? letter.toString() : name;
        Files.writeString(
                kit.resolve("kit.json"), "{\"fingerprint\": \"00\", \"files\": [\"kit.json\", \"" + bad + "\"]}");
        OutputFolder folder = new OutputFolder(kit);
        OutputRefused e =
                assertThrows(OutputRefused.class, () -> folder.write(TrialKit.files("new", "letter.txt")), "refused");
        assertTrue(e.getMessage().contains("no kit.json of ours"), e.getMessage());
        checkUnharmed();
    }

    /** A kit.json that is endless, deep or none: refused, whether it is replaced or read as an earlier plan. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "PIPE",
                "DEEP",
                "LARGE",
                "FOLDER",
                "ZERO",
                "{\"loops\": [[[[[",
                "{\"loops\": [{\"elements\": [{}]}]}"
            })
    void oddKits(String what) throws Exception {
        FaultTable.layGood(sent);
        Files.createDirectory(kit);
        make(what, kit.resolve("kit.json"));
        OutputFolder folder = new OutputFolder(kit);
        assertThrows(OutputRefused.class, folder::checkOurs);
        CommandRun run = CommandRun.of(
                "plan",
                sent.resolve("job.yaml").toString(),
                "--out",
                sent.resolve("new").toString(),
                "--was",
                kit.resolve("kit.json").toString());
        assertEquals(2, run.code(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        checkUnharmed();
    }

    /** The same for the shelf. */
    @ParameterizedTest
    @ValueSource(strings = {"PIPE", "DEEP", "LARGE", "FOLDER", "ZERO", "remnants: &a [*a]", "remnants: {"})
    void oddShelves(String what) throws Exception {
        FaultTable.layGood(sent);
        Files.delete(sent.resolve("shelf.yaml"));
        make(what, sent.resolve("shelf.yaml"));
        CommandRun run = CommandRun.of(
                "plan",
                sent.resolve("job.yaml").toString(),
                "--out",
                kit.toString(),
                "--shelf",
                sent.resolve("shelf.yaml").toString());
        assertEquals(2, run.code(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertFalse(Files.exists(kit));
    }

    private static void make(String what, Path file) throws Exception {
        switch (what) {
            case "PIPE" ->
                assumeTrue(
                        new ProcessBuilder("mkfifo", file.toString()).start().waitFor() == 0,
                        "this system has no mkfifo");
            case "DEEP" -> Files.writeString(file, "[".repeat(200_000));
            case "LARGE" -> Files.write(file, "[1,\n".repeat(6_000_000).getBytes(UTF_8));
            case "FOLDER" -> Files.createDirectory(file);
            case "ZERO" -> Files.createSymbolicLink(file, Path.of("/dev/zero"));
            default -> Files.writeString(file, what);
        }
    }
}
