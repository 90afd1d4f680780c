package org.runbend.catalog.product;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How a workshop routs the channel that the pipe lies in. Sizes in mm.
 *
 * @param cutters diameters of the cutters at hand, thinnest first
 * @param play width of the channel over pipe and plate, on straights
 * @param bendPlay width of the channel over the pipe, at bends
 * @param pad diameter of the round pocket where the pipe comes through the floor; 0 for none
 * @param leastWeb what must stay between two channels
 * @param leastRest what must stay of the board under a channel
 */
public record Routing(
        List<Double> cutters, double play, double bendPlay, double pad, double leastWeb, double leastRest) {
    /**
     * Cutters of 8 and 12 mm, 0.5 mm of play, 4 mm at bends, pads of 32 mm, webs of 10 mm and 3 mm under the groove, about
     * two plies: common practice for 16 mm pipe.
     */
    public static final Routing USUAL = new Routing(List.of(8.0, 12.0), 0.5, 4, 32, 10, 3);

    /** Checks ranges. */
    public Routing {
        Require.that(!cutters.isEmpty(), "routing: at least one cutter must be at hand");
        for (double c : cutters) {
            Require.that(c > 0 && c <= 50, "routing: cutter %s mm must be over 0 and at most 50 mm", c);
        }
        cutters = cutters.stream().sorted().toList();
        Require.that(play >= 0 && play <= 10, "routing: play %s mm must be 0 to 10 mm", play);
        Require.that(bendPlay >= 0 && bendPlay <= 20, "routing: bendPlay %s mm must be 0 to 20 mm", bendPlay);
        Require.that(pad >= 0 && pad <= 200, "routing: pad %s mm must be 0 to 200 mm", pad);
        Require.that(leastWeb >= 0 && leastWeb <= 200, "routing: leastWeb %s mm must be 0 to 200 mm", leastWeb);
        Require.that(leastRest >= 0 && leastRest <= 200, "routing: leastRest %s mm must be 0 to 200 mm", leastRest);
    }

    /** The thickest cutter that goes into a channel of a width, mm, if one does. */
    public OptionalDouble cutterFor(double width) {
        return cutters.stream().mapToDouble(c -> c).filter(c -> c <= width).max();
    }
}
