package org.runbend.export.stock;

import java.util.concurrent.Callable;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code runbend stock reorder}: what is to be ordered. */
@Command(
        name = "reorder",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "What is under its reorder point, reservations counted, and how many to order.")
final class ReorderCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Mixin
    private Form form;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        LedgerLists.Both list = place.with(
                word -> spec.commandLine().getErr().println(word), ledger -> ledger.look(LedgerLists::reorder));
        form.print(spec.commandLine().getOut(), list.forPeople(), list.forPrograms());
        return 0;
    }
}
