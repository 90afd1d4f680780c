package org.runbend.export.stock;

import org.runbend.catalog.ledger.Books;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;

/** {@code runbend stock list}: what is on the shelf. */
@Command(
        name = "list",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "What is on the shelf, what of it is free, and for whom the rest is kept.")
final class ListCommand extends LookCommand {
    @Override
    LedgerLists.Both list(Books books) {
        return LedgerLists.stock(books);
    }
}
