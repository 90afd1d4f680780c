package org.runbend.optimizer.breakdown;

import java.util.List;
import java.util.stream.IntStream;
import org.runbend.optimizer.job.Point;

/**
 * The radius at which each corner of a drawn path can be rounded: the one wanted, or the largest that both its legs leave.
 *
 * <p>A corner that turns by t takes r tan(t / 2) of a leg. Where the two corners of a leg want more than it has, both get
 * the radius that just fills it; what a neighbour then leaves over is given back, corner by corner in order of flow, less
 * a millimetre of straight pipe between bends of different radius, as bends of equal hand that touch would be one bend.
 */
final class CornerRadii {
    private static final double BETWEEN = 1;
    /** Half of what is too short for a straight piece, mm. */
    private static final double CRUMB = 0.5;
    /** Bends whose radii differ by less, mm, may be one bend. */
    private static final double ONE_BEND = 0.01;

    private final List<Point> corners;
    private final double wanted;
    private final double[] half;
    private final double[] radius;

    private CornerRadii(List<Point> corners, double wanted) {
        this.corners = corners;
        this.wanted = wanted;
        this.half = new double[corners.size()];
        this.radius = new double[corners.size()];
        for (int i = 1; i + 1 < half.length; i++) {
            half[i] = Math.tan(Math.abs(Filleting.turn(corners.get(i - 1), corners.get(i), corners.get(i + 1))) / 2);
        }
    }

    /** Radii of the inner corners, in order, mm. */
    static List<Double> of(List<Point> corners, double wanted) {
        CornerRadii radii = new CornerRadii(corners, wanted);
        radii.share();
        radii.grow();
        radii.part();
        return IntStream.range(1, corners.size() - 1)
                .mapToObj(i -> radii.radius[i])
                .toList();
    }

    private void share() {
        for (int i = 1; i + 1 < radius.length; i++) {
            double wish = Math.min(wished(i - 1), wished(i));
            radius[i] = Math.min(Double.isFinite(wish) ? wish : wanted, Math.min(share(i - 1), share(i)));
        }
    }

    /** Bends of equal hand that would touch with different radii get a straight piece between. */
    private void part() {
        for (int i = 1; i + 2 < radius.length; i++) {
            double rest = leg(i) - radius[i] * half[i] - radius[i + 1] * half[i + 1];
            if (rest < CRUMB && Math.abs(radius[i] - radius[i + 1]) > ONE_BEND && isOneHand(i)) {
                int wider = radius[i] > radius[i + 1] ? i : i + 1;
                radius[wider] -= BETWEEN / half[wider];
            }
        }
    }

    private boolean isOneHand(int i) {
        return Filleting.turn(corners.get(i - 1), corners.get(i), corners.get(i + 1))
                        * Filleting.turn(corners.get(i), corners.get(i + 1), corners.get(i + 2))
                > 0;
    }

    /** The radius wanted, or the one that fills the leg where this differs by next to nothing, so that no crumb is left. */
    private double wished(int i) {
        return Math.abs(share(i) - wanted) < CRUMB ? share(i) : Double.POSITIVE_INFINITY;
    }

    /** The radius that fills the leg from corner i to the next if both its corners get it. */
    private double share(int i) {
        return leg(i) / (half[i] + half[i + 1]);
    }

    private double leg(int i) {
        return corners.get(i).distance(corners.get(i + 1));
    }

    private void grow() {
        for (int i = 1; i + 1 < radius.length; i++) {
            double before = leg(i - 1) - radius[i - 1] * half[i - 1] - BETWEEN;
            double after = leg(i) - radius[i + 1] * half[i + 1] - BETWEEN;
            radius[i] = Math.max(radius[i], Math.min(wanted, Math.min(before, after) / half[i]));
        }
    }
}
