package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.sql.SqliteStore;

/**
 * The power goes at seeded moments of a bench's work, and the disk has lost whatever was not forced to it: the ledger opens, its
 * movements are whole, and what was told is there. {@code -Dledger.cuts=N} tries N moments.
 */
class LedgerPowerCutTest {
    private static final int CUTS = Integer.getInteger("ledger.cuts", 150);
    /** Two rounds of every command. */
    private static final int MOVEMENTS = 32;

    @TempDir
    Path folder;

    @Test
    void nothingToldIsLost() throws IOException, InterruptedException {
        Path disk = Files.createDirectory(folder.resolve("disk")).toRealPath();
        Path shelf = disk.resolve("shelf.db");
        SqliteStore.create(shelf);
        Map<String, byte[]> start = Map.of(shelf.toString(), Files.readAllBytes(shelf));
        LostWrites writes = work(disk, shelf);
        assertTrue(writes.count('S') > 2 * MOVEMENTS, writes.count('S') + " times something was forced");
        assertTrue(writes.count('D') >= MOVEMENTS, writes.count('D') + " times names were forced");
        Random dice = new Random(4);
        int rolledBack = 0;
        for (int i = 0; i < CUTS; i++) {
            int moment = dice.nextInt(writes.count() + 1);
            Path left = Files.createDirectory(folder.resolve("left" + i));
            writes.cut(start, moment, dice, true, left);
            rolledBack += Files.exists(left.resolve("shelf.db-journal")) ? 1 : 0;
            assertEquals(Optional.empty(), fault(left.resolve("shelf.db"), writes.told(moment)), "moment " + moment);
            remove(left);
        }
        assertTrue(rolledBack > CUTS / 20, rolledBack + " of " + CUTS + " left a journal");
        assertTrue(lyingDiskIsFound(writes, start) > 10, "the test sees what is lost");
    }

    /** The same moments on a disk that only says that it has forced something: how many of 60 ledgers are hurt. */
    private int lyingDiskIsFound(LostWrites writes, Map<String, byte[]> start) throws IOException {
        Random dice = new Random(5);
        int hurt = 0;
        for (int i = 0; i < 60; i++) {
            int moment = writes.count() / 2 + dice.nextInt(writes.count() / 2);
            Path left = Files.createDirectory(folder.resolve("lied" + i));
            writes.cut(start, moment, dice, false, left);
            hurt += fault(left.resolve("shelf.db"), writes.told(moment)).isPresent() ? 1 : 0;
            remove(left);
        }
        return hurt;
    }

    private LostWrites work(Path disk, Path shelf) throws IOException, InterruptedException {
        Path log = folder.resolve("log");
        Process process = LedgerProcess.start(shelf.toString(), "p", "work", LostWrites.before(folder, disk, log));
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            assertEquals("ready", out.readLine());
            for (int i = 0; i < MOVEMENTS; i++) {
                String line = out.readLine();
                assertTrue(line != null && line.startsWith("done "), line);
            }
            process.toHandle().destroyForcibly();
            out.lines().forEach(l -> {});
        }
        process.waitFor();
        return LostWrites.read(log);
    }

    /** What is wrong with a ledger, if anything. */
    private static Optional<String> fault(Path file, List<String> told) {
        try (LedgerStore store = SqliteStore.open(file)) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            String sums = Audit.faults(ledger);
            if (!sums.isEmpty()) {
                return Optional.of(sums);
            }
            Set<String> there = ledger.look(books ->
                    books.movements().stream().map(m -> "done " + m.request()).collect(Collectors.toSet()));
            Set<String> lost = new HashSet<>(told);
            lost.remove("ready");
            lost.removeAll(there);
            return lost.isEmpty() ? Optional.empty() : Optional.of("lost: " + lost);
        } catch (LedgerRefused e) {
            return Optional.of(e.getMessage());
        }
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
