package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;

/**
 * Processes that are killed in the middle of whatever they do, and processes that are in each other's way.
 * {@code -Dledger.kills=N} kills N of them, two in five on PostgreSQL.
 */
class LedgerKillTest {
    private static final int KILLS = Integer.getInteger("ledger.kills", 20);
    private static final int BENCHES = 8;
    private static final int COILS = 40;

    @TempDir
    Path folder;

    @Test
    void killedSqlite() throws IOException, InterruptedException {
        String file = folder.resolve("shelf.db").toString();
        SqliteStore.create(Path.of(file));
        kill(file, KILLS - KILLS * 2 / 5);
    }

    @Test
    void eightProcessesOnOneFileNeverOversell() throws IOException, InterruptedException {
        String file = folder.resolve("shelf.db").toString();
        SqliteStore.create(Path.of(file));
        grab(file);
    }

    @Test
    void postgres() throws IOException, InterruptedException {
        try (PostgresServer server = PostgresServer.start()) {
            String place = server.database();
            PostgresStore.create(place, Optional.of(PostgresServer.USER));
            kill(place, KILLS * 2 / 5);
            refusedByTheServer(place, server.database());
            String other = server.database();
            PostgresStore.create(other, Optional.of(PostgresServer.USER));
            grab(other);
            serverIsGoneInTheMiddle(server, other);
        }
    }

    private static void refusedByTheServer(String place, String empty) {
        String plain = place.replaceFirst("[?].*", "");
        assertEquals(
                plain + ": there is a ledger already",
                refused(() -> PostgresStore.create(place, Optional.of(PostgresServer.USER))));
        String denied = plain
                + ": the database refuses this user or password: name a file with --password-file, or set"
                + " RUNBEND_STOCK_PASSWORD";
        assertEquals(denied, refused(() -> PostgresStore.open(place, Optional.empty())));
        assertEquals(denied, refused(() -> PostgresStore.open(place, Optional.of("wrong"))));
        String bare = empty.replaceFirst("[?].*", "");
        assertEquals(
                bare + ": has no ledger; 'runbend stock init --stock " + bare + "' makes one",
                refused(() -> PostgresStore.open(empty, Optional.of(PostgresServer.USER))));
    }

    private static String refused(Executable what) {
        return assertThrows(LedgerRefused.class, what).getMessage();
    }

    private static void kill(String place, int kills) throws IOException, InterruptedException {
        Random dice = new Random(20);
        int told = 0;
        for (int k = 0; k < kills; k++) {
            Process process = LedgerProcess.start(place, "k" + k, "work", List.of());
            List<String> lines = new ArrayList<>();
            try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
                assertEquals("ready", out.readLine());
                int after = dice.nextInt(18); // movements, so that each kind is met, and a moment more
                while (lines.size() < after) {
                    lines.add(out.readLine());
                }
                Thread.sleep(0, dice.nextInt(999_999));
                Thread.sleep(dice.nextInt(12));
                process.toHandle().destroyForcibly(); // what it told can still be read
                out.lines().forEach(lines::add);
            }
            process.waitFor();
            told += check(place, lines);
        }
        assertTrue(told > kills * 5, told + " movements were told");
    }

    /** The ledger opens, its sums are right, and what a process told is there. */
    private static int check(String place, List<String> lines) {
        try (LedgerStore store = LedgerProcess.open(place)) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            assertEquals("", Audit.faults(ledger));
            Set<String> there = ledger.look(
                    books -> books.movements().stream().map(Movement::request).collect(Collectors.toSet()));
            for (String line : lines) {
                assertTrue(line.startsWith("done "), line);
                assertTrue(there.contains(line.substring(5)), line + " is not there");
            }
            return lines.size();
        }
    }

    private static void grab(String place) throws IOException, InterruptedException {
        try (LedgerStore store = LedgerProcess.open(place)) {
            new StockLedger(store, InstantSource.system())
                    .receive(
                            new Request("start", "test", ""),
                            List.of(new Received(
                                    new Received.Thing(Kind.COIL, Optional.empty(), "PX-16", 5_000_000, "", ""),
                                    COILS,
                                    Optional.empty())));
        }
        List<Process> benches = new ArrayList<>();
        for (int b = 0; b < BENCHES; b++) {
            benches.add(LedgerProcess.start(place, "b" + b, "grab", List.of()));
        }
        List<String> last = new ArrayList<>();
        int busy = 0;
        for (Process bench : benches) {
            List<String> said =
                    bench.inputReader(StandardCharsets.UTF_8).lines().toList();
            bench.waitFor();
            last.add(said.get(said.size() - 1));
            busy += said.size() > 2 ? 1 : 0;
        }
        assertEquals(
                List.of("refused short of 1 coil PX-16 of 50 m (there, free): receive or count them first"),
                last.stream()
                        .map(l -> l.replaceAll("\\(\\d+ there, 0 free\\)", "(there, free)"))
                        .distinct()
                        .toList());
        assertTrue(busy > 1, "one bench took everything");
        try (LedgerStore store = LedgerProcess.open(place)) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            assertEquals("", Audit.faults(ledger));
            List<Movement> movements = ledger.look(Books::movements);
            assertEquals(
                    COILS,
                    movements.stream()
                            .filter(m -> m.kind() == MovementKind.RESERVE)
                            .count());
            Holding coils = ledger.look(b -> b.ofProduct(Kind.COIL, "PX-16")).get(0);
            assertEquals(
                    COILS
                            - movements.stream()
                                    .filter(m -> m.kind() == MovementKind.CONFIRM)
                                    .count(),
                    coils.amount());
            assertEquals(coils.amount(), coils.reserved());
        }
    }

    /** A server that ends under a bench: one line, and after it is back everything told is there. */
    private static void serverIsGoneInTheMiddle(PostgresServer server, String place)
            throws IOException, InterruptedException {
        Process process = LedgerProcess.start(place, "gone", "work", List.of());
        List<String> lines = new ArrayList<>();
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            assertEquals("ready", out.readLine());
            for (int i = 0; i < 5; i++) {
                lines.add(out.readLine());
            }
            server.stop();
            out.lines().forEach(lines::add);
        }
        process.waitFor();
        String last = lines.remove(lines.size() - 1);
        assertTrue(
                last.matches(
                        "refused jdbc:postgresql://127.0.0.1:\\d+/shelf\\d+: cannot be reached; nothing was changed: see"
                                + " whether the database runs, and its address"),
                last);
        server.begin();
        check(place, lines);
    }
}
