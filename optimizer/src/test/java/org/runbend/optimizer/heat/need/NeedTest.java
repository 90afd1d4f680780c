package org.runbend.optimizer.heat.need;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NeedTest {
    private static final BuildUpLayer FOAM = new BuildUpLayer(30, 0.034);

    /** By hand after EN ISO 6946 with resistances from memory: wall 0.9103, roof 0.9359, floor 0.8441, glass 5.780, sheet 5.882. */
    @Test
    void transmittances() {
        Iso6946 standard = new Iso6946();
        BuildUpLayer ply = new BuildUpLayer(6, 0.13);
        assertEquals(0.9103, standard.transmittance(wall(BuildUp.HeatFlow.SIDEWAYS, 0.04, FOAM, ply)), 5e-5);
        assertEquals(0.9359, standard.transmittance(wall(BuildUp.HeatFlow.UP, 0.04, FOAM, ply)), 5e-5);
        assertEquals(
                0.8441,
                standard.transmittance(wall(BuildUp.HeatFlow.DOWN, 0.04, new BuildUpLayer(12, 0.13), FOAM)),
                1e-4);
        assertEquals(
                5.780, standard.transmittance(wall(BuildUp.HeatFlow.SIDEWAYS, 0.04, new BuildUpLayer(3, 1.0))), 1e-3);
        assertEquals(5.882, standard.transmittance(wall(BuildUp.HeatFlow.DOWN, 0, new BuildUpLayer(1, 50))), 1e-3);
    }

    private static BuildUp wall(BuildUp.HeatFlow flow, double outer, BuildUpLayer... layers) {
        return BuildUp.plain(flow, outer, layers);
    }

    /** Ribs of softwood in a tenth of the wall: upper limit 1.0338, lower 0.9867 m2 K/W, worked by hand. */
    @Test
    void ribs() {
        BuildUp ribbed = new BuildUp(
                BuildUp.HeatFlow.SIDEWAYS,
                List.of(
                        new BuildUp.Section(0.9, List.of(FOAM)),
                        new BuildUp.Section(0.1, List.of(new BuildUpLayer(30, 0.13)))),
                0.04);
        double upper = 1 / (0.9 / (0.17 + 0.882353) + 0.1 / (0.17 + 0.230769));
        double lower = 0.17 + 1 / (0.9 / 0.882353 + 0.1 / 0.230769);
        assertEquals(2 / (upper + lower), new Iso6946().transmittance(ribbed), 1e-6);
        assertTrue(!new Iso6946().isBridged(ribbed));
        BuildUp steel = new BuildUp(
                BuildUp.HeatFlow.SIDEWAYS,
                List.of(
                        new BuildUp.Section(0.99, List.of(FOAM)),
                        new BuildUp.Section(0.01, List.of(new BuildUpLayer(30, 50)))),
                0.04);
        assertTrue(new Iso6946().isBridged(steel));
    }

    @Test
    void needAndShare() {
        SpaceLoss loss = new SpaceLoss(
                List.of(new SpaceLoss.Surface("walls", 20, 0.9), new SpaceLoss.Surface("glass", 2, 5.8)), 10, 1, 3);
        // 18 + 11.6 + 3.4 + 3 by hand.
        assertEquals(36, loss.perKelvin(), 1e-9);
        NeedSolution s = new HeatNeed().solve(new NeedProblem(loss, 20, -10, 540));
        assertEquals(1080, s.need(), 1e-9);
        assertEquals(0.5, s.share(), 1e-9);
        assertEquals(540, s.remaining(), 1e-9);
    }

    @Test
    void warmerOutsideNeedsNothing() {
        NeedSolution s = new HeatNeed().solve(new NeedProblem(SpaceLoss.plain(30), 20, 25, -40));
        assertEquals(0, s.need());
        assertEquals(1, s.share());
    }

    /** Dew points of tables of moist air, from memory: 20 degrees C and 50 % 9.3; 20 and 60 % 12.0; 0 degrees C and 80 % -2.7. */
    @ParameterizedTest
    @CsvSource({"20, .5, 9.3", "20, .6, 12.0", "0, .8, -2.8", "20, 1, 20"})
    void dewPoint(double room, double humidity, double dew) {
        DampSolution s = new Iso13788().solve(new DampProblem(room, humidity, -10, 20, 0.04));
        assertEquals(dew, s.dewPoint(), 0.15);
        assertEquals(-9.2, s.metal(), 1e-9);
        assertTrue(s.wet());
    }
}
