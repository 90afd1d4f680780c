package org.runbend.export.folder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What happens to files that lie in the folder already. */
class OutputFolderTest {
    @TempDir
    Path above;

    private Path kit;

    @BeforeEach
    void name() {
        kit = above.resolve("kit");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private String refused() {
        return assertThrows(OutputRefused.class, () -> new OutputFolder(kit).write(TrialKit.files("new", "a.dxf")))
                .getMessage();
    }

    @Test
    void newFolderHoldsTheKitAndNothingElseIsLeft() throws IOException {
        kit = above.resolve("deep").resolve("kit");
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf", "b.csv"));
        assertEquals(List.of("a.dxf", "b.csv", "kit.json"), names(kit));
        assertEquals("new a.dxf", Files.readString(kit.resolve("a.dxf")));
        assertEquals(List.of("kit"), names(kit.getParent()), "no temporary folder stays");
    }

    @Test
    void emptyFolderIsUsed() throws IOException {
        Files.createDirectory(kit);
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf"));
        assertEquals(List.of("a.dxf", "kit.json"), names(kit));
    }

    @Test
    void oldKitIsReplacedAndForeignFilesStay() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf", "gone.svg"));
        Files.writeString(kit.resolve("letter.txt"), "mine");
        Files.createDirectory(kit.resolve("photos"));
        new OutputFolder(kit).write(TrialKit.files("new", "a.dxf", "b.csv"));
        assertEquals(List.of("a.dxf", "b.csv", "kit.json", "letter.txt", "photos"), names(kit));
        assertEquals("new a.dxf", Files.readString(kit.resolve("a.dxf")));
        assertTrue(Files.readString(kit.resolve("kit.json")).contains("\"new\""));
        assertEquals("mine", Files.readString(kit.resolve("letter.txt")));
        assertEquals(List.of("kit"), names(above), "no temporary folder stays");
    }

    /** The name of a new file of ours is taken by a file that the old kit does not list: it is somebody else's. */
    @Test
    void foreignFileInTheWayIsNotOverwritten() throws IOException {
        new OutputFolder(kit).write(TrialKit.files("old", "b.csv"));
        Files.writeString(kit.resolve("a.dxf"), "drawn by hand");
        assertTrue(refused().contains("a.dxf"), OutputFolderTest.class::getName);
        assertEquals("drawn by hand", Files.readString(kit.resolve("a.dxf")));
        assertTrue(Files.readString(kit.resolve("kit.json")).contains("\"old\""));
        assertEquals(List.of("kit"), names(above), "no temporary folder stays");
    }

    /** The sub-folder is a real one: a file or a link of that name, or a foreign drawing in it, is in the way. */
    @Test
    void boardsAreWrittenToARealFolderAlone() throws IOException {
        Path far = Files.createDirectory(above.resolve("far"));
        new OutputFolder(kit).write(TrialKit.files("old", "a.dxf"));
        OutputFolder folder = new OutputFolder(kit);
        Map<String, byte[]> files = TrialKit.files("new", "boards/p-01.dxf");
        Path boards = Files.writeString(kit.resolve("boards"), "mine");
        String wrong =
                boards + ": this file is not ours and would be overwritten; rename it or name another output folder";
        assertEquals(
                wrong,
                assertThrows(OutputRefused.class, () -> folder.write(files)).getMessage());
        Files.delete(boards);
        Files.createSymbolicLink(boards, far);
        assertEquals(
                wrong,
                assertThrows(OutputRefused.class, () -> folder.write(files)).getMessage());
        Files.delete(boards);
        Files.createDirectory(boards);
        Files.writeString(boards.resolve("p-01.dxf"), "mine");
        assertEquals(
                boards.resolve("p-01.dxf")
                        + ": this file is not ours and would be overwritten; rename it or name another output folder",
                assertThrows(OutputRefused.class, () -> folder.write(files)).getMessage());
        assertEquals(List.of(), names(far));
        assertEquals("old a.dxf", Files.readString(kit.resolve("a.dxf")));
    }

    @Test
    void foreignFolderIsRefused() throws IOException {
        Files.createDirectory(kit);
        Files.writeString(kit.resolve("letter.txt"), "mine");
        assertTrue(refused().startsWith(kit + ": the output folder holds files but no kit.json of ours"));
        assertEquals(List.of("letter.txt"), names(kit));
        assertEquals(List.of("kit"), names(above));
    }

    /** A kit.json that is not JSON, is somebody else's, lists no files, or lists a way out of the folder. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "hello",
                "[]",
                "{\"files\": [\"kit.json\"]}",
                "{\"fingerprint\": \"00\"}",
                "{\"fingerprint\": \"00\", \"files\": [\"a.dxf\"]}",
                "{\"fingerprint\": \"00\", \"files\": [\"kit.json\", \"../letter.txt\"]}",
                "{\"fingerprint\": \"00\", \"files\": [\"kit.json\", \"..\\\\letter.txt\"]}",
                "{\"fingerprint\": \"00\", \"files\": [\"kit.json\", \".bashrc\"]}",
                "{\"fingerprint\": \"00\", \"files\": [\"kit.json\", \"\"]}",
                "{\"fingerprint\": \"00\", \"files\": [\"kit.json\""
            })
    void kitThatIsNotOursIsRefused(String json) throws IOException {
        Files.createDirectory(kit);
        Files.writeString(kit.resolve("kit.json"), json);
        Files.writeString(above.resolve("letter.txt"), "mine");
        assertTrue(refused().contains("no kit.json of ours"));
        assertEquals(json, Files.readString(kit.resolve("kit.json")));
        assertEquals(List.of("kit", "letter.txt"), names(above));
    }

    @Test
    void fileIsRefused() throws IOException {
        Files.writeString(kit, "mine");
        assertEquals(kit + ": the output folder is a file; name a folder", refused());
        assertEquals("mine", Files.readString(kit));
    }

    @Test
    void fileOnTheWayIsRefused() throws IOException {
        Files.writeString(above.resolve("letter.txt"), "mine");
        kit = above.resolve("letter.txt").resolve("kit");
        assertTrue(refused().startsWith(kit + ": "));
        assertEquals("mine", Files.readString(above.resolve("letter.txt")));
    }

    /** Nobody, not even root, makes a folder among the kernel's. */
    @Test
    void placeThatTakesNoFoldersIsRefused() {
        assumeTrue(Files.isDirectory(Path.of("/proc/self")), "this system has no /proc");
        kit = Path.of("/proc/self/kit");
        assertTrue(refused().startsWith("/proc/self/kit: "));
    }

    @Test
    void lockedFolderIsRefused() throws IOException {
        assumeFalse(System.getProperty("user.name").equals("root"), "root may write everywhere");
        Files.createDirectory(kit);
        assertTrue(kit.toFile().setWritable(false));
        assertTrue(refused().contains("cannot be written"));
        assertEquals(List.of(), names(kit));
        assertTrue(kit.toFile().setWritable(true));
        assertTrue(above.toFile().setWritable(false));
        Path below = above.resolve("new");
        OutputFolder folder = new OutputFolder(below);
        assertThrows(OutputRefused.class, () -> folder.write(TrialKit.files("new", "a.dxf")));
        assertTrue(above.toFile().setWritable(true));
        assertFalse(Files.exists(below));
    }
}
