package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock release}: nothing is kept for an order any more. */
@Command(
        name = "release",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Gives back what is kept for an order.",
        footer = {"", "Example:", "  runbend stock release HF-1042"})
final class ReleaseCommand extends ChangeCommand {
    @Parameters(paramLabel = "ORDER", description = "The order's number.")
    private String order;

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.release(request(), order);
    }
}
