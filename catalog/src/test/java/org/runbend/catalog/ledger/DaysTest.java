package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;

/** Days of several orders, on both kinds of ledger: what is kept for them, and how each goes its own way. */
class DaysTest {
    private static final long M = 100_000;
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T04:05:06Z"), ZoneOffset.UTC);

    @TempDir
    static Path once;

    private static PostgresServer server;
    private static String empty;

    private StockLedger ledger;
    private LedgerStore store;
    private int requests;

    @BeforeAll
    static void create() throws IOException {
        SqliteStore.create(once.resolve("empty.db"));
        server = PostgresServer.start();
        empty = server.database();
        PostgresStore.create(empty, Optional.of(PostgresServer.USER));
    }

    @AfterAll
    static void end() throws IOException {
        if (server != null) {
            server.close();
        }
    }

    @AfterEach
    void addsUp() {
        assertEquals("", Audit.faults(ledger));
        store.close();
    }

    /** A ledger with 5 whole coils of 50 m and 20 elbows. */
    private void open(String kind) throws IOException {
        if (kind.equals("SQLite")) {
            store = SqliteStore.open(Files.copy(
                    once.resolve("empty.db"),
                    Files.createTempDirectory(once, "shelf").resolve("shelf.db")));
        } else {
            store = PostgresStore.open(server.database(PostgresServer.name(empty)), Optional.of(PostgresServer.USER));
        }
        ledger = new StockLedger(store, CLOCK);
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 5), got(Kind.ITEM, "EL-16", 0, 20)));
    }

    private Request request() {
        return new Request("r" + ++requests, "Ada", "");
    }

    private static Received got(Kind kind, String product, long length, long amount) {
        return new Received(
                new Received.Thing(kind, Optional.empty(), product, length, "", ""), amount, Optional.empty());
    }

    /** A day that takes one coil for two of its orders each, 20 m and 15 m, and 3 elbows for each. */
    private static KitUse day(String name, String plan, String... orders) {
        List<KitUse.StockUse> stock = new ArrayList<>();
        List<KitUse.ItemUse> items = new ArrayList<>();
        Map<String, String> plans = new TreeMap<>();
        for (int i = 0; i < orders.length; i++) {
            plans.put(orders[i], "plan of " + orders[i]);
            items.add(new KitUse.ItemUse(Kind.ITEM, "EL-16", 3, orders[i]));
            if (i % 2 == 0) {
                String other = orders[Math.min(i + 1, orders.length - 1)];
                stock.add(new KitUse.StockUse(
                        Optional.empty(),
                        Kind.COIL,
                        "PX-16",
                        50 * M,
                        List.of(new KitUse.Piece(20 * M, "A", orders[i]), new KitUse.Piece(15 * M, "A", other)),
                        35 * M,
                        true,
                        Optional.of(name + "-W" + (i / 2 + 1))));
            }
        }
        return new KitUse(name, plan, stock, items, Keeping.USUAL, new TreeMap<>(plans));
    }

    private static KitUse alone(String order) {
        KitUse.StockUse coil = new KitUse.StockUse(
                Optional.empty(), Kind.COIL, "PX-16", 50 * M, List.of(new KitUse.Piece(9 * M, "A")), 9 * M, true);
        return new KitUse(order, "alone", List.of(coil), List.of(), Keeping.USUAL);
    }

    private String states() {
        StringBuilder text = new StringBuilder();
        ledger.look(Books::orders).forEach(o -> text.append(o.order())
                .append(' ')
                .append(o.state().word())
                .append(", "));
        return text.toString();
    }

    private Holding holding(Kind kind, String product) {
        return ledger.look(b -> b.ofProduct(kind, product)).get(0);
    }

    private String refused(Runnable what) {
        return assertThrows(LedgerRefused.class, what::run).getMessage();
    }

    @ParameterizedTest
    @ValueSource(strings = {"SQLite", "PostgreSQL"})
    void onceCutEachGoesItsWay(String kind) throws IOException {
        open(kind);
        KitUse monday = day("monday", "p1", "HF-1", "HF-2", "HF-3");
        ledger.reserve(request(), monday);
        assertEquals("HF-1 confirmed, HF-2 confirmed, HF-3 confirmed, monday confirmed, ", states());
        assertEquals(2, holding(Kind.COIL, "PX-16").reserved());
        assertEquals(9, holding(Kind.ITEM, "EL-16").reserved());
        Outcome cut = ledger.confirm(request(), monday);
        assertEquals(
                List.of("monday-W1", "monday-W2"),
                cut.made().stream().map(Holding::id).toList());
        assertEquals(15 * M, cut.made().get(0).amount());
        assertFalse(ledger.confirm(request(), monday).isNew());
        assertEquals(11, holding(Kind.ITEM, "EL-16").amount());
        assertEquals(
                List.of(15 * M),
                ledger.look(b -> b.cuts("HF-2")).stream().map(Cut::length).toList());
        assertEquals(
                "monday is a day: name one of its orders: HF-1, HF-2, HF-3",
                refused(() -> ledger.pack(request(), "monday")));
        assertEquals(
                "day monday is cut: plan a changed order of it by itself with plan --was, and confirm that kit",
                refused(() -> ledger.confirm(request(), day("monday", "p2", "HF-4"))));
        String name = ledger.look(b -> b.cuts("HF-2")).get(0).name();
        ledger.spoil(
                request(),
                new Spoiled("HF-2", List.of(name), List.of(4 * M), alone("HF-2").stock(), Keeping.USUAL));
        ledger.pack(request(), "HF-1");
        ledger.send(request(), "HF-1");
        Outcome back = ledger.takeBack(request(), "HF-3", Keeping.USUAL);
        assertEquals(
                List.of(20 * M, 15 * M),
                back.made().stream().map(Holding::amount).toList());
        assertEquals(14, holding(Kind.ITEM, "EL-16").amount());
        assertEquals("HF-1 sent, HF-2 cut, HF-3 returned, monday cut, ", states());
        assertEquals(
                "movement 3 (confirm monday) cannot be undone: movement 6 (send HF-1) went on with order HF-1; undo"
                        + " movement 6 first",
                refused(() -> undoneFrom(3)));
        ledger.undo(request(), 7);
        ledger.undo(request(), 6);
        ledger.undo(request(), 5);
        ledger.undo(request(), 4);
        ledger.undo(request(), 3);
        assertEquals("HF-1 confirmed, HF-2 confirmed, HF-3 confirmed, monday confirmed, ", states());
        assertEquals(5, holding(Kind.COIL, "PX-16").amount());
        assertEquals(2, holding(Kind.COIL, "PX-16").reserved());
    }

    private void undoneFrom(long number) {
        ledger.undo(request(), number);
    }

    /** What is kept for a day is given back with all of its orders, however it is lost. */
    @ParameterizedTest
    @ValueSource(strings = {"SQLite", "PostgreSQL"})
    void aDayIsLostWhole(String kind) throws IOException {
        open(kind);
        KitUse monday = day("monday", "p1", "HF-1", "HF-2");
        ledger.reserve(request(), monday);
        assertEquals(
                "what is kept for order HF-1 is day monday's: take its file out of the day's folder and do the batch again,"
                        + " or release monday",
                refused(() -> ledger.release(request(), "HF-1")));
        ledger.release(request(), "monday");
        assertEquals("HF-1 quoted, HF-2 quoted, monday quoted, ", states());
        ledger.reserve(request(), alone("HF-1"));
        ledger.release(request(), "HF-1");
        ledger.reserve(request(), monday);
        Counted none = Counted.lot(Holding.Spec.lot(Kind.COIL, "PX-16", 50 * M, ""), 0);
        ledger.count(request(), List.of(none));
        assertEquals("HF-1 quoted, HF-2 quoted, monday quoted, ", states());
        assertEquals(0, holding(Kind.ITEM, "EL-16").reserved());
        ledger.undo(request(), 7);
        assertEquals("HF-1 confirmed, HF-2 confirmed, monday confirmed, ", states());
        assertEquals(6, holding(Kind.ITEM, "EL-16").reserved());
    }

    /** An order that left the day and is kept for by itself does not lose that with the day. */
    @ParameterizedTest
    @ValueSource(strings = {"SQLite", "PostgreSQL"})
    void whoLeftTheDayIsItsOwn(String kind) throws IOException {
        open(kind);
        ledger.reserve(request(), day("monday", "p1", "HF-1", "HF-2"));
        assertEquals(
                "order HF-2 is cut with day monday: confirm that, or take its file out of the day's folder and do the batch"
                        + " again",
                refused(() -> ledger.reserve(request(), alone("HF-2"))));
        ledger.reserve(request(), day("monday", "p2", "HF-1"));
        assertEquals("HF-1 confirmed, HF-2 quoted, monday confirmed, ", states());
        ledger.reserve(request(), alone("HF-2"));
        ledger.release(request(), "monday");
        assertEquals("HF-1 quoted, HF-2 confirmed, monday quoted, ", states());
        assertEquals(List.of("HF-1"), ledger.look(b -> Days.orders(b, "monday")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"SQLite", "PostgreSQL"})
    void anOrderIsOfOneDay(String kind) throws IOException {
        open(kind);
        ledger.reserve(request(), day("monday", "p1", "HF-1", "HF-2"));
        assertEquals(
                "order HF-2 of day tuesday is one of day monday too: take its file out of one of the folders and do that"
                        + " batch again",
                refused(() -> ledger.reserve(request(), day("tuesday", "p2", "HF-2", "HF-3"))));
        assertEquals(
                "order monday of day tuesday is a day itself: give one of the two another name",
                refused(() -> ledger.reserve(request(), day("tuesday", "p2", "HF-3", "monday"))));
        assertEquals(
                "a day monday holds an order of that name: rename the day",
                refused(() -> day("monday", "p2", "monday")));
        ledger.confirm(request(), alone("HF-3"));
        assertEquals(
                "order HF-3 of day tuesday is cut already: take its file out of the day's folder and do the batch again",
                refused(() -> ledger.confirm(request(), day("tuesday", "p2", "HF-3", "HF-4"))));
        assertEquals("HF-1 confirmed, HF-2 confirmed, HF-3 cut, monday confirmed, ", states());
        assertEquals(1, holding(Kind.COIL, "PX-16").reserved());
    }
}
