package org.runbend.optimizer.loop.search;

import java.util.stream.IntStream;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.loop.Preference;

/**
 * The lower lexicographic levels, which decide between loops of equal objective, least first: plateable length, then corners where
 * they are unwelcome, then links off the wanted axis, as one sum over nodes and over links between two corners.
 *
 * <p>Plateable length of a closed loop, in spacings: (nodes - turns) - 2 k (turns - links between corners), k being the
 * clearance beside a bend: each of the runs of two links or more loses k at both ends. That a run may be too short for
 * its clearances is not seen here. Left-out nodes and nodes of price 0 carry nothing.
 *
 * <p>Source: lexicographic levels as one weighted sum, each weight above all that the later ones can come to: Ehrgott,
 * Multicriteria Optimization, 2005, chapter 5; from memory.
 */
final class LowerLevels {
    /** Parts of a spacing in which lengths are compared: chosen, not measured. */
    private static final long SPACING = 1000;

    private final Frontier frontier;
    private final long clearances;
    private final int offAxis;
    private final long axisWeight;
    private final long crowdWeight;
    private final long lengthWeight;

    /**
     * The levels for loops along a frontier.
     *
     * @param ranks a number above all that shall count less than a link off the axis
     */
    LowerLevels(Preference preference, Frontier frontier, long ranks) {
        this.frontier = frontier;
        this.clearances = Math.round(2 * SPACING * preference.bendClearanceInSpacings());
        this.offAxis = offAxis(preference.axis());
        this.axisWeight = ranks;
        this.crowdWeight = ranks * (2L * frontier.size() + 1);
        long crowded =
                IntStream.range(0, frontier.size()).filter(frontier::isCrowded).count();
        this.lengthWeight = crowdWeight * (crowded + 1);
    }

    private static int offAxis(Axis axis) {
        if (axis == Axis.NONE) {
            return 0;
        }
        return axis == Axis.X ? 10 : 5;
    }

    /** What a node with those legs adds, links between corners aside. */
    long node(int step, int legs) {
        return -straight(legs, frontier.price(step) > 0) * lengthWeight + withoutLength(step, legs);
    }

    /** The same where plateable length does not count. */
    long withoutLength(int step, int legs) {
        long unwelcome = Frontier.isCorner(legs) && frontier.isCrowded(step) ? crowdWeight : 0;
        return unwelcome + Integer.bitCount(legs & offAxis) * axisWeight;
    }

    private long straight(int legs, boolean priced) {
        if (legs == 0) {
            return 0;
        }
        long length = priced ? SPACING : 0;
        return Frontier.isCorner(legs) ? length - SPACING - clearances : length;
    }

    /** What a link between two corners adds. */
    long link() {
        return -clearances * lengthWeight;
    }

    /** The whole sum for a loop, its legs by step. */
    long of(int[] legs) {
        long sum = 0;
        for (int t = 0; t < legs.length; t++) {
            sum += node(t, legs[t]);
            for (int h = 0; h < 4 && Frontier.isCorner(legs[t]); h++) {
                boolean both = (legs[t] >> h & 1) == 1
                        && frontier.isEarlier(t, h)
                        && Frontier.isCorner(legs[frontier.otherEnd(t, h)]);
                sum += both ? link() : 0;
            }
        }
        return sum;
    }
}
