package org.runbend.export.stock;

import org.runbend.catalog.ledger.Books;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;

/** {@code runbend stock reorder}: what is to be ordered. */
@Command(
        name = "reorder",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "What is under its reorder point, reservations counted, and how many to order.")
final class ReorderCommand extends LookCommand {
    @Override
    LedgerLists.Both list(Books books) {
        return LedgerLists.reorder(books);
    }
}
