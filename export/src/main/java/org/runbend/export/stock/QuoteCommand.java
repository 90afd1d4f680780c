package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;

/** {@code runbend stock quote}: an order was quoted. */
@Command(
        name = "quote",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order was quoted by this plan; nothing is kept for it.",
        footer = {"", "Example:", "  runbend stock quote kit"})
final class QuoteCommand extends KitCommand {
    @Override
    Outcome change(StockLedger ledger, KitUses uses) {
        return ledger.quote(request(), uses.use().order(), uses.use().fingerprint());
    }
}
