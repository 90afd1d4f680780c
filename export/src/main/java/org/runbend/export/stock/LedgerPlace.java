package org.runbend.export.stock;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.LedgerStore;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.catalog.ledger.sql.PostgresStore;
import org.runbend.catalog.ledger.sql.SqliteStore;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.source.SourceFile;
import org.runbend.export.data.UnopenedCoils;
import org.runbend.optimizer.job.Job;
import picocli.CommandLine.Option;

/** Which ledger is meant, and how to get into it. */
public final class LedgerPlace {
    @Option(
            names = "--stock",
            paramLabel = "LEDGER",
            description = "The ledger: a file, or jdbc:postgresql://HOST/DATABASE?user=NAME; default: $RUNBEND_STOCK.")
    private String place;

    @Option(
            names = "--password-file",
            paramLabel = "FILE",
            description = "Its first line is the password of the database; default: $RUNBEND_STOCK_PASSWORD.")
    private Path passwordFile;

    /** Whether a ledger is named on the command line. */
    public boolean isNamed() {
        return place != null;
    }

    /** Whether a ledger is named on the command line or in the environment. */
    public boolean isKnown() {
        String named = System.getenv("RUNBEND_STOCK");
        return isNamed() || (named != null && !named.isBlank());
    }

    private String place() {
        String named = place != null ? place : System.getenv("RUNBEND_STOCK");
        if (named == null || named.isBlank()) {
            throw new LedgerRefused("which ledger? --stock FILE names it, or RUNBEND_STOCK in the environment");
        }
        if (named.startsWith("jdbc:") && !named.startsWith(PostgresStore.SCHEME)) {
            throw new LedgerRefused("--stock: a ledger is a file or a database of PostgreSQL, jdbc:postgresql://...");
        }
        return named;
    }

    private static Path file(String place) {
        try {
            return Path.of(place);
        } catch (InvalidPathException e) {
            throw new LedgerRefused("--stock: this cannot be the name of a file", e);
        }
    }

    private static boolean isDatabase(String place) {
        return place.startsWith(PostgresStore.SCHEME);
    }

    private Optional<String> password() {
        if (passwordFile != null) {
            return Optional.of(
                    SourceFile.read(passwordFile).text().lines().findFirst().orElse(""));
        }
        return Optional.ofNullable(System.getenv("RUNBEND_STOCK_PASSWORD"));
    }

    /**
     * The address of the database.
     *
     * @throws LedgerRefused if the ledger is a file
     */
    public String database() {
        String where = place();
        if (!isDatabase(where)) {
            throw new LedgerRefused(
                    "--stock: " + where + " is a file; workers meet in a database, jdbc:postgresql://...");
        }
        return where;
    }

    /** User and password of the database. */
    public Map<String, String> login() {
        return PostgresStore.properties(database(), password());
    }

    /** Makes a new ledger; says where. */
    String create() {
        String where = place();
        if (isDatabase(where)) {
            PostgresStore.create(where, password());
            return "the database";
        }
        SqliteStore.create(file(where));
        return where;
    }

    /** Does something with the ledger; a word on the disk it lies on goes to the listener. */
    public <T> T with(Consumer<String> warnings, Function<StockLedger, T> work) {
        String where = place();
        try (LedgerStore store = open(where)) {
            if (!isDatabase(where)) {
                SqliteStore.warning(file(where)).ifPresent(warnings);
            }
            return work.apply(new StockLedger(store, InstantSource.system()));
        }
    }

    private LedgerStore open(String where) {
        return isDatabase(where) ? PostgresStore.open(where, password()) : SqliteStore.open(file(where));
    }

    /**
     * Reads a job with the shelf that its order may use: opened coils and offcuts that are free or kept for it, without what is in doubt
     * of a length, and unopened coils of its pipe in lengths that its catalog does not list.
     *
     * @param reader reads with the text of a shelf file
     */
    public Job read(Function<SourceFile, Job> reader, Consumer<String> warnings) {
        Job read = reader.apply(with(warnings, ledger -> ledger.look(books -> shelf(books, "", List.of()))));
        Pipe pipe = read.pipe().product();
        return with(word -> {}, ledger -> ledger.look(books -> again(books, read.order(), pipe)))
                .map(reader)
                .orElse(read);
    }

    /** The shelf as an order sees it whose number and pipe are known, if that is more than anybody sees. */
    private static Optional<SourceFile> again(Books books, String order, Pipe pipe) {
        List<Remnant> coils = UnopenedCoils.of(books, order, pipe);
        return coils.isEmpty() && books.reservationsOf(order).isEmpty()
                ? Optional.empty()
                : Optional.of(shelf(books, order, coils));
    }

    /** The words that name this ledger to a command in any folder; none if it is not named on the command line. */
    public List<String> words() {
        if (place == null) {
            return List.of();
        }
        String where = place();
        List<String> words = new ArrayList<>(List.of("--stock", isDatabase(where) ? where : absolute(file(where))));
        if (passwordFile != null) {
            words.addAll(List.of("--password-file", absolute(passwordFile)));
        }
        return words;
    }

    /** What the ledger is called on a screen: the name of its file, or the database; no password. */
    public String title() {
        String where = place();
        return isDatabase(where) ? "PostgreSQL" : String.valueOf(file(where).getFileName());
    }

    private static String absolute(Path path) {
        return path.toAbsolutePath().normalize().toString();
    }

    /** Whether something is kept for an order. */
    public boolean keepsFor(String order) {
        return with(
                word -> {},
                ledger -> ledger.look(books -> !books.reservationsOf(order).isEmpty()));
    }

    private static SourceFile shelf(Books books, String order, List<Remnant> coils) {
        Map<Long, Long> kept = books.keptFor(order);
        StringBuilder text = new StringBuilder();
        for (Holding h : books.holdings()) {
            long others = h.reserved() - kept.getOrDefault(h.key(), 0L);
            long mm = (h.amount() - h.uncertainty() - others) / 100;
            if (h.kind().isPiece() && mm >= 1) {
                line(text, h.id(), h.product(), Long.toString(mm));
            }
        }
        coils.forEach(c -> line(text, c.id(), c.product(), Double.toString(c.length())));
        return SourceFile.made("the ledger", text.isEmpty() ? "[]\n" : "remnants:\n" + text);
    }

    private static void line(StringBuilder text, String id, String product, String mm) {
        text.append("  - {id: ").append(quoted(id)).append(", product: ").append(quoted(product));
        text.append(", length: ").append(mm).append("}\n");
    }

    private static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
