package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock pack}: an order is in its box. */
@Command(
        name = "pack",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order is in its box.",
        footer = {"", "Example:", "  runbend stock pack HF-1042"})
final class PackCommand extends ChangeCommand {
    @Parameters(paramLabel = "ORDER", description = "The order's number.")
    private String order;

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.pack(request(), order);
    }
}
