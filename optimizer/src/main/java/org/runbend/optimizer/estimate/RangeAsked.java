package org.runbend.optimizer.estimate;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.product.Rate;

/**
 * What is known before anybody has measured.
 *
 * @param catalog the catalog file
 * @param length a side of the floor, mm
 * @param width the other side, mm
 * @param pipe part number of the pipe; empty: the first one of the catalog that plates are sold for
 * @param spacing centre to centre of neighbouring runs, mm; empty: as in any job
 * @param discount asked for this order, if one is
 */
public record RangeAsked(
        Path catalog,
        double length,
        double width,
        Optional<String> pipe,
        OptionalDouble spacing,
        Optional<Rate> discount) {
    /** Tightest spacing of a job, mm. */
    public static final double LEAST_SPACING = 100;
    /** Widest spacing of a job, mm. */
    public static final double MOST_SPACING = 300;
}
