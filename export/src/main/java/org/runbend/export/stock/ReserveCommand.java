package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;

/** {@code runbend stock reserve}: stock is kept for an order. */
@Command(
        name = "reserve",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Keeps on the shelf what the plan of an order needs.",
        footer = {"", "Example:", "  runbend stock reserve kit"})
final class ReserveCommand extends KitCommand {
    @Override
    Outcome change(StockLedger ledger, KitUses uses) {
        return KitMoves.reserve(ledger, request(), uses);
    }
}
