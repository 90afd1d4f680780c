package org.runbend.export.stock;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Request;
import org.runbend.export.data.DeliveryNote;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code runbend stock init}: makes a new, empty ledger. */
@Command(
        name = "init",
        mixinStandardHelpOptions = true,
        description = "Makes a new ledger: empty, or with what a delivery note says is there.",
        footer = {
            "",
            "Examples:",
            "  runbend stock init --stock shelf.db",
            "  runbend stock init --stock shelf.db --note examples/day/delivery.csv"
        })
final class InitCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Option(
            names = "--note",
            paramLabel = "FILE.csv",
            description = "What is there from the beginning, as for 'stock receive --note'.")
    private Path note;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        Optional<DeliveryNote.Lines> lines =
                Optional.ofNullable(note).map(DeliveryNote::read); // a bad note makes no ledger
        try {
            spec.commandLine().getOut().println("A new ledger is in " + place.create());
        } catch (LedgerRefused e) {
            if (!isBegun(lines)) {
                throw e;
            }
            spec.commandLine()
                    .getOut()
                    .println("The ledger is there, made by an init before, and nothing has moved since");
        }
        lines.ifPresent(this::receive);
        return 0;
    }

    /** Whether there is a ledger that holds nothing but, at most, the note: what an init that was ended in its middle leaves. */
    private boolean isBegun(Optional<DeliveryNote.Lines> lines) {
        Optional<String> request = lines.map(InitCommand::request);
        try {
            return place.with(
                    word -> {},
                    ledger -> ledger.look(books -> books.movements().stream()
                            .allMatch(m -> request.filter(m.request()::equals).isPresent())));
        } catch (LedgerRefused e) {
            return false; // what is there is no ledger
        }
    }

    private static String request(DeliveryNote.Lines lines) {
        return "note-" + lines.mark();
    }

    private void receive(DeliveryNote.Lines lines) {
        Request request = new Request(request(lines), Told.user(), "");
        Outcome got = place.with(
                word -> spec.commandLine().getErr().println(word), ledger -> ledger.receive(request, lines.received()));
        spec.commandLine()
                .getOut()
                .println("Movement " + got.movement().number() + ": receive, "
                        + lines.received().size() + " lines of " + note);
    }
}
