package org.runbend.catalog.shelf;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The shelf at the moment of planning.
 *
 * @param remnants opened coils and offcuts, each with its own id
 */
public record Shelf(List<Remnant> remnants) {
    /** A shelf with nothing on it. */
    public static final Shelf EMPTY = new Shelf(List.of());

    /** Checks that no id stands twice. */
    public Shelf {
        remnants = List.copyOf(remnants);
        Set<String> seen = new HashSet<>();
        for (Remnant r : remnants) {
            if (!seen.add(r.id())) {
                throw new IllegalArgumentException("id " + r.id() + " stands twice on the shelf");
            }
        }
    }

    /** What lies there of a product, in the order of the shelf file. */
    public List<Remnant> of(String product) {
        return remnants.stream().filter(r -> r.product().equals(product)).toList();
    }
}
