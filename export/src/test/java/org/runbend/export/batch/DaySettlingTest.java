package org.runbend.export.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.KitUse;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Received;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.catalog.ledger.StockShort;
import org.runbend.catalog.ledger.sql.SqliteStore;
import org.runbend.export.CommandRun;
import org.runbend.export.data.Day;

/** A day whose stock others take, and days that no other nesting could mend. */
class DaySettlingTest {
    private static final long M = 100_000;

    @TempDir
    Path folder;

    private Path shelf;
    private final List<Shop> nested = new ArrayList<>();
    private int requests;

    @BeforeEach
    void coils() {
        shelf = folder.resolve("shelf.db");
        SqliteStore.create(shelf);
    }

    private <T> T with(Function<StockLedger, T> work) {
        try (SqliteStore store = SqliteStore.open(shelf)) {
            return work.apply(new StockLedger(store, InstantSource.system()));
        }
    }

    private Request request() {
        return new Request("r" + ++requests, "Ada", "");
    }

    private void receive(int coils) {
        Received.Thing coil = new Received.Thing(Kind.COIL, Optional.empty(), "PX-16", 50 * M, "", "");
        with(l -> l.receive(request(), List.of(new Received(coil, coils, Optional.empty()))));
    }

    private static KitUse coils(String order, int coils) {
        KitUse.StockUse one = new KitUse.StockUse(
                Optional.empty(), Kind.COIL, "PX-16", 50 * M, List.of(new KitUse.Piece(M, "A")), M, true);
        return new KitUse(order, "p", Collections.nCopies(coils, one), List.of(), Keeping.USUAL);
    }

    /** Takes as many coils as lie there, which is enough to see what it was nested from. */
    private Day nest(Shop shop) {
        nested.add(shop);
        return new Day("d", "w", Map.of(), List.of(), List.of(), List.of(), List.of(), "EUR", Keeping.USUAL, 0);
    }

    private Shop shop() {
        return with(l -> l.look(b -> Shop.of(b, "d")));
    }

    private long lastSeen() {
        return nested.get(nested.size() - 1).onHand("PX-16", 50 * M);
    }

    @Test
    void whatOthersTookIsNestedAnew() {
        receive(5);
        Shop before = shop();
        with(l -> l.reserve(request(), coils("HF-9", 2)));
        new DaySettling(this::nest, this::shop, d -> with(l -> l.reserve(request(), coils("d", (int) lastSeen()))))
                .settle(before);
        assertEquals(2, nested.size());
        assertEquals(3, lastSeen());
    }

    @Test
    void anUnchangedShelfIsNotNestedAgain() {
        receive(1);
        DaySettling settling =
                new DaySettling(this::nest, this::shop, d -> with(l -> l.reserve(request(), coils("d", 2))));
        StockShort refused = assertThrows(StockShort.class, () -> settling.settle(shop()));
        assertEquals(
                "short of 1 coil PX-16 of 50 m (1 there, 1 free): receive or count them first", refused.getMessage());
        assertEquals(1, nested.size());
    }

    @Test
    void whatNoNestingMendsIsSaidAtOnce() {
        receive(5);
        with(l -> l.confirm(request(), coils("d", 1)));
        Shop before = shop();
        with(l -> l.confirm(request(), coils("HF-9", 1)));
        DaySettling settling =
                new DaySettling(this::nest, this::shop, d -> with(l -> l.reserve(request(), coils("d", 1))));
        assertThrows(LedgerRefused.class, () -> settling.settle(before));
        assertEquals(1, nested.size());
    }

    private CommandRun batch(Path orders, String day) {
        return CommandRun.of(
                "batch",
                orders.toString(),
                "--stock",
                shelf.toString(),
                "--out",
                folder.resolve(day).toString(),
                "--laid",
                folder.resolve("laid").toString());
    }

    private String shown(String... words) {
        List<String> all = new ArrayList<>(List.of("stock"));
        all.addAll(List.of(words));
        all.addAll(List.of("--csv", "--stock", shelf.toString()));
        return CommandRun.of(all.toArray(String[]::new)).out();
    }

    /** An order of two days is refused before anything is laid; a day that needs nothing of the shelf any more gives it back. */
    @Test
    void anOrderIsOfOneDay() throws IOException {
        CommandRun.of("stock", "receive", "opened", "PX-10", "22m", "--id", "C7", "--stock", shelf.toString());
        Path orders = Files.createDirectory(folder.resolve("orders"));
        String catalog = Files.readString(Path.of("../examples/workshop.yaml"));
        Files.writeString(orders.resolve("workshop.yaml"), catalog.replace("supply: whole", "supply: cut"));
        Path order = orders.resolve("o.yaml");
        Files.copy(Path.of("../examples/closet.yaml"), order);
        CommandRun tuesday = batch(orders, "tuesday");
        assertEquals(0, tuesday.code(), tuesday::err);
        assertTrue(shown("orders").contains("KC-2035,confirmed"), shown("orders"));
        CommandRun wednesday = batch(orders, "wednesday");
        assertEquals(2, wednesday.code());
        assertEquals(
                "order KC-2035 of day wednesday is one of day tuesday too: take its file out of one of the folders and do"
                        + " that batch again",
                wednesday.err().strip());
        assertFalse(Files.exists(folder.resolve("wednesday")), "nothing was written");
        Files.writeString(order, Files.readString(order).replace("[600, 700]", "[9000, 9000]"));
        CommandRun longer = batch(orders, "tuesday");
        assertEquals(0, longer.code(), longer::err);
        assertEquals(
                0, (long) with(l -> l.look(b -> b.findPiece("C7").orElseThrow().reserved())));
    }
}
