package org.runbend.export.stock;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
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
        spec.commandLine().getOut().println("A new ledger is in " + place.create());
        lines.ifPresent(this::receive);
        return 0;
    }

    private void receive(DeliveryNote.Lines lines) {
        Request request = new Request("note-" + lines.mark(), Told.user(), "");
        Outcome got = place.with(
                word -> spec.commandLine().getErr().println(word), ledger -> ledger.receive(request, lines.received()));
        spec.commandLine()
                .getOut()
                .println("Movement " + got.movement().number() + ": receive, "
                        + lines.received().size() + " lines of " + note);
    }
}
