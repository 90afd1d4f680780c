package org.runbend.optimizer.heat.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.output.HottelWhillierBliss;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Stack;

/**
 * Coolant from 35 to 65 degrees C in 20 minutes under 12 mm of ply, all else at the start temperature: two-dimensional finite elements
 * and an independent one-dimensional model.
 */
class WarmUpTest {
    private static final Stack PLY = Stack.of(12, 0.13, 0, 30, 0.034);
    private static final double PLATE = 0.5e-3 * FloorMass.ALUMINIUM;

    private static WarmUp warm(double resistance, double start) {
        FloorMass mass = new FloorMass(PLY, 16, resistance, PLATE, FloorMass.PLY, FloorMass.FOAM);
        return new ExplicitWarmUp()
                .solve(new WarmUpProblem(
                        mass,
                        start,
                        start,
                        start,
                        List.of(new WarmUpProblem.Point(0, 35), new WarmUpProblem.Point(20, 65)),
                        20));
    }

    /** Minute, surface by the one-dimensional model, surface by finite elements. */
    @ParameterizedTest
    @CsvSource({"5, 14.98, 14.8", "10, 19.31, 19.2", "15, 22.96, 22.9", "19, 25.59, 25.6", "20, 26.23, 26.2"})
    void fromTwelveDegrees(int minute, double oneDimensional, double finiteElements) {
        double surface = warm(0.0502, 12).points().get(minute).surface();
        assertEquals(oneDimensional, surface, 0.1);
        assertEquals(finiteElements, surface, 0.5);
    }

    /** Surface after 19 minutes from other starts; the field's 26 to 28 from a start of 12.6 to 15.7 (common practice). */
    @ParameterizedTest
    @CsvSource({"8, 22.95", "10, 24.27", "12, 25.59", "12.6, 25.99", "14, 26.91", "15, 27.57", "15.7, 28.03"})
    void afterNineteenMinutes(double start, double surface) {
        assertEquals(surface, warm(0.0502, start).points().get(19).surface(), 0.1);
    }

    /** The plates are far hotter than the surface: 44.6 by finite elements, 45.4 by the one-dimensional model. */
    @Test
    void platesAreHotter() {
        assertEquals(45.4, warm(0.0502, 12).points().get(19).sensor(), 0.3);
        assertEquals(44.6, warm(0.0502, 12).points().get(19).sensor(), 1.0);
    }

    /** With the fin method's own resistance in place of the finite elements' the surface stays within 0.5 K. */
    @Test
    void withTheClosedForm() {
        double resistance = new HottelWhillierBliss()
                .solve(FinProblem.even(PLY, new PipeWall(16, 2, 0.35), new Plate(0.5, 200), 150, 150, Contact.IDEAL))
                .toPlane();
        assertEquals(25.6, warm(resistance, 12).points().get(19).surface(), 0.5);
    }

    /** A laminar film of 160 W/(m2 K): 22.6 on the surface and 37.7 at the plates. */
    @Test
    void withAFilm() {
        double resistance = 0.0502 + 1.2 * 0.15 / (160 * Math.PI * 0.012);
        WarmUp.Point p = warm(resistance, 12).points().get(19);
        assertEquals(22.6, p.surface(), 2);
        assertEquals(37.7, p.sensor(), 2);
    }

    /** After a long time the floor is where the steady resistances put it. */
    @Test
    void endsSteady() {
        FloorMass mass = new FloorMass(PLY, 16, 0.05, PLATE, FloorMass.PLY, FloorMass.FOAM);
        WarmUp.Point end = new ExplicitWarmUp()
                .solve(new WarmUpProblem(mass, 10, 20, -10, List.of(new WarmUpProblem.Point(0, 45)), 2000))
                .points()
                .get(2000);
        double up = PLY.up();
        double down = PLY.down(16);
        double plate = (45 / 0.05 + up * 20 + down * -10) / (1 / 0.05 + up + down);
        assertEquals(plate, end.sensor(), 0.01);
        assertEquals(20 + up * (plate - 20) / 10.8, end.surface(), 0.01);
    }

    @Test
    void thinAndBareFloorsStayStable() {
        Stack bare = new Stack(0, 200, 0, 100, 0, 0.5, 0);
        FloorMass mass = new FloorMass(bare, 10, 0.01, 50, 1e5, 1e4);
        WarmUp w = new ExplicitWarmUp()
                .solve(new WarmUpProblem(mass, 0, 20, -30, List.of(new WarmUpProblem.Point(0, 80)), 30));
        assertTrue(w.points().stream().allMatch(p -> p.surface() > -31 && p.surface() < 81));
    }
}
