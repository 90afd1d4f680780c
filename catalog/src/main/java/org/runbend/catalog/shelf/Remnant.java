package org.runbend.catalog.shelf;

/**
 * An opened coil or an offcut on the shelf.
 *
 * @param id what is written on it
 * @param product part number of the pipe or plate it is from
 * @param length mm, as measured
 */
public record Remnant(String id, String product, double length) {
    /** Checks that the length can be told with a tape. */
    public Remnant {
        if (!(length >= 1)) {
            throw new IllegalArgumentException("remnant " + id + ": length must be at least 1 mm");
        }
    }
}
