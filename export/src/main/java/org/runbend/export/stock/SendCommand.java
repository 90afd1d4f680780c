package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock send}: an order is on its way. */
@Command(
        name = "send",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order is on its way.",
        footer = {"", "Example:", "  runbend stock send HF-1042"})
final class SendCommand extends ChangeCommand {
    @Parameters(paramLabel = "ORDER", description = "The order's number.")
    private String order;

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.send(request(), order);
    }
}
