package org.runbend.catalog.product;

import java.util.List;

/**
 * A circulation pump with its curve.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param curve points of flow and head, flow rising, head falling
 * @param power electrical power, W
 * @param cost minor units of the catalog's currency
 * @param price minor units
 * @param weight kg
 */
public record Pump(String sku, String name, List<Point> curve, double power, long cost, long price, double weight) {
    /**
     * A point of the curve.
     *
     * @param flow l/min
     * @param head kPa
     */
    public record Point(double flow, double head) {}

    /** Checks that the curve rises in flow and falls in head. */
    public Pump {
        curve = List.copyOf(curve);
        Require.that(curve.size() >= 2, "pump %s: the curve needs two points or more", sku);
        Require.that(power >= 0, "pump %s: power must not be negative", sku);
        Require.that(cost >= 0 && price >= 0, "pump %s: cost and price must not be negative", sku);
        Require.that(weight >= 0, "pump %s: weight must not be negative", sku);
        for (int i = 1; i < curve.size(); i++) {
            Require.that(
                    curve.get(i).flow() > curve.get(i - 1).flow()
                            && curve.get(i).head() <= curve.get(i - 1).head(),
                    "pump %s: along the curve flow must rise and head must not (point %s)",
                    sku,
                    i + 1);
        }
    }
}
