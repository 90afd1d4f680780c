package org.runbend.export.stock;

import java.nio.file.Path;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.export.data.DeliveryNote;
import org.runbend.export.data.KitUses;
import picocli.CommandLine.Option;

/** From which length on rests are kept, and the kit that is meant. */
public final class KitOption {
    @Option(
            names = "--keep-pipe",
            paramLabel = "LENGTH",
            description = "Rests of pipe are kept from here on; default 3 m.")
    private String pipe;

    @Option(
            names = "--keep-plate",
            paramLabel = "LENGTH",
            description = "Rests of plates are kept from here on; default 150 mm.")
    private String plate;

    /** From which length on rests are kept. */
    public Keeping keeping() {
        return new Keeping(
                pipe == null ? Keeping.USUAL.coil() : DeliveryNote.length(pipe, "--keep-pipe"),
                plate == null ? Keeping.USUAL.plate() : DeliveryNote.length(plate, "--keep-plate"));
    }

    KitUses read(Path kit) {
        return KitUses.read(kit, keeping());
    }
}
