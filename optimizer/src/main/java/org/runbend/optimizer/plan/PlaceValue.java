package org.runbend.optimizer.plan;

import org.runbend.optimizer.heat.PlaceHeat;

/**
 * What a place of the floor is worth against a quarter bend, and from what it was reckoned.
 *
 * @param heat what a place gives by what the pipe does in it
 * @param coverage share of the straight pipe that lies in plates, 0 to 1
 * @param bendSeconds labour of a quarter bend, s
 * @param wattSeconds labour that a watt is worth, s
 */
public record PlaceValue(PlaceHeat heat, double coverage, double bendSeconds, double wattSeconds) {
    /** The price of a place left out is held to this, quarter bends. */
    public static final double LEAST = 0.5;

    /** And to this. */
    public static final double MOST = 4;

    /** Least that a bend is taken to cost, W: where neither heat nor labour speak against bends. */
    private static final double LEAST_BEND = 0.01;

    /** What a quarter bend costs, W: the heat that its arc gives less than pipe straight on, and its labour. */
    public double bend() {
        return Math.max(LEAST_BEND, heat.straight() - heat.bend() + bendSeconds / wattSeconds);
    }

    /** What a place left out is worth, quarter bends: the heat it loses, what spills over from its neighbours counted. */
    public double leftOut() {
        return Math.max(LEAST, Math.min(MOST, (heat.straight() - heat.empty()) / bend()));
    }

    /** What the end of a straight piece costs, quarter bends: no plate reaches so near to the bend. */
    public double pieceEnd() {
        return heat.clearance() / bend();
    }

    /** What straight pipe without a plate loses, quarter bends for a place. */
    public double withoutPlate() {
        return (heat.straight() - heat.bare()) / bend();
    }
}
