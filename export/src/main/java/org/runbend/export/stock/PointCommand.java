package org.runbend.export.stock;

import java.util.List;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.ReorderPoint;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.DeliveryNote;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code runbend stock point}: when to order anew. */
@Command(
        name = "point",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Sets under which number a product is ordered anew, and how it is ordered.",
        footer = {"", "Example:", "  runbend stock point coil PX-16 50m --at 4 --pack 2 --least 4 --days 10"})
final class PointCommand extends ChangeCommand {
    @Parameters(arity = "2..3", paramLabel = "WHAT", description = "KIND PRODUCT [LENGTH].")
    private List<String> what;

    @Option(names = "--at", paramLabel = "N", required = true, description = "Order when fewer are free.")
    private long at;

    @Option(names = "--pack", paramLabel = "N", description = "How many come in a pack; default 1.")
    private long pack = 1;

    @Option(names = "--least", paramLabel = "N", description = "Least order; default 1.")
    private long least = 1;

    @Option(names = "--days", paramLabel = "N", description = "Days from order to delivery; default 0.")
    private int days;

    @Override
    Outcome change(StockLedger ledger) {
        Kind kind = DeliveryNote.kind(what.get(0));
        if (what.size() != (kind.hasLength() ? 3 : 2)) {
            throw usage(kind.words() + ": give PRODUCT" + (kind.hasLength() ? " LENGTH" : ""));
        }
        long length = kind.hasLength() ? DeliveryNote.length(what.get(2), "length") : 0;
        return ledger.reorderPoint(
                request(), new ReorderPoint(kind, what.get(1).strip(), length, at, pack, least, days));
    }
}
