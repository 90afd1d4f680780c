package org.runbend.export.stock;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.DeliveryNote;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code runbend stock spoil}: pieces were cut wrong; they alone are nested again. */
@Command(
        name = "spoil",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Pieces were cut wrong: they alone are nested again, from what is on the shelf.",
        footer = {
            "",
            "Examples:",
            "  runbend stock orders HF-1042         (numbers of its cuts)",
            "  runbend stock spoil kit 12/3",
            "  runbend stock spoil kit 12/3=400mm   (400 mm of it can still be used)"
        })
final class SpoilCommand extends ChangeCommand {
    @Parameters(index = "0", paramLabel = "KIT", description = "The folder of the kit that was cut.")
    private Path kit;

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "CUT[=REST]",
            description = "Spoiled cuts, and what is left of them.")
    private List<String> cuts;

    @Mixin
    private KitOption option;

    @Override
    Outcome change(StockLedger ledger) {
        KitUses uses = option.read(kit);
        List<String> names = new ArrayList<>();
        List<Long> rests = new ArrayList<>();
        for (String cut : cuts) {
            int at = cut.indexOf('=');
            names.add(at < 0 ? cut : cut.substring(0, at));
            rests.add(at < 0 ? 0 : DeliveryNote.length(cut.substring(at + 1), "what is left"));
        }
        return new Spoiling(uses, names, rests, option.keeping()).move(ledger, request());
    }
}
