package org.runbend.catalog.shelf;

/**
 * An opened coil or an offcut on the shelf.
 *
 * @param id what is written on it
 * @param product part number of the pipe or plate it is from
 * @param length mm, as measured
 */
public record Remnant(String id, String product, double length) {
    /** Checks that the length is positive. */
    public Remnant {
        if (!(length > 0)) {
            throw new IllegalArgumentException("remnant " + id + ": length must be over 0 mm");
        }
    }
}
