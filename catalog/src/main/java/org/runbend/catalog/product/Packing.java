package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a workshop packs: where parts lie on its shelves, its cartons, what its carrier takes, its sheets of labels.
 *
 * @param parts what is known of parts beside what they are
 * @param cartons by volume, smallest first
 * @param carrier the carrier's limits, if the workshop says so
 * @param labels the sheets of labels
 */
public record Packing(List<Part> parts, List<Carton> cartons, Optional<Carrier> carrier, LabelSheet labels) {
    private static final double SAME = 0.01;

    /** A workshop that says nothing of it. */
    public static final Packing USUAL = new Packing(List.of(), List.of(), Optional.empty(), LabelSheet.USUAL);

    /** Copies the lists and sorts the cartons. */
    public Packing {
        parts = List.copyOf(parts);
        cartons = cartons.stream()
                .sorted(Comparator.comparingDouble((Carton c) -> c.inside().volume()))
                .toList();
    }

    /**
     * A part on the shelf.
     *
     * @param sku part number
     * @param length of the coil or stock plate meant, mm; without it all of them
     * @param place where it lies on the shelves
     * @param size of one as it is packed
     * @param instead part numbers of what may go into the box in its place
     */
    public record Part(
            String sku,
            OptionalDouble length,
            Optional<String> place,
            Optional<PackedSize> size,
            List<String> instead) {
        /** Copies the list. */
        public Part {
            instead = List.copyOf(instead);
        }

        private boolean isOf(String number, double mm) {
            return sku.equals(number) && (length.isEmpty() || Math.abs(length.getAsDouble() - mm) < SAME);
        }
    }

    /**
     * A carton.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param inside its clear sides
     * @param weight empty, kg
     * @param most what may lie in it, kg
     */
    public record Carton(String sku, String name, PackedSize inside, double weight, double most) {
        /** Checks the weights. */
        public Carton {
            Require.that(weight >= 0, "carton %s: weight must not be negative", sku);
            Require.that(most > 0, "carton %s: most (%s kg) must be over 0", sku, most);
        }
    }

    /**
     * What a carrier takes as one parcel.
     *
     * @param weight kg
     * @param length longest side, mm
     * @param girth longest side and the way round the other two, mm (common practice of parcel services)
     */
    public record Carrier(double weight, double length, double girth) {
        /** Checks that something can be sent. */
        public Carrier {
            Require.that(weight > 0 && length > 0 && girth > 0, "carrier: weight, length and girth must be over 0");
        }

        /** Whether a parcel may be sent. */
        public boolean takes(PackedSize size, double kilograms) {
            List<Double> sides = size.sides();
            return kilograms <= weight
                    && sides.get(0) <= length
                    && sides.get(0) + 2 * (sides.get(1) + sides.get(2)) <= girth;
        }
    }

    /** Where a part lies on the shelves, the coil or plate of a length (mm) where lengths lie apart, if it is known. */
    public Optional<String> place(String sku, double length) {
        return parts.stream()
                .filter(p -> p.isOf(sku, length))
                .flatMap(p -> p.place().stream())
                .findFirst();
    }

    /** Size of one of a part as it is packed, of the coil or plate of a length where sizes differ, if it is known. */
    public Optional<PackedSize> size(String sku, double length) {
        return parts.stream()
                .filter(p -> p.isOf(sku, length))
                .flatMap(p -> p.size().stream())
                .findFirst();
    }

    /** Part numbers of what may go into the box in its place. */
    public List<String> instead(String sku) {
        return parts.stream()
                .filter(p -> p.sku().equals(sku))
                .flatMap(p -> p.instead().stream())
                .distinct()
                .toList();
    }
}
