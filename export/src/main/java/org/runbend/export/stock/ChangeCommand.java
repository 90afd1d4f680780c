package org.runbend.export.stock;

import java.io.PrintWriter;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What commands that change the ledger have in common: a request with its id, and what is told of the movement. */
abstract class ChangeCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--request",
            paramLabel = "ID",
            description = "Id of this request: the same id again changes nothing, so that it can be sent twice.")
    private String request;

    @Option(names = "--who", paramLabel = "NAME", description = "Who does it; default: $RUNBEND_WHO, or the user.")
    private String who;

    @Option(names = "--why", paramLabel = "TEXT", description = "Why, in a few words.")
    private String why;

    @Option(names = "--json", description = "Tell what came of it as JSON.")
    private boolean json;

    /** Does it. */
    abstract Outcome change(StockLedger ledger);

    /** The id of a request that names none. */
    String ownId() {
        return UUID.randomUUID().toString();
    }

    final Request request() {
        String user = who != null ? who : System.getenv().getOrDefault("RUNBEND_WHO", System.getProperty("user.name"));
        return new Request(request != null ? request : ownId(), user.strip(), why == null ? "" : why.strip());
    }

    final PrintWriter out() {
        return spec.commandLine().getOut();
    }

    final void warn(String text) {
        spec.commandLine().getErr().println(text);
    }

    /** A fault in how the command was called. */
    final ParameterException usage(String text) {
        return new ParameterException(spec.commandLine(), text);
    }

    @Override
    public final Integer call() {
        Outcome outcome = place.with(this::warn, this::change);
        if (json) {
            out().print(LedgerLists.outcome(outcome));
            out().flush();
            return 0;
        }
        if (outcome.isNew()) {
            out().println(title(outcome.movement()));
        }
        for (Holding made : outcome.isNew() ? outcome.made() : List.<Holding>of()) {
            if (made.amount() > 0) {
                out().println("  on the shelf: " + made.spec().words() + ", " + Held.length(made.amount()) + ": write "
                        + made.id() + " on it");
            }
        }
        outcome.notes().forEach(note -> out().println((outcome.isNew() ? "  " : "") + note));
        return 0;
    }

    private static String title(Movement m) {
        String undone = m.undoes().isPresent() ? " of movement " + m.undoes().getAsLong() : "";
        return "Movement " + m.number() + ": " + m.kind().word() + undone
                + (m.order().isEmpty() ? "" : " " + m.order());
    }
}
