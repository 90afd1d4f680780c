package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.job.Point;

/** What the reader of job files would say of a region, for those who write job files. */
public final class RegionCheck {
    private RegionCheck() {}

    /**
     * A side of a region as it is written: straight to a point, or an arc through one point to another.
     *
     * @param through a point of the arc, empty for a straight side
     * @param to where it ends
     */
    public record Side(Optional<Point> through, Point to) {}

    /**
     * Why no region has these sides; empty if one has.
     *
     * @param sides in order, the first one a point; one that leads back to it may end the list
     */
    public static Optional<String> faultOf(List<Side> sides) {
        List<Point> corners = new ArrayList<>();
        for (Side side : sides) {
            if (side.through().isEmpty()) {
                corners.add(side.to());
                continue;
            }
            Optional<Arc> arc = corners.isEmpty()
                    ? Optional.empty()
                    : Arc.of(corners.get(corners.size() - 1), side.through().get(), side.to());
            if (arc.isEmpty()) {
                return Optional.of("has an arc that is none");
            }
            corners.addAll(arc.get().chords(side.to()));
        }
        if (Math.max(sides.size(), corners.size()) > Outline.MOST_CORNERS) {
            return Optional.of("has more than " + Outline.MOST_CORNERS + " corners");
        }
        return FloorRules.faultOf(Outline.unclosed(corners));
    }
}
