package org.runbend.optimizer.boards;

import java.util.List;
import org.runbend.optimizer.boards.BoardsPlan.Joint;

/**
 * Joints of boards that were cut before, which others are to lie on.
 *
 * @param joints where they lay; none if nothing is held
 * @param exact whether a joint may lie only where one of them lay, else anywhere along their lines
 */
record HeldJoints(List<Joint> joints, boolean exact) {
    /** Joints may lie where they like. */
    static final HeldJoints NONE = new HeldJoints(List.of(), false);

    private static final double ON_LINE = 0.01;

    /** Whether there are some. */
    boolean any() {
        return !joints.isEmpty();
    }

    /** The lines of those of a direction, x or y. */
    List<Double> lines(boolean upright) {
        return joints.stream()
                .filter(j -> PartMaking.isUpright(j) == upright)
                .map(j -> across(j, upright))
                .toList();
    }

    /** Whether a joint from a to b along a line lies where some lay, or not more than so far beyond their ends. */
    boolean allow(boolean upright, double at, double a, double b, double beyond) {
        if (!exact || joints.isEmpty()) {
            return true;
        }
        double reached = a;
        boolean further = true;
        while (further && reached < b) {
            double here = reached;
            reached = joints.stream()
                    .filter(j -> PartMaking.isUpright(j) == upright && Math.abs(across(j, upright) - at) < ON_LINE)
                    .filter(j -> low(j, upright) - beyond <= here)
                    .mapToDouble(j -> high(j, upright) + beyond)
                    .max()
                    .orElse(here);
            further = reached > here;
        }
        return reached >= b;
    }

    private static double across(Joint j, boolean upright) {
        return upright ? j.from().x() : j.from().y();
    }

    private static double low(Joint j, boolean upright) {
        return upright ? Math.min(j.from().y(), j.to().y()) : Math.min(j.from().x(), j.to().x());
    }

    private static double high(Joint j, boolean upright) {
        return upright ? Math.max(j.from().y(), j.to().y()) : Math.max(j.from().x(), j.to().x());
    }
}
