package org.runbend.optimizer.verify;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;

/** What a verifier found, in the order of finding. */
final class Findings {
    private final List<Finding> found = new ArrayList<>();

    /** Notes the rule with its places and numbers unless it holds. */
    void unless(boolean holds, String rule, Object... about) {
        if (!holds) {
            found.add(new Finding(rule, List.of(about)));
        }
    }

    /** Notes what another verifier found. */
    void addAll(List<Finding> others) {
        found.addAll(others);
    }

    boolean isEmpty() {
        return found.isEmpty();
    }

    /** Where a line comes nearest to a shape, or meets it first. */
    static Finding.Spot at(Geometry line, Geometry shape) {
        Coordinate place = DistanceOp.nearestPoints(line, shape)[0];
        return new Finding.Spot(place.x, place.y);
    }

    List<Finding> all() {
        return List.copyOf(found);
    }
}
