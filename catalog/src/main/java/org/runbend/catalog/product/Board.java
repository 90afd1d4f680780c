package org.runbend.catalog.product;

import java.util.List;

/**
 * A sheet that the floor is made of: cover or insulation.
 *
 * @param sku name by which a job calls it, such as birch-ply
 * @param name what a person calls it
 * @param kind what it serves for
 * @param conductivity thermal conductivity, W/(m K)
 * @param density kg/m3
 * @param sheets sheets on offer
 */
public record Board(String sku, String name, Kind kind, double conductivity, double density, List<BoardSheet> sheets) {
    /** What a board serves for. */
    public enum Kind {
        /** Lies over the pipe. */
        COVER,
        /** Lies under and beside the pipe. */
        INSULATION
    }

    /**
     * A sheet on offer.
     *
     * @param length mm
     * @param width mm
     * @param thickness mm
     * @param cost minor units
     * @param price minor units
     */
    public record BoardSheet(double length, double width, double thickness, long cost, long price) {
        /** Checks that sizes are positive. */
        public BoardSheet {
            Require.that(length > 0 && width > 0 && thickness > 0, "board sheet: sizes must be over 0 mm");
            Require.that(cost >= 0 && price >= 0, "board sheet: cost and price must not be negative");
        }
    }

    /** Checks conductivity and density. */
    public Board {
        Require.that(
                conductivity > 0 && conductivity < 10,
                "board %s: conductivity %s must be over 0 and under 10",
                sku,
                conductivity);
        Require.that(density > 0, "board %s: density must be over 0", sku);
        sheets = List.copyOf(sheets);
    }
}
