package org.runbend.export.stock;

import java.util.concurrent.Callable;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend stock orders}: orders, or what was cut for one. */
@Command(
        name = "orders",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Orders and how far they are; of one order what was cut for it.")
final class OrdersCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Mixin
    private Form form;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "ORDER", description = "List what was cut for this order.")
    private String order;

    @Override
    public Integer call() {
        LedgerLists.Both list = place.with(
                word -> spec.commandLine().getErr().println(word),
                ledger -> ledger.look(
                        books -> order == null ? LedgerLists.orders(books) : LedgerLists.cuts(books, order)));
        form.print(spec.commandLine().getOut(), list.forPeople(), list.forPrograms());
        return 0;
    }
}
