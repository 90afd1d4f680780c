package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.sql.SqliteStore;

/** Files that are no ledger, no longer one or not yet one, and disks that are full: one line, and nothing is lost. */
class LedgerFilesTest {
    @TempDir
    static Path once;

    @TempDir
    Path folder;

    @BeforeAll
    static void create() {
        SqliteStore.create(once.resolve("empty.db"));
    }

    private Path ledger() throws IOException {
        return Files.copy(once.resolve("empty.db"), folder.resolve("shelf 1%2?.db"));
    }

    private static String refused(Path file) throws IOException {
        byte[] before = Files.isRegularFile(file) ? Files.readAllBytes(file) : new byte[0];
        String line =
                assertThrows(LedgerRefused.class, () -> SqliteStore.open(file)).getMessage();
        if (Files.isRegularFile(file)) {
            assertArrayEquals(before, Files.readAllBytes(file), "the file is as it was");
        }
        assertEquals(1, line.lines().count(), line);
        assertTrue(line.startsWith(file + ": "), line);
        return line.substring(file.toString().length() + 2);
    }

    private static void sql(Path file, String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection(
                        "jdbc:sqlite:file:" + file.toUri().getRawPath());
                Statement statement = connection.createStatement()) {
            for (String s : statements) {
                statement.execute(s);
            }
        }
    }

    @Test
    void foreignFiles() throws IOException, SQLException {
        Path file = folder.resolve("shelf.db");
        assertEquals("no such ledger; 'runbend stock init --stock " + file + "' makes one", refused(file));
        Files.writeString(file, "");
        assertEquals("is no ledger of Runbend but an empty file", refused(file));
        Files.writeString(file, "remnants:\n".repeat(40));
        assertEquals("is no ledger of Runbend", refused(file));
        Files.write(file, new byte[9000]);
        assertEquals("is no ledger of Runbend", refused(file));
        Files.delete(file);
        sql(file, "CREATE TABLE recipe (name TEXT)");
        assertEquals("is a database, but no ledger of Runbend", refused(file));
        assertEquals("is no file; a ledger is one", refused(folder));
        String there = assertThrows(LedgerRefused.class, () -> SqliteStore.create(file))
                .getMessage();
        assertEquals(file + ": there is something already: a new ledger needs a new name", there);
        Path nowhere = folder.resolve("none").resolve("shelf.db");
        assertEquals(
                nowhere + ": cannot be made there: no such folder",
                assertThrows(LedgerRefused.class, () -> SqliteStore.create(nowhere))
                        .getMessage());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList(), "nothing half-made is left");
        }
    }

    @Test
    void newerVersion() throws IOException, SQLException {
        Path file = ledger();
        sql(
                file,
                "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script, installed_by,"
                        + " execution_time, success) VALUES (9, '7', 'later', 'SQL', 'V7', 'x', 1, 1)");
        assertEquals(
                "is a ledger of a newer Runbend (its tables are of version 7, this Runbend knows 2): use that one",
                refused(file));
    }

    @Test
    void cutShortAnywhere() throws IOException {
        byte[] whole = Files.readAllBytes(ledger());
        Path file = folder.resolve("short.db");
        for (int length = whole.length - 1; length > 0; length -= 997) {
            Files.write(file, Arrays.copyOf(whole, length));
            String line = refused(file);
            assertTrue(line.startsWith("is cut short: ") || line.equals("is no ledger of Runbend"), line);
        }
    }

    /** Bytes of the middle are another file's: every command says so or works, and none throws anything else. */
    @Test
    void spoiledInTheMiddle() throws IOException {
        byte[] whole = Files.readAllBytes(ledger());
        Path file = folder.resolve("spoiled.db");
        int damaged = 0;
        for (int page = 1; page < whole.length / 4096; page++) {
            byte[] spoiled = whole.clone();
            Arrays.fill(spoiled, page * 4096, page * 4096 + 4096, (byte) 0x5A);
            Files.write(file, spoiled);
            try (LedgerStore store = SqliteStore.open(file)) {
                StockLedger ledger = new StockLedger(store, InstantSource.system());
                ledger.receive(
                        new Request("r", "test", ""),
                        List.of(new Received(
                                new Received.Thing(Kind.ITEM, Optional.empty(), "E", 0, "", ""), 1, Optional.empty())));
                Audit.faults(ledger);
            } catch (LedgerRefused e) {
                damaged++;
                assertTrue(e.getMessage().contains("is damaged"), e.getMessage());
            }
        }
        assertTrue(damaged > 5, damaged + " pages were found damaged");
    }

    /** Nothing that was written can be changed, not even by whoever knows the tables. */
    @Test
    void movementsAreNeverChanged() throws IOException {
        Path file = ledger();
        for (String table : List.of("movement", "line", "order_change", "cut", "cut_fate", "reorder_point")) {
            try (LedgerStore store = SqliteStore.open(file)) {
                new StockLedger(store, InstantSource.system())
                        .reorderPoint(new Request(table, "test", ""), new ReorderPoint(Kind.ITEM, "E", 0, 1, 1, 1, 1));
            }
            if (table.equals("movement") || table.equals("reorder_point")) {
                SQLException e = assertThrows(SQLException.class, () -> sql(file, "DELETE FROM " + table));
                assertTrue(e.getMessage().contains("movements are never changed"), e.getMessage());
            }
        }
    }

    /** A disk of 300 KiB, made for a child process alone. */
    @Test
    void fullDisk() throws IOException, InterruptedException {
        Files.createDirectory(folder.resolve("disk"));
        Path saved = folder.resolve("saved.db");
        List<String> lines = inMount(
                "size=300k",
                "cp '" + once.resolve("empty.db")
                        + "' disk/shelf.db && \"$@\" disk/shelf.db full work; cp disk/shelf.db '" + saved + "'");
        String last = lines.get(lines.size() - 1);
        assertEquals("refused disk/shelf.db: the disk is full; nothing was changed: make room and do it again", last);
        assertTrue(lines.size() > 10, lines::toString);
        checkWhole(saved, lines.subList(1, lines.size() - 1));
    }

    @Test
    void readOnlyDisk() throws IOException, InterruptedException {
        Files.createDirectory(folder.resolve("disk"));
        List<String> lines = inMount(
                "size=900k",
                "cp '" + once.resolve("empty.db")
                        + "' disk/shelf.db && mount -o remount,ro disk && \"$@\" disk/shelf.db ro" + " work");
        assertEquals(
                List.of(
                        "ready",
                        "refused disk/shelf.db: cannot be written; nothing was changed: see who may write the file and"
                                + " its folder"),
                lines);
    }

    private static void checkWhole(Path file, List<String> told) {
        try (LedgerStore store = SqliteStore.open(file)) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            assertEquals("", Audit.faults(ledger));
            List<String> there = ledger.look(b -> b.movements()).stream()
                    .map(m -> "done " + m.request())
                    .toList();
            assertEquals(told, there);
        }
    }

    /** What a bench says that works on a disk of its own; skipped where nobody may mount one. */
    private List<String> inMount(String options, String script) throws IOException, InterruptedException {
        String mount = "mount -t tmpfs -o " + options + " none disk";
        List<String> unshare = List.of("unshare", "-m", "sh", "-c");
        assumeTrue(code(unshare, mount) == 0, "no disk can be mounted here");
        List<String> command = new ArrayList<>(unshare);
        command.add(mount + " && " + script);
        command.add("bench");
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                LedgerProcess.class.getName()));
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        List<String> lines = process.inputReader(StandardCharsets.UTF_8).lines().toList();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        return lines;
    }

    private int code(List<String> before, String script) throws InterruptedException {
        List<String> command = new ArrayList<>(before);
        command.add(script);
        try {
            return new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .start()
                    .waitFor();
        } catch (IOException e) {
            return -1;
        }
    }
}
