package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code runbend stock return}: an order came back. */
@Command(
        name = "return",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order came back: its pieces go on the shelf with new ids.",
        footer = {"", "Example:", "  runbend stock return HF-1042"})
final class ReturnCommand extends ChangeCommand {
    @Parameters(paramLabel = "ORDER", description = "The order's number.")
    private String order;

    @Mixin
    private KitOption option;

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.takeBack(request(), order, option.keeping());
    }
}
