package org.runbend.export.stock;

import org.runbend.catalog.ledger.Books;
import org.runbend.export.data.LedgerLists;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock orders}: orders, or what was cut for one. */
@Command(
        name = "orders",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Orders and how far they are; of one order what was cut for it.")
final class OrdersCommand extends LookCommand {
    @Parameters(arity = "0..1", paramLabel = "ORDER", description = "List what was cut for this order.")
    private String order;

    @Override
    LedgerLists.Both list(Books books) {
        return order == null ? LedgerLists.orders(books) : LedgerLists.cuts(books, order);
    }
}
