package org.runbend.optimizer.plan;

import org.runbend.optimizer.heat.PlaceHeat;

/**
 * What a place of the floor is worth against a quarter bend, and from what it was reckoned.
 *
 * @param heat what a place gives by what the pipe does in it
 * @param coverage share of the straight pipe that lies in plates, 0 to 1
 * @param bendSeconds labour of a quarter bend, s
 * @param wattSeconds labour that a watt is worth, s
 * @param leftOut price of a place left out, quarter bends
 * @param shortPlace price of a place in a piece too short for a plate, quarter bends
 */
public record PlaceValue(
        PlaceHeat heat, double coverage, double bendSeconds, double wattSeconds, double leftOut, double shortPlace) {
    /** The price of a place left out is held to this, quarter bends. */
    public static final double LEAST = 0.5;

    /** And to this. */
    public static final double MOST = 4;

    /** Both prices for heat and labour: what is lost over what a bend loses and its labour as watts. */
    public static PlaceValue of(PlaceHeat heat, double coverage, double bendSeconds, double wattSeconds) {
        double bend = heat.straight() - heat.bend() + bendSeconds / wattSeconds;
        double lost = heat.straight() - heat.empty();
        double leftOut = bend <= lost / MOST ? MOST : Math.max(LEAST, lost / bend);
        double shortPlace = bend <= 0 ? 0 : Math.max(0, Math.min(leftOut, (heat.straight() - heat.bare()) / bend));
        return new PlaceValue(heat, coverage, bendSeconds, wattSeconds, leftOut, shortPlace);
    }

    /** What a bend costs, heat lost and labour, W. */
    public double bend() {
        return heat.straight() - heat.bend() + bendSeconds / wattSeconds;
    }
}
