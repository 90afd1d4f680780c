package org.runbend.catalog.product;

import java.util.List;

/**
 * A kit that the workshop keeps ready packed. Lengths in mm, amounts in minor units of the catalog's currency.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param cost what the workshop pays
 * @param price what the customer pays
 * @param coils coils of pipe in it
 * @param plates stock plates in it
 * @param parts items and pumps in it
 */
public record StandardKit(
        String sku, String name, long cost, long price, List<Coils> coils, List<Plates> plates, List<Parts> parts) {
    /** Checks that something is in it and copies the lists. */
    public StandardKit {
        Require.that(cost >= 0 && price >= 0, "kit %s: cost and price must not be negative", sku);
        coils = List.copyOf(coils);
        plates = List.copyOf(plates);
        parts = List.copyOf(parts);
        Require.that(
                !(coils.isEmpty() && plates.isEmpty() && parts.isEmpty()),
                "kit %s: nothing is in it: give coils, plates or items",
                sku);
    }

    /**
     * Coils of one length.
     *
     * @param pipe part number of the pipe
     * @param length of each, mm
     * @param count how many
     */
    public record Coils(String pipe, double length, int count) {
        /** Checks that the length can be told with a tape. */
        public Coils {
            Require.that(length >= 1 && length <= 1_000_000, "coil length %s mm: must be 1 to 1000000 mm", length);
        }
    }

    /**
     * Stock plates of one length.
     *
     * @param plate part number of the plate
     * @param length of each, mm
     * @param count how many
     */
    public record Plates(String plate, double length, int count) {
        /** Checks that the length can be told with a tape. */
        public Plates {
            Require.that(
                    length >= 1 && length <= PlateStock.LONGEST, "plate length %s mm: must be 1 to 20000 mm", length);
        }
    }

    /**
     * Equal items or pumps.
     *
     * @param sku part number
     * @param count how many
     */
    public record Parts(String sku, int count) {}
}
