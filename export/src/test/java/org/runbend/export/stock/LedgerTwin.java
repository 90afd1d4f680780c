package org.runbend.export.stock;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.runbend.catalog.ledger.Audit;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.LedgerStore;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.PostgresServer;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;
import org.runbend.export.CommandRun;

/** One of two ledgers that the same commands are given to, and all that stands in it as one text. */
final class LedgerTwin {
    /** What stands in a ledger without a movement. */
    static final String EMPTY = "[] [] [] [] []\n";

    private static final String UUID = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

    private final Place place;
    private final Path folder;

    LedgerTwin(Place place, Path folder) {
        this.place = place;
        this.folder = folder;
    }

    /**
     * Where a ledger is.
     *
     * @param name of the twin
     * @param words that name it to a command
     * @param opening opens it
     */
    record Place(String name, List<String> words, Supplier<LedgerStore> opening) {}

    /** A kind of ledger. */
    interface Kind {
        /** A new place, without a ledger. */
        Place place(String name);
    }

    /** Ledgers in files. */
    record Files(Path folder) implements Kind {
        @Override
        public Place place(String name) {
            Path file = folder.resolve(name + ".db");
            return new Place(name, List.of("--stock", file.toString()), () -> SqliteStore.open(file));
        }
    }

    /** Ledgers in databases of a server. */
    record Databases(PostgresServer server, Path folder) implements Kind {
        @Override
        public Place place(String name) {
            String address = server.database();
            Path password = folder.resolve("password");
            try {
                java.nio.file.Files.writeString(password, PostgresServer.USER);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return new Place(
                    name,
                    List.of("--stock", address, "--password-file", password.toString()),
                    () -> PostgresStore.open(address, Optional.of(PostgresServer.USER)));
        }
    }

    /** The words of a command on this ledger: LEDGER is where it is, OUT its folders of days, NOTE a delivery note. */
    List<String> words(String command) {
        List<String> words = new ArrayList<>();
        for (String word : command.split(" ", -1)) {
            if (word.equals("LEDGER")) {
                words.addAll(place.words());
            } else {
                words.add(word.replaceFirst(
                                "^OUT-", folder.resolve(place.name()).toString() + "-day-")
                        .replaceFirst("^NOTE$", folder.resolve("note.csv").toString()));
            }
        }
        return words;
    }

    /** A file of the day that a batch writes. */
    Path day(String batch, String file) {
        return Path.of(words(batch).get(2)).resolve(file).normalize();
    }

    /** Runs a command in this process. */
    CommandRun run(String command) {
        return CommandRun.of(words(command).toArray(String[]::new));
    }

    /** What follows from movements before: LAST is the last one, CUT-OF-x the first cut of an order. */
    String known(String step) {
        return look(books -> {
            String last = Integer.toString(books.movements().size());
            List<String> words = Arrays.stream(step.split(" ", -1))
                    .map(w -> w.equals("LAST") ? last : w)
                    .map(w -> w.startsWith("CUT-OF-")
                            ? books.cuts(w.substring("CUT-OF-".length())).get(0).name()
                            : w)
                    .toList();
            return String.join(" ", words);
        });
    }

    private <T> T look(Function<Books, T> work) {
        try (LedgerStore store = place.opening().get()) {
            return store.look(work);
        }
    }

    /** Everything but the times at which it was written, and ids that a batch gives itself; empty where there is no ledger. */
    String seen() {
        try (LedgerStore store = place.opening().get()) {
            StockLedger ledger = new StockLedger(store, InstantSource.system());
            String faults = Audit.faults(ledger);
            return faults.isEmpty() ? ledger.look(LedgerTwin::text) : "it does not add up: " + faults;
        } catch (LedgerRefused e) {
            if (e.getMessage().contains("stock init --stock")) {
                return "";
            }
            throw e;
        }
    }

    private static String text(Books books) {
        StringBuilder text = new StringBuilder();
        for (Movement m : books.movements()) {
            text.append(m.words()).append(' ').append(m.request().replaceFirst(UUID, "own"));
            text.append(' ').append(m.content()).append(m.undoes()).append(m.undoneBy());
            text.append(books.lines(m.number()))
                    .append(books.orderChanges(m.number()))
                    .append('\n');
        }
        List<Object> cuts = new ArrayList<>();
        books.orders().forEach(o -> cuts.addAll(books.cuts(o.order())));
        text.append(books.holdings()).append(' ').append(books.reservations()).append(' ');
        text.append(books.orders()).append(' ').append(cuts).append(' ').append(books.reorderPoints());
        return text.append('\n').toString();
    }
}
