package org.runbend.export.page;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.runbend.catalog.ledger.Counted;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.Received;
import org.runbend.catalog.source.SourceFile;
import org.runbend.export.data.DeliveryNote;
import org.runbend.export.data.KitUses;
import org.runbend.export.stock.Spoiling;

/** What forms of the page say of goods, as the ledger takes it. */
final class Goods {
    private Goods() {}

    /** Goods that came: {@code kind, product, length, quantity, batch, id, label}, as a line of a delivery note has them. */
    static Received received(Map<String, Object> asked) {
        return DeliveryNote.received(column -> text(asked, column));
    }

    /** A delivery note: its {@code text}, and the {@code name} of its file. */
    static DeliveryNote.Lines note(Map<String, Object> asked, Path folder) {
        String name = text(asked, "name").replaceAll("[^\\p{L}\\p{N} ._-]", "_");
        byte[] bytes = text(asked, "text").getBytes(StandardCharsets.UTF_8);
        return DeliveryNote.of(SourceFile.sent(folder.resolve(name.isEmpty() ? "note.csv" : name), bytes, folder));
    }

    /** What was counted: {@code amount} of what {@code kind, id, product, length, batch} and {@code label} name. */
    static Counted counted(Map<String, Object> asked) {
        Kind kind = Kind.of(text(asked, "kind")).orElseThrow(() -> new Refused(400, "what was counted?"));
        String amount = text(asked, "amount");
        if (kind.isPiece()) {
            return Counted.piece(text(asked, "id"), DeliveryNote.length(amount, "what is left of it,"));
        }
        long length = kind.hasLength() ? DeliveryNote.length(text(asked, "length"), "length") : 0;
        return Counted.lot(
                new Holding.Spec(kind, "", text(asked, "product"), length, text(asked, "batch"), text(asked, "label")),
                DeliveryNote.whole(amount, "number"));
    }

    /** A {@code cut} that was cut wrong, and the {@code rest} of it that can still be used. */
    static Spoiling spoiling(Map<String, Object> asked, KitUses kit, Keeping keeping) {
        String rest = text(asked, "rest");
        long left = rest.isEmpty() ? 0 : DeliveryNote.length(rest, "what can still be used,");
        return new Spoiling(kit, List.of(text(asked, "cut")), List.of(left), keeping);
    }

    private static String text(Map<String, Object> asked, String key) {
        return String.valueOf(asked.getOrDefault(key, "")).strip();
    }
}
