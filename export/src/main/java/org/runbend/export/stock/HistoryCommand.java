package org.runbend.export.stock;

import java.util.concurrent.Callable;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend stock history}: every movement. */
@Command(
        name = "history",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Every movement: when, who, what and why.")
final class HistoryCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Mixin
    private Form form;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "OF", description = "Only movements of this order, piece or product.")
    private String of;

    @Override
    public Integer call() {
        LedgerLists.Both list = place.with(
                word -> spec.commandLine().getErr().println(word),
                ledger -> ledger.look(books -> LedgerLists.history(books, of == null ? "" : of)));
        form.print(spec.commandLine().getOut(), list.forPeople(), list.forPrograms());
        return 0;
    }
}
