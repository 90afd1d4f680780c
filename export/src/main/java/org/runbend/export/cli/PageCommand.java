package org.runbend.export.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.runbend.export.page.Limits;
import org.runbend.export.page.PageServer;
import org.runbend.export.page.StockAccess;
import org.runbend.export.stock.KitOption;
import org.runbend.export.stock.LedgerPlace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend page}: serves the local page until it is ended, or nobody has used it for an hour. */
@Command(
        name = "page",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Opens a page on this machine to draw a floor, see its loop and take the kit.",
        footer = {
            "",
            "Examples:",
            "  runbend page examples",
            "  runbend page examples --stock shelf.db   (orders and shelf too)"
        })
final class PageCommand implements Callable<Integer> {
    private static final int HIGHEST_PORT = 65535;
    private static final int SECONDS = 60;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FOLDER",
            arity = "0..1",
            description = "Where job files and catalogs lie; default: the folder you are in.")
    private Path folder = Path.of("");

    @Option(names = "--port", paramLabel = "N", description = "The port to listen on; default: a free one.")
    private int port;

    @Option(names = "--no-browser", description = "Print the address, do not open a browser.")
    private boolean noBrowser;

    @Mixin
    private LedgerPlace stock;

    @Mixin
    private KitOption rests;

    @Option(names = "--drafts", hidden = true, paramLabel = "DIR")
    private Path drafts = Path.of(System.getProperty("user.home"), ".cache", "runbend", "drafts");

    @Option(names = "--idle", hidden = true, paramLabel = "SECONDS")
    private long idle = Limits.usual().idle().toSeconds();

    @Option(names = "--longest", hidden = true, paramLabel = "SECONDS")
    private long longest = Limits.usual().time().toSeconds();

    @Option(names = "--cold", hidden = true)
    private boolean cold;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        if (!Files.isDirectory(folder)) {
            throw usage(folder + ": no such folder");
        }
        if (port < 0 || port > HIGHEST_PORT) {
            throw usage("--port " + port + ": a port is a number from 1 to " + HIGHEST_PORT);
        }
        Limits limits = Limits.usual().withIdle(Duration.ofSeconds(idle)).withTime(Duration.ofSeconds(longest));
        ledger().ifPresent(l ->
                l.place().with(spec.commandLine().getErr()::println, opened -> opened)); // refused now, not later
        limits = cold ? limits.withoutAhead() : limits;
        try (PageServer server = new PageServer(folder, drafts, port, limits, new DrawnLoops(), child(), ledger())) {
            Runtime.getRuntime().addShutdownHook(new Thread(server::close, "end-page"));
            open(server, out);
            if (server.await()) {
                out.println("Nobody used the page for "
                        + (idle < SECONDS ? idle + " s" : idle / SECONDS + " min")
                        + ", so it has ended. Drafts are kept: start runbend page again.");
            }
            return 0;
        } catch (IOException e) {
            throw usage(port == 0 ? "no port of this machine is free" : "--port " + port + ": is in use, leave it out");
        }
    }

    private ParameterException usage(String text) {
        return new ParameterException(spec.commandLine(), text);
    }

    private void open(PageServer server, PrintWriter out) throws IOException {
        if (noBrowser) {
            out.println("Open " + server.addressWithToken());
        } else {
            Path way = server.wayIn();
            boolean opened = opened(way);
            out.println(
                    opened
                            ? "Opening the page in your browser; it stays at " + server.address()
                            : "No browser could be opened here: open the file " + way + " with one");
        }
        out.println("End it with Ctrl+C.");
    }

    /** The system's own way to open a file. */
    private static boolean opened(Path file) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> command = system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", file.toString())
                : List.of(system.contains("mac") ? "open" : "xdg-open", file.toString());
        try {
            new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /** The ledger, if one is named. */
    private Optional<StockAccess> ledger() {
        return stock.isNamed()
                ? Optional.of(new StockAccess(stock, rests.keeping(), process("batch")))
                : Optional.empty();
    }

    /** What a process of a plan is started with. */
    private static List<String> child() {
        return process(PagePlanCommand.NAME);
    }

    private static List<String> process(String command) {
        return List.of("-cp", System.getProperty("java.class.path"), Runbend.class.getName(), command);
    }
}
