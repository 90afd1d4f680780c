package org.runbend.export.fuzz;

import java.util.List;

/** Shelves with opened coils and offcuts. */
final class ShelfMaker {
    private static final List<String> PRODUCTS = List.of("PX-16", "PX-12", "PX-10", "SP-1", "SP-2", "SP-12", "SP-10");

    private ShelfMaker() {}

    static String shelf(Dice dice) {
        StringBuilder text = new StringBuilder(dice.percent(50) ? "remnants:\n" : "");
        int count = dice.whole(1, 12);
        for (int i = 0; i < count; i++) {
            String product = dice.of(PRODUCTS);
            double length = product.startsWith("PX") ? dice.tenths(500, 60_000) : dice.tenths(50, 1200);
            text.append("  - {id: R")
                    .append(i)
                    .append(", product: ")
                    .append(product)
                    .append(", length: ")
                    .append(length)
                    .append("}\n");
        }
        return text.toString();
    }
}
