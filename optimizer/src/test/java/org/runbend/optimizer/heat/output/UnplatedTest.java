package org.runbend.optimizer.heat.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Floor without plates, against two-dimensional models. */
class UnplatedTest {
    private static StripOutput groove(double outer, double ply, double below, double spacing) {
        return new UnplatedGroove()
                .solve(new GrooveProblem(
                        Stack.of(ply, 0.13, 0, below, 0.034), new PipeWall(outer, 2, 0.35), spacing, Contact.IDEAL));
    }

    /** Finite elements: the base case without a plate gives 1.127 W/(m2 K). */
    @Test
    void withoutPlate() {
        assertEquals(1.127, groove(16, 12, 30, 150).up(), 1.127 * 0.03);
    }

    /** Finite elements, ply 18, foam of 0.75 m2 K/W: plate factors for no plate. */
    @ParameterizedTest
    @CsvSource({
        "50, 16, .662",
        "100, 16, .401",
        "150, 16, .283",
        "200, 16, .222",
        "300, 16, .161",
        "100, 20, .434",
        "150, 20, .307",
        "200, 20, .241"
    })
    void plateFactorsOfNoPlate(double spacing, double outer, double factor) {
        double cover = 0.018 / 0.13;
        double standard =
                6.5 * Math.pow(En1264TypeBTables.aT(cover), 1 - spacing / 75) * (1 / 10.8 + 0.045) / (1 / 10.8 + cover);
        double up = groove(outer, 18, 0.75 * 34, spacing).up();
        assertEquals(factor * standard, up, factor * standard * 0.05);
    }

    /** Finite volumes of half a millimetre, solved here: up within 10 %, down within 20 %, from outside to room within 7 %. */
    @ParameterizedTest
    @CsvSource({
        "16, 12, 30, 150",
        "16, 18, 30, 150",
        "16, 18, 30, 100",
        "16, 18, 30, 300",
        "12, 12, 30, 150",
        "16, 12, 10, 150",
        "16, 12, 50, 150",
        "16, 6, 30, 150"
    })
    void finiteVolumes(double outer, double ply, double foam, double spacing) {
        BuriedPipe pipe = new BuriedPipe(outer, ply, foam, spacing);
        double[] warm = pipe.solve(1, 0, 0);
        double through = pipe.solve(0, 0, 1)[0];
        StripOutput s = groove(outer, ply, foam, spacing);
        assertEquals(warm[0], s.up(), warm[0] * 0.10);
        assertEquals(warm[1], s.down(), warm[1] * 0.20);
        assertEquals(through, s.exchange(), through * 0.07);
    }

    /** The finite volumes themselves: the finite elements' 1.127 for the same floor, within 2 %. */
    @Test
    void finiteVolumesAgainstFiniteElements() {
        assertEquals(1.127, new BuriedPipe(16, 12, 30, 150).solve(1, 0, 0)[0], 1.127 * 0.02);
    }

    /** Under a third of a plated floor: what gives the loop's price for bends its size. */
    @Test
    void aPlateIsWorthThreeGrooves() {
        StripOutput plated = new HottelWhillierBliss()
                .solve(FinProblem.even(
                        Stack.of(12, 0.13, 0, 30, 0.034),
                        new PipeWall(16, 2, 0.35),
                        new Plate(0.5, 200),
                        150,
                        150,
                        Contact.IDEAL));
        assertTrue(groove(16, 12, 30, 150).up() < plated.up() / 3);
    }

    /** A fin that is long enough: sqrt(k U) for a metre of edge, by hand for ply 12: sqrt(0.00156 x 6.123) = 0.0977 W/(m K). */
    @Test
    void spillByHand() {
        Stack stack = Stack.of(12, 0.13, 0, 30, 0.034);
        StripOutput s = new NeighbourSpill().solve(new SpillProblem(stack, 16, 500, 1));
        assertEquals(0.0977, s.total() * 0.5, 0.0002);
        StripOutput none = new NeighbourSpill().solve(new SpillProblem(stack, 16, 500, 0));
        assertEquals(0, none.up());
        // Ud and Uu in a row: 0.718 x 5.405 / 6.123.
        assertEquals(0.634, none.exchange(), 0.001);
    }

    @Test
    void zonesAreWeightedByArea() {
        Stack stack = Stack.of(12, 0.13, 0, 30, 0.034);
        FloorZone plated = new FloorZone(
                FloorZone.Kind.PLATED,
                6,
                new HottelWhillierBliss()
                        .solve(FinProblem.even(
                                stack, new PipeWall(16, 2, 0.35), new Plate(0.5, 200), 120, 150, Contact.IDEAL)));
        FloorZone bends = new FloorZone(FloorZone.Kind.BEND, 2, groove(16, 12, 30, 150));
        FloorZone none = new FloorZone(FloorZone.Kind.BARE, 0, groove(16, 12, 30, 150));
        FloorOutput out = new AreaWeighting().solve(new FloorProblem(List.of(plated, bends, none), 10.8, 45, 20, -10));
        assertEquals(2, out.zones().size());
        double byHand = 6 * (plated.output().up() * 25 - plated.output().exchange() * 30)
                + 2 * (bends.output().up() * 25 - bends.output().exchange() * 30);
        assertEquals(byHand, out.upward(), 1e-9);
        assertEquals(20 + byHand / 8 / 10.8, out.surfaceMean(), 1e-9);
    }
}
