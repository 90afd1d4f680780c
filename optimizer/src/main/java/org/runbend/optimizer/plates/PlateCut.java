package org.runbend.optimizer.plates;

import java.util.List;
import java.util.Optional;

/**
 * A stock plate and how it is cut.
 *
 * @param product part number
 * @param length of the stock plate, mm
 * @param cuts lengths cut from it, longest first, mm
 * @param offcut what is left after cuts and kerfs, mm
 * @param id of the offcut on the shelf that it is, if it is one
 */
public record PlateCut(String product, double length, List<Double> cuts, double offcut, Optional<String> id) {
    /** Copies the list. */
    public PlateCut {
        cuts = List.copyOf(cuts);
    }
}
