package org.runbend.export.stock;

import org.runbend.catalog.ledger.Books;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock history}: every movement. */
@Command(
        name = "history",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Every movement: when, who, what and why.")
final class HistoryCommand extends LookCommand {
    @Parameters(arity = "0..1", paramLabel = "OF", description = "Only movements of this order, piece or product.")
    private String of;

    @Override
    LedgerLists.Both list(Books books) {
        return LedgerLists.history(books, of == null ? "" : of);
    }
}
