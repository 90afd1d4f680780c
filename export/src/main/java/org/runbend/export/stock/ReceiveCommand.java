package org.runbend.export.stock;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.Received;
import org.runbend.catalog.ledger.StockLedger;
import org.runbend.export.data.DeliveryNote;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code runbend stock receive}: goods came. */
@Command(
        name = "receive",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Goods came: one kind, or all lines of a delivery note.",
        footer = {
            "",
            "Examples:",
            "  runbend stock receive coil PX-16 50m 4 --batch 2402",
            "  runbend stock receive plate SP-1 1200 100",
            "  runbend stock receive item CL-16 500",
            "  runbend stock receive opened PX-16 26.4m --id C7",
            "  runbend stock receive --note delivery.csv"
        })
final class ReceiveCommand extends ChangeCommand {
    @Parameters(
            arity = "0..4",
            paramLabel = "WHAT",
            description = "KIND PRODUCT [LENGTH] [QUANTITY]; kinds: coil, plate, board, item, opened (coil), offcut.")
    private List<String> what = List.of();

    @Option(
            names = "--note",
            paramLabel = "FILE.csv",
            description = "A delivery note: columns kind, product, length, quantity, batch, id, label, uncertainty.")
    private Path note;

    @Option(names = "--batch", paramLabel = "NUMBER", description = "Batch number.")
    private String batch = "";

    @Option(names = "--id", paramLabel = "ID", description = "What is written on a piece that has an id already.")
    private String id;

    @Option(names = "--label", paramLabel = "TEXT", description = "What else is written on a piece.")
    private String label = "";

    private String noteId = "";

    @Override
    String ownId() {
        return noteId.isEmpty() ? super.ownId() : noteId;
    }

    @Override
    Outcome change(StockLedger ledger) {
        if (note != null) {
            if (!what.isEmpty() || id != null || !batch.isEmpty() || !label.isEmpty()) {
                throw usage("--note names everything: give nothing beside it");
            }
            DeliveryNote.Lines lines = DeliveryNote.read(note);
            noteId = "note-" + lines.mark(); // a note that is read twice came once
            return ledger.receive(request(), lines.received());
        }
        return ledger.receive(request(), List.of(received()));
    }

    private Received received() {
        if (what.size() < 3) {
            throw usage("what came? KIND PRODUCT [LENGTH] [QUANTITY], or --note FILE.csv");
        }
        Kind kind = DeliveryNote.kind(what.get(0));
        int wanted = kind.hasLength() && !kind.isPiece() ? 4 : 3;
        if (what.size() != wanted) {
            throw usage(kind.words() + ": give PRODUCT" + (kind.hasLength() ? " LENGTH" : "")
                    + (kind.isPiece() ? "" : " QUANTITY"));
        }
        long length = kind.hasLength() ? DeliveryNote.length(what.get(2), "length") : 0;
        long amount = kind.isPiece() ? length : DeliveryNote.whole(what.get(wanted - 1), "quantity");
        return new Received(
                new Received.Thing(
                        kind,
                        Optional.ofNullable(id),
                        what.get(1).strip(),
                        kind.isPiece() ? 0 : length,
                        batch.strip(),
                        label.strip()),
                amount,
                Optional.empty());
    }
}
