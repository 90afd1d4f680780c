package org.runbend.export.stock;

import java.util.concurrent.Callable;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code runbend stock list}: what is on the shelf. */
@Command(
        name = "list",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "What is on the shelf, what of it is free, and for whom the rest is kept.")
final class ListCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Mixin
    private Form form;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        LedgerLists.Both list = place.with(
                word -> spec.commandLine().getErr().println(word), ledger -> ledger.look(LedgerLists::stock));
        form.print(spec.commandLine().getOut(), list.forPeople(), list.forPrograms());
        return 0;
    }
}
