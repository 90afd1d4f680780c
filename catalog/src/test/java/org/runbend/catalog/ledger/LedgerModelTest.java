package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;

/**
 * Ledgers of both kinds against a model in plain maps, which was written apart: random sequences of all commands, on orders and on
 * days of them, sensible and senseless, everything compared after each step. {@code -Dledger.steps=N} takes N steps, a quarter of them on PostgreSQL, which
 * is slower and has the same statements.
 */
class LedgerModelTest {
    private static final int STEPS = Integer.getInteger("ledger.steps", 10_000);
    private static final int AT_ONCE = 250;
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T04:05:06Z"), ZoneOffset.UTC);

    @Test
    void sqliteDoesWhatTheModelDoes() throws IOException {
        Path memory = Path.of("/dev/shm"); // what the disk does is tried elsewhere
        Path folder = Files.isWritable(memory)
                ? Files.createTempDirectory(memory, "runbend-ledger")
                : Files.createTempDirectory("runbend-ledger");
        try {
            Path empty = folder.resolve("empty.db");
            SqliteStore.create(empty);
            Path file = folder.resolve("shelf.db");
            walk(STEPS - STEPS / 4, () -> {
                try {
                    Files.deleteIfExists(file);
                    Files.copy(empty, file);
                } catch (IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
                return SqliteStore.open(file);
            });
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    @Test
    void postgresDoesWhatTheModelDoes() throws IOException {
        try (PostgresServer server = PostgresServer.start()) {
            String empty = server.database();
            PostgresStore.create(empty, Optional.of(PostgresServer.USER));
            walk(
                    STEPS / 4,
                    () -> PostgresStore.open(
                            server.database(PostgresServer.name(empty)), Optional.of(PostgresServer.USER)));
        }
    }

    private static void walk(int steps, Supplier<LedgerStore> fresh) {
        int accepted = 0;
        int refused = 0;
        int repeated = 0;
        int days = 0;
        for (int from = 0; from < steps; from += AT_ONCE) {
            try (LedgerStore store = fresh.get()) {
                StockLedger ledger = new StockLedger(store, CLOCK);
                RandomBench bench = new RandomBench(from, ledger);
                for (int i = 0; i < AT_ONCE; i++) {
                    String where = "seed " + from + ", step " + i + ": ";
                    String did;
                    try {
                        did = bench.step();
                    } catch (AssertionError e) {
                        throw new AssertionError(where + e.getMessage(), e);
                    }
                    assertEquals(bench.modelled(), RandomBench.seen(ledger), () -> where + did);
                }
                assertEquals("", Audit.faults(ledger));
                accepted += bench.accepted();
                refused += bench.refused();
                repeated += bench.repeated();
                days += bench.days();
            }
        }
        String counts = accepted + " done, " + refused + " refused, " + repeated + " repeated, " + days + " days";
        assertTrue(accepted > steps / 3 && refused > steps / 10 && repeated > steps / 50 && days > steps / 80, counts);
    }
}
