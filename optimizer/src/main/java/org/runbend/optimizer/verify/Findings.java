package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;

/** What a verifier found, one sentence each, in the order of finding. Numbers print the same in every country. */
final class Findings {
    private final List<String> sentences = new ArrayList<>();

    /** Notes a formatted sentence unless the rule holds. */
    void unless(boolean rule, String format, Object... values) {
        if (!rule) {
            sentences.add(String.format(Locale.ROOT, format, values));
        }
    }

    /** Where a line comes nearest to a shape, or meets it first, as the end of a sentence. */
    static String at(Geometry line, Geometry shape) {
        Coordinate place = DistanceOp.nearestPoints(line, shape)[0];
        return String.format(Locale.ROOT, ", at (%.1f, %.1f)", place.x, place.y);
    }

    List<String> sentences() {
        return List.copyOf(sentences);
    }
}
