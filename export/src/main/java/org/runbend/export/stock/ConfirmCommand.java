package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;

/** {@code runbend stock confirm}: an order was cut. */
@Command(
        name = "confirm",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order was cut by this plan: what was cut is gone, rests go back with an id.",
        footer = {"", "Example:", "  runbend stock confirm kit"})
final class ConfirmCommand extends KitCommand {
    @Override
    Outcome change(StockLedger ledger, KitUses uses) {
        if (!uses.failed().isEmpty()) {
            warn("order " + uses.use().order() + ": the plan failed " + String.join(", ", uses.failed()));
        }
        return ledger.confirm(request(), uses.use());
    }
}
