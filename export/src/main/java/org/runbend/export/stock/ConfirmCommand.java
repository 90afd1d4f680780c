package org.runbend.export.stock;

import java.nio.file.Path;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code runbend stock confirm}: an order was cut. */
@Command(
        name = "confirm",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order was cut by this plan: what was cut is gone, rests go back with an id.",
        footer = {"", "Example:", "  runbend stock confirm kit"})
final class ConfirmCommand extends ChangeCommand {
    @Parameters(paramLabel = "KIT", description = "The folder of a kit, or of a day, as plan or batch wrote it.")
    private Path kit;

    @Mixin
    private KitOption option;

    @Override
    Outcome change(StockLedger ledger) {
        KitUses uses = option.read(kit);
        if (!uses.failed().isEmpty()) {
            warn("order " + uses.use().order() + ": the plan failed " + String.join(", ", uses.failed()));
        }
        return ledger.confirm(request(), uses.use());
    }
}
