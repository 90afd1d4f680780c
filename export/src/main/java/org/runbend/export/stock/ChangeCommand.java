package org.runbend.export.stock;

import java.io.PrintWriter;
import java.util.UUID;
import java.util.concurrent.Callable;
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
        return new Request(
                request != null ? request : ownId(),
                who != null ? who.strip() : Told.user(),
                why == null ? "" : why.strip());
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
        Told.lines(outcome).forEach(out()::println);
        return 0;
    }
}
