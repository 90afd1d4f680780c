package org.runbend.catalog.product;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How a workshop routs the channel that the pipe lies in. Sizes in mm.
 *
 * @param cutters diameters of the cutters at hand, thinnest first
 * @param play width of the channel over pipe and plate, on straights
 * @param bendPlay width of the channel over the pipe, at bends
 * @param depthPlay what the channel is deeper than pipe and plate
 * @param pad diameter of the round pocket where the pipe comes through the floor; 0 for none
 * @param leastWeb what must stay between two channels
 * @param leastRest what must stay of the board under a channel
 * @param bushes guide bushes of hand routers at hand, thinnest first
 * @param guideThickness thickness of the plate that guides for hand routing are made of
 */
public record Routing(
        List<Double> cutters,
        double play,
        double bendPlay,
        double depthPlay,
        double pad,
        double leastWeb,
        double leastRest,
        List<GuideBush> bushes,
        double guideThickness) {
    /**
     * Cutters of 8 and 12 mm, 0.5 mm of play, 4 mm at bends, pads of 32 mm, webs of 10 mm and 3 mm under the groove, about
     * two plies: common practice for 16 mm pipe. Guide bushes of 17, 24 and 30 mm and guides 12 mm thick: common sizes.
     */
    public static final Routing USUAL = new Routing(
            List.of(8.0, 12.0),
            0.5,
            4,
            0,
            32,
            10,
            3,
            List.of(new GuideBush(17, 14, 8), new GuideBush(24, 20, 8), new GuideBush(30, 26, 8)),
            12);

    /** Checks ranges. */
    public Routing {
        Require.that(!cutters.isEmpty(), "routing: at least one cutter must be at hand");
        for (double c : cutters) {
            Require.that(c > 0 && c <= 50, "routing: cutter %s mm must be over 0 and at most 50 mm", c);
        }
        cutters = cutters.stream().sorted().toList();
        Require.that(play >= 0 && play <= 10, "routing: play %s mm must be 0 to 10 mm", play);
        Require.that(bendPlay >= 0 && bendPlay <= 20, "routing: bendPlay %s mm must be 0 to 20 mm", bendPlay);
        Require.that(depthPlay >= 0 && depthPlay <= 5, "routing: depthPlay %s mm must be 0 to 5 mm", depthPlay);
        Require.that(pad >= 0 && pad <= 200, "routing: pad %s mm must be 0 to 200 mm", pad);
        Require.that(leastWeb >= 0 && leastWeb <= 200, "routing: leastWeb %s mm must be 0 to 200 mm", leastWeb);
        Require.that(leastRest >= 0 && leastRest <= 200, "routing: leastRest %s mm must be 0 to 200 mm", leastRest);
        Require.that(!bushes.isEmpty(), "routing: at least one guide bush must be at hand");
        bushes = bushes.stream()
                .sorted(Comparator.comparingDouble(GuideBush::outer).thenComparingDouble(GuideBush::bore))
                .toList();
        Require.that(
                guideThickness > 0 && guideThickness <= 50,
                "routing: guideThickness %s mm must be over 0 and at most 50 mm",
                guideThickness);
    }

    /** The thickest cutter that goes into a channel of a width, mm, if one does. */
    public OptionalDouble cutterFor(double width) {
        return cutters.stream().mapToDouble(c -> c).filter(c -> c <= width).max();
    }
}
