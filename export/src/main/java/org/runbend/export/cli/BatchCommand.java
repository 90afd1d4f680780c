package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Days;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.OrderState;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Money;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.catalog.shelf.ShelfReader;
import org.runbend.catalog.source.Unit;
import org.runbend.export.batch.DayFolder;
import org.runbend.export.batch.DayPlanning;
import org.runbend.export.batch.DaySettling;
import org.runbend.export.batch.Kits;
import org.runbend.export.batch.KnownAnswers;
import org.runbend.export.batch.OrderBook;
import org.runbend.export.batch.Shop;
import org.runbend.export.data.Day;
import org.runbend.export.data.DayKit;
import org.runbend.export.papers.PaperForm;
import org.runbend.export.relay.Relay;
import org.runbend.export.stock.KitOption;
import org.runbend.export.stock.LedgerPlace;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend batch ORDERS_DIR}: a day's orders, planned one by one and cut together. */
@Command(
        name = "batch",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Plans all orders of a folder and nests their pipe and plates together, from the shelf and what"
                + " must be bought.",
        footer = {
            "",
            "A bad order is named and left out, the others are done: exit code 1. Of a ledger, what need not be bought is",
            "reserved under the day's name; once the rest has come: runbend stock reserve DIR, then confirm DIR.",
            "Example:",
            "  runbend batch orders --stock shelf.db --out monday"
        })
final class BatchCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "ORDERS_DIR", description = "A folder of job files, one order each.")
    private Path orders;

    @Option(names = "--out", paramLabel = "DIR", description = "The folder to write; default: ORDERS_DIR-day.")
    private Path out;

    @Mixin
    private LedgerPlace stock;

    @Option(names = "--shelf", paramLabel = "FILE", description = "Opened coils and offcuts, where no ledger is kept.")
    private Path shelf;

    @Option(names = "--day", paramLabel = "NAME", description = "The day's name in the ledger; default: that of DIR.")
    private String day;

    @Option(names = "--resume", description = "Take kits that an earlier run wrote into DIR, where nothing changed.")
    private boolean resume;

    @Option(
            names = "--laid",
            paramLabel = "DIR",
            description = "Where loops are kept for other days; default: this user's cache folder.")
    private Path laid;

    @Option(
            names = "--workers",
            description =
                    "Have the floors laid by 'runbend worker' on other machines too; the ledger is a database then.")
    private boolean workers;

    @Option(names = "--quiet", description = "No progress and no summary.")
    private boolean quiet;

    @Mixin
    private KitOption rests;

    @Mixin
    private SheetOptions papers = new SheetOptions();

    private TimedProgress progress;

    @Override
    public Integer call() {
        if (workers) {
            stock.database(); // says it at once where it is none
        }
        if (shelf != null && stock.isNamed()) {
            throw new ParameterException(
                    spec.commandLine(), "--shelf and --stock both say what is at hand: give one of them");
        }
        Path name = orders.toAbsolutePath().normalize().getFileName();
        Path folder = out != null ? out : orders.resolveSibling((name == null ? "orders" : name) + "-day");
        String title = day != null
                ? day
                : Terminal.oneLine(
                        String.valueOf(folder.toAbsolutePath().normalize().getFileName()));
        Shop shop = shop(title);
        OrderBook book = OrderBook.read(orders, new DrawnLoops());
        List<String> faults = new ArrayList<>(book.faults());
        List<OrderBook.Order> read = ofOneCatalog(notCut(title, book.orders(), faults), faults).stream()
                .map(o -> new OrderBook.Order(o.file(), papers.told(o.job())))
                .toList();
        DayFolder files = new DayFolder(folder, Runbend.VERSION, papers.paper(), papers.units());
        boolean taken = files.prepare(title) && resume;
        KnownAnswers known =
                laid == null ? KnownAnswers.ofUser(Runbend.VERSION) : KnownAnswers.in(laid, Runbend.VERSION);
        List<OrderBook.Order> same = workers ? relayed(read, title, taken ? files : null, known, faults) : read;
        Kits kits = new Kits(
                files.orders(), taken, new PaperForm(papers.paper(), false, Optional.of(title)), known, this::tell);
        kits.make(same, Runtime.getRuntime().availableProcessors());
        List<DayKit> made = kits.cutFrom(shop, same);
        faults.addAll(kits.faults());
        faults.forEach(f -> spec.commandLine().getErr().println(Terminal.oneLine(f)));
        files.ofNoOrder(same)
                .forEach(n -> warn(files.orders().resolve(n) + ": is a kit of no order of this day; do not pack it"));
        if (made.isEmpty()) {
            spec.commandLine().getErr().println(Terminal.oneLine(orders + ": no order is left to be cut"));
            return Failures.BAD_INPUT;
        }
        Catalog catalog = same.get(0).job().catalog();
        DayPlanning planning = new DayPlanning(catalog, rests.keeping(), Work.silent());
        Unit unit = same.get(0).job().written().unit();
        DaySettling settling = new DaySettling(
                now -> {
                    Day nested = planning.plan(title, made, faults, now);
                    files.write(nested, unit);
                    return nested;
                },
                () -> shop(title),
                this::reserve);
        Day planned = settling.settle(shop);
        if (!quiet) {
            summary(planned, kits, folder);
        }
        return faults.isEmpty() ? 0 : 1;
    }

    /** Has floors laid by whoever has time, this process among them; the orders that were not given up. */
    private List<OrderBook.Order> relayed(
            List<OrderBook.Order> orders, String title, DayFolder resumed, KnownAnswers known, List<String> faults) {
        List<OrderBook.Order> left = orders.stream()
                .filter(o -> resumed == null || !resumed.holds(o))
                .toList();
        Map<OrderBook.Order, String> lost;
        try (Relay relay = Relay.open(stock.database(), stock.login(), Runbend.VERSION)) {
            lost = new RelayedFloors(relay, title, new DrawnLoops()).lay(left, known, this::tell);
        }
        lost.forEach((order, why) -> faults.add(order.file() + ": order " + order.number() + " was given up: " + why));
        return orders.stream().filter(o -> !lost.containsKey(o)).toList();
    }

    private boolean hasLedger() {
        return shelf == null && stock.isKnown();
    }

    private Shop shop(String title) {
        if (hasLedger()) {
            return stock.with(this::warn, ledger -> ledger.look(books -> shop(books, title)));
        }
        return Shop.of(shelf == null ? Shelf.EMPTY : ShelfReader.read(shelf));
    }

    private static Shop shop(Books books, String title) {
        OrderState state = books.order(title).state();
        if (state != OrderState.UNKNOWN && state != OrderState.QUOTED && state != OrderState.CONFIRMED) {
            throw new LedgerRefused("a day " + title + " is in the ledger and " + state.word()
                    + ": give this one another name with --day");
        }
        return Shop.of(books, title);
    }

    /** A day that needs nothing of the shelf is no movement, but for one that gives back what was kept for it before. */
    private void reserve(Day planned) {
        if (!hasLedger() || (planned.use(false).stock().isEmpty() && !stock.keepsFor(planned.name()))) {
            return;
        }
        String who = System.getenv().getOrDefault("RUNBEND_WHO", System.getProperty("user.name"));
        Request request = new Request(UUID.randomUUID().toString(), who.strip(), "batch");
        Outcome outcome = stock.with(this::warn, ledger -> ledger.reserve(request, planned.use(false)));
        if (!quiet) {
            spec.commandLine()
                    .getOut()
                    .println("Reserved under " + planned.name() + ": movement "
                            + outcome.movement().number());
        }
    }

    /** Without orders that were cut before; a day that the ledger would refuse whatever is on the shelf ends here. */
    private List<OrderBook.Order> notCut(String title, List<OrderBook.Order> orders, List<String> faults) {
        if (!hasLedger()) {
            return orders;
        }
        List<OrderBook.Order> left = new ArrayList<>();
        stock.with(
                this::warn,
                ledger -> ledger.look(books -> {
                    for (OrderBook.Order o : orders) {
                        OrderState state = books.order(o.number()).state();
                        if (state.isCut()) {
                            faults.add(o.file() + ": order " + o.number() + " is " + state.word()
                                    + " already; it is left out");
                        } else {
                            left.add(o);
                        }
                    }
                    Days.check(
                            books,
                            title,
                            left.stream().map(OrderBook.Order::number).toList());
                    return left;
                }));
        return left;
    }

    /** Costs of two catalogs cannot be held against each other. */
    private static List<OrderBook.Order> ofOneCatalog(List<OrderBook.Order> orders, List<String> faults) {
        Optional<Catalog> first = orders.stream().findFirst().map(o -> o.job().catalog());
        List<OrderBook.Order> same = new ArrayList<>();
        for (OrderBook.Order o : orders) {
            if (o.job().catalog().equals(first.orElseThrow())) {
                same.add(o);
            } else {
                faults.add(o.file() + ": order " + o.number() + " names another catalog than "
                        + orders.get(0).file() + ": put it into a batch of its own");
            }
        }
        return same;
    }

    private void tell(String order, int done, int all) {
        if (!quiet && System.getenv("TERM") != null && JobCommand.hasConsole()) {
            if (progress == null) {
                progress = new TimedProgress(spec.commandLine().getErr(), System::nanoTime);
            }
            progress.step(new Progress.Step("order " + order, done, all));
        }
    }

    private void warn(String word) {
        spec.commandLine().getErr().println(Terminal.oneLine(word));
    }

    private void summary(Day planned, Kits kits, Path folder) {
        long together = 0;
        long bound = 0;
        long alone = 0;
        for (Day.Cost c : planned.costs()) {
            together += c.together();
            bound += c.bound();
            alone += c.alone();
        }
        print(
                "%d orders, %d different floors, %d of them laid anew, %d left out",
                planned.orders().size(),
                kits.floors(),
                kits.laid(),
                planned.faults().size());
        long buy = planned.uses().stream().filter(Day.Use::isBought).count();
        print("%d coils and plates are cut, %d of them to buy", planned.uses().size(), buy);
        print(
                "Nested together: %s (proved: not under %s); order by order %s, %s saved",
                money(together, planned),
                money(bound, planned),
                money(alone, planned),
                money(alone - together, planned));
        spec.commandLine().getOut().println(Terminal.oneLine("Written to " + folder));
    }

    private static String money(long minor, Day day) {
        return new Money(minor, day.currency()).toString();
    }

    private void print(String form, Object... values) {
        spec.commandLine().getOut().println(String.format(Locale.ROOT, form, values));
    }
}
