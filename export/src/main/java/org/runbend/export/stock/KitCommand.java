package org.runbend.export.stock;

import java.nio.file.Path;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** What commands that change the ledger by the plan of an order have in common: the kit that says it. */
abstract class KitCommand extends ChangeCommand {
    @Parameters(paramLabel = "KIT", description = "The folder of a kit, or of a day, as plan or batch wrote it.")
    private Path kit;

    @Mixin
    private KitOption option;

    /** Does it with what the kit uses. */
    abstract Outcome change(StockLedger ledger, KitUses uses);

    @Override
    final Outcome change(StockLedger ledger) {
        return change(ledger, option.read(kit));
    }
}
