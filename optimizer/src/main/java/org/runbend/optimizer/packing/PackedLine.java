package org.runbend.optimizer.packing;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.PackedSize;

/**
 * What is taken from one place of the shelves.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param quantity how many
 * @param unit what one of it is
 * @param weight of one, kg
 * @param place where it lies, if the catalog says it
 * @param instead part numbers of what may go into the box in its place
 * @param size of one as it is packed, if it is known; of plates cut from stock the whole bundle's
 * @param bundle whether {@code size} is that of all together
 */
public record PackedLine(
        String sku,
        String name,
        long quantity,
        String unit,
        double weight,
        Optional<String> place,
        List<String> instead,
        Optional<PackedSize> size,
        boolean bundle) {
    /** Copies the list. */
    public PackedLine {
        instead = List.copyOf(instead);
    }

    /** kg of all. */
    public double sum() {
        return weight * quantity;
    }

    /** Room that all take, mm3; 0 where the size is not known. */
    double volume() {
        return size.map(PackedSize::volume).orElse(0.0) * (bundle ? 1 : quantity);
    }
}
