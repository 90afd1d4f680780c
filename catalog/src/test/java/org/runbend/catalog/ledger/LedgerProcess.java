package org.runbend.catalog.ledger;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;

/** A bench in a process of its own, to be killed or to stand in the way of others. */
final class LedgerProcess {
    private static final long M = 100_000;

    private final StockLedger ledger;
    private final String name;
    private int requests;

    private LedgerProcess(StockLedger ledger, String name) {
        this.ledger = ledger;
        this.name = name;
    }

    /** Starts one; what it says can be read from its output. */
    static Process start(String place, String name, String what, List<String> before) throws IOException {
        List<String> command = new ArrayList<>(before);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xshare:auto",
                "-Xmx128m",
                "-cp",
                System.getProperty("java.class.path"),
                LedgerProcess.class.getName(),
                place,
                name,
                what));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .directory(new File(System.getProperty("java.io.tmpdir")))
                .start();
    }

    static LedgerStore open(String place) {
        return place.startsWith("jdbc:")
                ? PostgresStore.open(place, Optional.of(PostgresServer.USER))
                : SqliteStore.open(Path.of(place));
    }

    /** Arguments: the ledger, a name for orders and requests, and what to do: {@code work} for ever, {@code grab} all. */
    public static void main(String[] args) {
        try (LedgerStore store = open(args[0])) {
            LedgerProcess bench = new LedgerProcess(new StockLedger(store, InstantSource.system()), args[1]);
            say("ready");
            if (args[2].equals("grab")) {
                bench.grab();
            } else {
                for (int i = 0; ; i++) {
                    bench.round(i);
                }
            }
        } catch (LedgerRefused e) {
            say("refused " + e.getMessage());
        }
    }

    @SuppressWarnings("SystemOut") // its output is what the test listens to
    private static void say(String text) {
        System.out.println(text);
        System.out.flush();
    }

    private Request request() {
        return new Request(name + "-" + requests++, name, "");
    }

    /** What was told to be done must be found afterwards. */
    private void told(Outcome outcome) {
        say("done " + outcome.movement().request());
    }

    private static Received got(Kind kind, String product, long length, long amount) {
        return new Received(
                new Received.Thing(kind, Optional.empty(), product, length, "", ""), amount, Optional.empty());
    }

    private static KitUse kit(String order, String plan, long cut) {
        KitUse.StockUse coil = new KitUse.StockUse(
                Optional.empty(), Kind.COIL, "PX-16", 50 * M, List.of(new KitUse.Piece(cut, "loop A")), cut, true);
        return new KitUse(
                order, plan, List.of(coil), List.of(new KitUse.ItemUse(Kind.ITEM, "EL-16", 4)), Keeping.USUAL);
    }

    /** Every command once. */
    private void round(int i) {
        String order = name + "/" + i;
        told(ledger.receive(request(), List.of(got(Kind.COIL, "PX-16", 50 * M, 3), got(Kind.ITEM, "EL-16", 0, 20))));
        told(ledger.quote(request(), order, "p1"));
        told(ledger.reserve(request(), kit(order, "p1", 18 * M)));
        told(ledger.release(request(), order));
        told(ledger.reserve(request(), kit(order, "p1", 18 * M)));
        Outcome cut = ledger.confirm(request(), kit(order, "p1", 18 * M));
        told(cut);
        told(ledger.spoil(
                request(),
                new Spoiled(
                        order,
                        List.of(cut.movement().number() + "/1"),
                        List.of(5 * M),
                        kit(order, "p1", 18 * M).stock(),
                        Keeping.USUAL)));
        told(ledger.pack(request(), order));
        told(ledger.confirm(request(), kit(order, "p2", 20 * M)));
        told(ledger.pack(request(), order));
        told(ledger.send(request(), order));
        told(ledger.takeBack(request(), order, Keeping.USUAL));
        told(ledger.count(request(), List.of(Counted.lot(Holding.Spec.lot(Kind.ITEM, "EL-16", 0, ""), 10 + i % 7))));
        Outcome point = ledger.reorderPoint(request(), new ReorderPoint(Kind.ITEM, "EL-16", 0, 5, 1, 1, i % 9));
        told(point);
        told(ledger.undo(request(), point.movement().number()));
    }

    /** Takes one coil after another until there is none, each second one cut at once. */
    private void grab() {
        for (int i = 0; ; i++) {
            KitUse kit = kit(name + "/" + i, "p1", 48 * M);
            told(ledger.reserve(request(), kit));
            if (i % 2 == 0) {
                told(ledger.confirm(request(), kit));
            }
        }
    }
}
