package org.runbend.export.stock;

import java.util.concurrent.Callable;
import org.runbend.catalog.ledger.Books;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What commands that only look into the ledger have in common: where it is, and the form of the list. */
abstract class LookCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Mixin
    private Form form;

    @Spec
    private CommandSpec spec;

    /** The list. */
    abstract LedgerLists.Both list(Books books);

    @Override
    public final Integer call() {
        LedgerLists.Both list =
                place.with(word -> spec.commandLine().getErr().println(word), ledger -> ledger.look(this::list));
        form.print(spec.commandLine().getOut(), list.forPeople(), list.forPrograms());
        return 0;
    }
}
