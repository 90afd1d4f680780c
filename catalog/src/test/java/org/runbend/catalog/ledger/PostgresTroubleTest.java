package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.ledger.sql.PostgresStore;

/** What a server of others does to a change: it comes between, it locks the other way round, its answer is lost. */
class PostgresTroubleTest {
    private static PostgresServer server;
    private static String empty;

    @BeforeAll
    static void begin() throws IOException {
        server = PostgresServer.start();
        empty = server.database();
        PostgresStore.create(empty, Optional.of(PostgresServer.USER));
        server.psql(
                PostgresServer.name(empty),
                "INSERT INTO runbend.piece_number (letter, last) VALUES ('X', 1), ('Y', 1)");
    }

    @AfterAll
    static void end() throws IOException {
        if (server != null) {
            server.close();
        }
    }

    private static String fresh() {
        return server.database(PostgresServer.name(empty));
    }

    private static PostgresStore open(String place) {
        return PostgresStore.open(place, Optional.of(PostgresServer.USER));
    }

    private static Connection other(String place) throws SQLException {
        return DriverManager.getConnection(place + "&password=" + PostgresServer.USER);
    }

    private static void run(Connection line, String... statements) {
        try (Statement statement = line.createStatement()) {
            for (String s : statements) {
                statement.execute(s);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** 40001: who knows nothing of our lock changes what this change has seen, once. */
    @Test
    void doneOverWhereAnotherCameBetween() throws SQLException {
        String place = fresh();
        AtomicInteger tries = new AtomicInteger();
        try (PostgresStore store = open(place);
                Connection other = other(place)) {
            long number = store.change(books -> {
                books.movements(); // from here on this change sees the books of this moment
                if (tries.incrementAndGet() == 1) {
                    run(other, "UPDATE runbend.piece_number SET last = 41 WHERE letter = 'X'");
                }
                return books.nextNumber("X");
            });
            assertEquals(42, number, "seen anew");
            assertEquals(2, tries.get());
            assertEquals(43L, store.<Long>change(books -> books.nextNumber("X")));
        }
    }

    /** Somebody who comes between every time: one line after so many tries, and the ledger goes on. */
    @Test
    void notForEver() throws SQLException {
        String place = fresh();
        AtomicInteger tries = new AtomicInteger();
        try (PostgresStore store = open(place);
                Connection other = other(place)) {
            LedgerRefused refused = assertThrows(
                    LedgerRefused.class,
                    () -> store.change(books -> {
                        books.movements();
                        tries.incrementAndGet();
                        run(other, "UPDATE runbend.piece_number SET last = last + 1 WHERE letter = 'X'");
                        return books.nextNumber("X");
                    }));
            assertEquals(
                    place.replaceFirst("[?].*", "") + ": others were faster 20 times; nothing was changed: try again",
                    refused.getMessage());
            assertEquals(20, tries.get());
            assertEquals(22L, store.<Long>change(books -> books.nextNumber("X")));
        }
    }

    /** 40P01: another holds Y and waits for X, this one holds X and wants Y. */
    @Test
    void doneOverWhereTwoWaitForEachOther() throws Exception {
        String place = fresh();
        AtomicInteger tries = new AtomicInteger();
        AtomicReference<Thread> waiting = new AtomicReference<>();
        CountDownLatch holds = new CountDownLatch(1);
        CountDownLatch mayGo = new CountDownLatch(1);
        try (PostgresStore store = open(place);
                Connection other = other(place)) {
            run(
                    other,
                    "SET deadlock_timeout = '60s'",
                    "SET lock_timeout = '90s'"); // so that it is our change that is ended
            Thread thread = new Thread(() -> {
                run(other, "BEGIN", "UPDATE runbend.piece_number SET last = 7 WHERE letter = 'Y'");
                holds.countDown();
                awaited(mayGo);
                run(other, "UPDATE runbend.piece_number SET last = 7 WHERE letter = 'X'", "COMMIT");
            });
            waiting.set(thread);
            thread.start();
            awaited(holds);
            String numbers = store.change(books -> {
                boolean first = tries.incrementAndGet() == 1;
                if (!first) {
                    joined(waiting.get()); // before X is taken: whoever has X when the other wakes would wait for it
                    // for ever
                }
                long x = books.nextNumber("X");
                if (first) {
                    mayGo.countDown();
                }
                return x + " " + books.nextNumber("Y");
            });
            assertTrue(tries.get() >= 2, tries + " tries");
            assertEquals("8 8", numbers);
        }
    }

    private static void awaited(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void joined(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Outcome receive(StockLedger ledger, String request) {
        return ledger.receive(
                new Request(request, "test", ""),
                List.of(new Received(
                        new Received.Thing(Kind.ITEM, Optional.empty(), "EL-16", 0, "", ""), 5, Optional.empty())));
    }

    /** The answer to COMMIT is lost: the request is looked up, and what was done is told as done. */
    @Test
    void aLostAnswerIsLookedUp() throws IOException {
        String place = fresh();
        try (CommitCutter line = new CommitCutter(place);
                PostgresStore store = open(line.through(place))) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            receive(ledger, "a");
            line.cut(CommitCutter.Where.AFTER);
            Outcome outcome = receive(ledger, "b");
            assertTrue(outcome.isNew());
            assertEquals(2, outcome.movement().number());
            line.cut(CommitCutter.Where.BEFORE);
            LedgerRefused refused = assertThrows(LedgerRefused.class, () -> receive(ledger, "c"));
            assertEquals("the line to the ledger broke and nothing was changed: try again", refused.getMessage());
            assertTrue(receive(ledger, "c").isNew());
            assertEquals(false, receive(ledger, "b").isNew());
            assertEquals(
                    15,
                    ledger.look(books -> books.ofProduct(Kind.ITEM, "EL-16"))
                            .get(0)
                            .amount());
            assertEquals("", Audit.faults(ledger));
        }
    }

    /** A server that says nothing any more is not waited for till the bench closes; what it did is told as done. */
    @Test
    void aSilentServerCountsAsGone() throws IOException {
        String place = fresh();
        try (CommitCutter line = new CommitCutter(place);
                PostgresStore store =
                        open(line.through(place) + "&socketTimeout=2")) { // an address comes before our own
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            line.cut(CommitCutter.Where.SILENT);
            Outcome outcome = receive(ledger, "a");
            assertTrue(outcome.isNew());
            assertEquals(1, outcome.movement().number());
            assertEquals("", Audit.faults(ledger));
        }
    }

    /** Whoever does not choose has a limit too. */
    @Test
    void noLineIsWaitedForForEver() {
        assertEquals(
                "120",
                PostgresStore.properties(empty, Optional.empty()).get("socketTimeout"),
                "seconds without a word");
    }

    /** The server is still at it when the line is broken: whoever looks waits until that is over. */
    @Test
    void aSlowServerIsWaitedFor() throws IOException {
        String place = fresh();
        server.psql(
                PostgresServer.name(place),
                "CREATE FUNCTION slow() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN PERFORM pg_sleep(2); RETURN NULL; END';"
                        + " CREATE CONSTRAINT TRIGGER slow AFTER INSERT ON runbend.movement DEFERRABLE INITIALLY DEFERRED"
                        + " FOR EACH ROW EXECUTE FUNCTION slow()");
        try (CommitCutter line = new CommitCutter(place);
                PostgresStore store = open(line.through(place))) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            line.cut(CommitCutter.Where.AFTER);
            assertTrue(receive(ledger, "a").isNew());
            assertEquals(
                    5,
                    ledger.look(books -> books.ofProduct(Kind.ITEM, "EL-16"))
                            .get(0)
                            .amount());
        }
    }
}
