package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.ledger.sql.SqliteStore;

/** A bench's day with the ledger: sums by hand, and the words in which things are refused. */
class StockLedgerTest {
    private static final long M = 100_000;

    @TempDir
    static Path once;

    @TempDir
    Path folder;

    private LedgerStore store;
    private StockLedger ledger;
    private int requests;

    /** An empty ledger is made once: its file can be copied. */
    @BeforeAll
    static void create() {
        SqliteStore.create(once.resolve("empty.db"));
    }

    @BeforeEach
    void open() throws IOException {
        Path file = Files.copy(once.resolve("empty.db"), folder.resolve("shelf.db"));
        store = SqliteStore.open(file);
        ledger = new StockLedger(store, Clock.fixed(Instant.parse("2026-02-03T04:05:06Z"), ZoneOffset.UTC));
    }

    @AfterEach
    void close() {
        assertEquals("", Audit.faults(ledger));
        store.close();
    }

    private Request request() {
        return new Request("r" + ++requests, "Ada", "");
    }

    private static Received got(Kind kind, String product, long length, long amount) {
        return new Received(
                new Received.Thing(kind, Optional.empty(), product, length, "", ""), amount, Optional.empty());
    }

    private static Received piece(String id, Kind kind, String product, long length) {
        return new Received(new Received.Thing(kind, Optional.of(id), product, 0, "", ""), length, Optional.empty());
    }

    private static KitUse kit(String order, String plan, KitUse.StockUse... stock) {
        return new KitUse(order, plan, List.of(stock), List.of(), Keeping.USUAL);
    }

    private static KitUse.StockUse from(String id, String product, long of, long cut) {
        Kind kind = product.startsWith("PX") ? Kind.COIL : Kind.PLATE;
        return new KitUse.StockUse(
                id.isEmpty() ? Optional.empty() : Optional.of(id),
                kind,
                product,
                of,
                List.of(new KitUse.Piece(cut, "loop A")),
                cut,
                true);
    }

    private Holding piece(String id) {
        return ledger.look(b -> b.findPiece(id)).orElseThrow();
    }

    private long amount(Kind kind, String product) {
        return ledger.look(b -> b.ofProduct(kind, product)).get(0).amount();
    }

    private int movements() {
        return ledger.look(Books::movements).size();
    }

    private String refused(Runnable what) {
        return assertThrows(LedgerRefused.class, what::run).getMessage();
    }

    /** 50 m less 18 m are 32 m, of which 0.5 %, 160 mm, are in doubt. */
    @Test
    void cutCoilGoesBackWithAnId() {
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 2)));
        Outcome cut = ledger.confirm(request(), kit("HF-1", "p1", from("", "PX-16", 50 * M, 18 * M)));
        assertEquals(List.of("C1"), cut.made().stream().map(Holding::id).toList());
        assertEquals(32 * M, piece("C1").amount());
        assertEquals(16_000, piece("C1").uncertainty());
        assertEquals(32 * M - 16_000, piece("C1").free());
        assertEquals(1L, amount(Kind.COIL, "PX-16"));
        ledger.confirm(request(), kit("HF-2", "p2", from("C1", "PX-16", 32 * M, 30 * M)));
        assertEquals(0, piece("C1").amount(), "2 m are under what is kept");
    }

    @Test
    void whatIsKeptForOneOrderIsNotPromisedToAnother() {
        ledger.receive(request(), List.of(piece("C7", Kind.OPENED, "PX-16", 26 * M)));
        ledger.reserve(request(), kit("HF-1", "p1", from("C7", "PX-16", 26 * M, 18 * M)));
        assertEquals(
                "opened coil C7 (PX-16): 9000 mm wanted, 7870 mm free (26 m there, 130 mm in doubt, 18 m kept for HF-1):"
                        + " plan anew",
                refused(() -> ledger.reserve(request(), kit("HF-2", "p2", from("C7", "PX-16", 26 * M, 9 * M)))));
        ledger.reserve(request(), kit("HF-2", "p2", from("C7", "PX-16", 26 * M, 7 * M)));
        ledger.release(request(), "HF-1");
        assertEquals(7 * M, piece("C7").reserved());
        assertEquals(
                "nothing is reserved for order HF-1: it is quoted", refused(() -> ledger.release(request(), "HF-1")));
    }

    @Test
    void everythingThatIsShortIsNamedAtOnce() {
        ledger.receive(request(), List.of(got(Kind.PLATE, "SP-1", 120_000, 1), got(Kind.ITEM, "EL-16", 0, 3)));
        KitUse use = new KitUse(
                "HF-1",
                "p1",
                List.of(from("", "PX-16", 50 * M, 18 * M), from("C9", "PX-16", 9 * M, 8 * M)),
                List.of(new KitUse.ItemUse(Kind.ITEM, "EL-16", 4)),
                Keeping.USUAL);
        assertEquals(
                "no opened coil C9 is on the shelf: plan anew; short of 1 coil PX-16 of 50 m (0 there, 0 free): receive or"
                        + " count them first; short of 1 item EL-16 (3 there, 3 free): receive or count them first",
                refused(() -> ledger.reserve(request(), use)));
        assertEquals(1, movements(), "nothing was written");
    }

    /** Plans name what was cut before, and unopened coils, in words that no piece can bear. */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "was-A, ids that begin with was- are for pieces that were cut before",
                "whole 35 m, ids that begin with 'whole ' are for unopened coils"
            })
    void idsOfPlans(String id, String why) {
        assertEquals(why, refused(() -> ledger.receive(request(), List.of(piece(id, Kind.OPENED, "PX-16", 26 * M)))));
    }

    /** Two coils that are short are one thing to buy, whether they are to be kept or cut. */
    @Test
    void whatIsShortIsCounted() {
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 1)));
        KitUse use = kit(
                "HF-1",
                "p1",
                from("", "PX-16", 50 * M, 18 * M),
                from("C9", "PX-16", 9 * M, 8 * M),
                from("", "PX-16", 50 * M, 30 * M),
                from("", "PX-16", 50 * M, 40 * M));
        String piece = "no opened coil C9 is on the shelf: plan anew";
        String coils = "short of 2 coil PX-16 of 50 m (1 there, 1 free): receive or count them first";
        assertEquals(piece + "; " + coils, refused(() -> ledger.reserve(request(), use)));
        assertEquals(coils + "; " + piece, refused(() -> ledger.confirm(request(), use)));
        assertEquals(1L, amount(Kind.COIL, "PX-16"));
    }

    @Test
    void samePlanIsCutOnceAndAChangedOneAnew() {
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 3), got(Kind.ITEM, "EL-16", 0, 9)));
        KitUse first = new KitUse(
                "HF-1",
                "p1",
                List.of(from("", "PX-16", 50 * M, 18 * M)),
                List.of(new KitUse.ItemUse(Kind.ITEM, "EL-16", 4)),
                Keeping.USUAL);
        ledger.confirm(request(), first);
        Outcome again = ledger.confirm(request(), first);
        assertFalse(again.isNew());
        assertEquals(List.of("done before as movement 2 (confirm HF-1), nothing was changed"), again.notes());
        // after the change the loop is 16 m: cut from the piece of 18 m, 2 m of which are too short to keep
        KitUse changed = new KitUse(
                "HF-1",
                "p2",
                List.of(from("was-A", "PX-16", 18 * M, 16 * M)),
                List.of(new KitUse.ItemUse(Kind.ITEM, "EL-16", 5)),
                Keeping.USUAL);
        assertTrue(ledger.confirm(request(), changed).isNew());
        assertEquals(2L, amount(Kind.COIL, "PX-16"));
        assertEquals(4L, amount(Kind.ITEM, "EL-16"));
        assertEquals(
                List.of("3/1"),
                ledger.look(b -> b.cuts("HF-1").stream().map(Cut::name).toList()));
        // a plan made afresh needs another coil, and what was cut comes back
        Outcome afresh = ledger.confirm(request(), kit("HF-1", "p3", from("", "PX-16", 50 * M, 17 * M)));
        assertEquals(
                List.of(16 * M, 33 * M),
                afresh.made().stream().map(Holding::amount).toList());
        assertEquals(9L, amount(Kind.ITEM, "EL-16"));
    }

    @Test
    void whatComesBackHasNewIds() {
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 1), got(Kind.PLATE, "SP-1", 120_000, 1)));
        ledger.confirm(
                request(), kit("HF-1", "p1", from("", "PX-16", 50 * M, 18 * M), from("", "SP-1", 120_000, 90_000)));
        assertEquals(
                "order HF-1 is cut: only what is packed can be sent", refused(() -> ledger.send(request(), "HF-1")));
        ledger.pack(request(), "HF-1");
        ledger.send(request(), "HF-1");
        assertEquals(
                "order HF-1 is sent: take it back with return first",
                refused(() -> ledger.confirm(request(), kit("HF-1", "p2", from("C1", "PX-16", 32 * M, M)))));
        Outcome back = ledger.takeBack(request(), "HF-1", Keeping.USUAL);
        assertEquals(List.of("C2", "O2"), back.made().stream().map(Holding::id).toList());
        assertEquals(
                List.of(18 * M, 90_000L),
                back.made().stream().map(Holding::amount).toList());
        assertEquals(OrderState.RETURNED, ledger.look(b -> b.order("HF-1")).state());
    }

    @Test
    void spoiledPieceIsCutAgain() {
        ledger.receive(request(), List.of(got(Kind.PLATE, "SP-1", 120_000, 2)));
        ledger.confirm(request(), kit("HF-1", "p1", from("", "SP-1", 120_000, 90_000)));
        Spoiled spoiled = new Spoiled(
                "HF-1", List.of("2/1"), List.of(40_000L), List.of(from("", "SP-1", 120_000, 90_000)), Keeping.USUAL);
        Outcome again = ledger.spoil(request(), spoiled);
        assertEquals(
                List.of(40_000L, 30_000L),
                again.made().stream().map(Holding::amount).toList());
        assertEquals("order HF-1 has no cut 2/1; it has 3/1", refused(() -> ledger.spoil(request(), spoiled)));
    }

    @Test
    void stockTakeThatDoesNotAddUpSaysWhoseReservationIsLost() {
        ledger.receive(request(), List.of(piece("C7", Kind.OPENED, "PX-16", 26 * M)));
        ledger.reserve(request(), kit("HF-1", "p1", from("C7", "PX-16", 26 * M, 9 * M)));
        ledger.reserve(request(), kit("HF-2", "p2", from("C7", "PX-16", 26 * M, 8 * M)));
        Outcome count = ledger.count(request(), List.of(Counted.piece("C7", 12 * M)));
        assertEquals(
                List.of(
                        "order HF-2 has lost its reservation, as opened coil C7 (PX-16) no longer suffices: plan it anew and"
                                + " reserve",
                        "opened coil C7 (PX-16): 26 m in the ledger, 12 m counted"),
                count.notes());
        assertEquals(9 * M, piece("C7").reserved());
        assertEquals(
                "movement 1 (receive) cannot be undone: movement 4 (count) counted opened coil C7 (PX-16) as it is; undo"
                        + " movement 4 first",
                refused(() -> ledger.undo(request(), 1)));
        ledger.undo(request(), 4);
        assertEquals(26 * M, piece("C7").amount());
        assertEquals(17 * M, piece("C7").reserved());
        assertEquals(OrderState.CONFIRMED, ledger.look(b -> b.order("HF-2")).state());
    }

    @Test
    void undoneIsAsIfItHadNeverBeen() {
        ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 1)));
        ledger.confirm(request(), kit("HF-1", "p1", from("", "PX-16", 50 * M, 18 * M)));
        ledger.reserve(request(), kit("HF-2", "p2", from("C1", "PX-16", 32 * M, 8 * M)));
        assertEquals(
                "movement 2 (confirm HF-1) cannot be undone: movement 3 (reserve HF-2) needs opened coil C1 (PX-16); undo"
                        + " movement 3 first",
                refused(() -> ledger.undo(request(), 2)));
        ledger.undo(request(), 3);
        ledger.undo(request(), 2);
        assertEquals(OrderState.UNKNOWN, ledger.look(b -> b.order("HF-1")).state());
        assertEquals(
                "movement 2 (confirm HF-1) was undone by movement 5 already", refused(() -> ledger.undo(request(), 2)));
        assertTrue(ledger.confirm(request(), kit("HF-1", "p1", from("", "PX-16", 50 * M, 18 * M)))
                .isNew());
    }

    @Test
    void aRequestIsDoneOnce() {
        Request request = request();
        List<Received> note = List.of(got(Kind.ITEM, "EL-16", 0, 40));
        ledger.receive(request, note);
        assertFalse(ledger.receive(request, note).isNew());
        assertEquals(40L, amount(Kind.ITEM, "EL-16"));
        assertEquals(
                "request r1 came before as movement 1 (receive) with other content: nothing was changed; give each request"
                        + " an id of its own",
                refused(() -> ledger.receive(request, List.of(got(Kind.ITEM, "EL-16", 0, 41)))));
    }

    /** By hand: under the point by 7, at least 10, in packs of 4: 12. */
    @ParameterizedTest
    @CsvSource({"20, 4, 10, 13, 12", "20, 4, 0, 13, 8", "20, 1, 0, 20, 0", "20, 50, 10, 19, 50", "5, 3, 1, 0, 6"})
    void reorder(long point, long pack, long least, long free, long order) {
        assertEquals(order, new ReorderPoint(Kind.ITEM, "EL-16", 0, point, pack, least, 7).toOrder(free));
    }

    @Test
    void lastPointCounts() {
        ledger.reorderPoint(request(), new ReorderPoint(Kind.ITEM, "EL-16", 0, 5, 1, 1, 7));
        ledger.reorderPoint(request(), new ReorderPoint(Kind.ITEM, "EL-16", 0, 9, 1, 1, 7));
        assertEquals(List.of(9L), points());
        ledger.undo(request(), 2);
        assertEquals(List.of(5L), points());
    }

    private List<Long> points() {
        return ledger.look(
                b -> b.reorderPoints().stream().map(ReorderPoint::point).toList());
    }
}
