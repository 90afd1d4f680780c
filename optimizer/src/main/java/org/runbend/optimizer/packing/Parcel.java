package org.runbend.optimizer.packing;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Packing;

/**
 * A box with what lies in it, or a thing that travels by itself.
 *
 * @param carton the carton; empty where the catalog has none, or none that holds it
 * @param lines in packing order
 * @param sendable whether the carrier takes it; empty where the catalog names no carrier or the size is not known
 */
public record Parcel(Optional<Packing.Carton> carton, List<PackedLine> lines, Optional<Boolean> sendable) {
    /** Copies the list. */
    public Parcel {
        lines = List.copyOf(lines);
    }

    /** Weight with the carton, kg. */
    public double weight() {
        return carton.map(Packing.Carton::weight).orElse(0.0)
                + lines.stream().mapToDouble(PackedLine::sum).sum();
    }
}
