package org.runbend.export.stock;

import java.util.List;
import java.util.Locale;
import org.runbend.catalog.ledger.Counted;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.DeliveryNote;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code runbend stock count}: a stock-take. */
@Command(
        name = "count",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "A stock-take: what was counted is true, the difference is a movement.",
        footer = {
            "",
            "Examples:",
            "  runbend stock count coil PX-16 50m 3 --batch 2402",
            "  runbend stock count item CL-16 480",
            "  runbend stock count piece C7 17.5m",
            "  runbend stock count piece O3 0   (it is gone)"
        })
final class CountCommand extends ChangeCommand {
    @Parameters(
            arity = "3..4",
            paramLabel = "WHAT",
            description = "KIND PRODUCT [LENGTH] QUANTITY, or: piece ID LENGTH.")
    private List<String> what;

    @Option(names = "--batch", paramLabel = "NUMBER", description = "Batch number.")
    private String batch = "";

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.count(request(), List.of(counted()));
    }

    private Counted counted() {
        if (what.get(0).toLowerCase(Locale.ROOT).equals("piece")) {
            if (what.size() != 3) {
                throw usage("a piece: give ID LENGTH");
            }
            return Counted.piece(what.get(1), DeliveryNote.length(what.get(2), "length"));
        }
        Kind kind = DeliveryNote.kind(what.get(0));
        if (kind.isPiece()) {
            throw usage("a piece is counted by its id: piece ID LENGTH");
        }
        if (what.size() != (kind.hasLength() ? 4 : 3)) {
            throw usage(kind.words() + ": give PRODUCT" + (kind.hasLength() ? " LENGTH" : "") + " QUANTITY");
        }
        long length = kind.hasLength() ? DeliveryNote.length(what.get(2), "length") : 0;
        return Counted.lot(
                Holding.Spec.lot(kind, what.get(1).strip(), length, batch.strip()),
                DeliveryNote.whole(what.get(what.size() - 1), "quantity"));
    }
}
