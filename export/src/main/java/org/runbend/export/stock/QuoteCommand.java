package org.runbend.export.stock;

import java.nio.file.Path;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code runbend stock quote}: an order was quoted. */
@Command(
        name = "quote",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "An order was quoted by this plan; nothing is kept for it.",
        footer = {"", "Example:", "  runbend stock quote kit"})
final class QuoteCommand extends ChangeCommand {
    @Parameters(paramLabel = "KIT", description = "The folder of a kit, or of a day, as plan or batch wrote it.")
    private Path kit;

    @Mixin
    private KitOption option;

    @Override
    Outcome change(StockLedger ledger) {
        KitUses uses = option.read(kit);
        return ledger.quote(request(), uses.use().order(), uses.use().fingerprint());
    }
}
