package org.runbend.optimizer.heat.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.output.GrooveProblem;
import org.runbend.optimizer.heat.output.HottelWhillierBliss;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.output.StripOutput;
import org.runbend.optimizer.heat.output.UnplatedGroove;
import org.runbend.optimizer.heat.quantity.OddInput;

/** The field against the closed form and against its own balance. */
class ConductionFieldTest {
    private static final PipeWall PIPE = new PipeWall(16, 2, 0.35);
    private static final Plate SHEET = new Plate(0.5, 200);

    /** Runs at one spacing over a whole floor, in plates of a width, or none. */
    private static FieldProblem pattern(double cell, double ply, double spacing, double plate, double w, double h) {
        List<Band> plates = new ArrayList<>();
        List<PipeBand> pipes = new ArrayList<>();
        for (double y = spacing / 2; y < h; y += spacing) {
            pipes.add(new PipeBand(0, y, w, y, plate > 0, 45, 45));
            if (plate > 0) {
                plates.add(new Band(0, y, w, y, plate / 2, plate / 2));
            }
        }
        return problem(cell, ply, spacing, w, h, plates, pipes);
    }

    private static FieldProblem problem(
            double cell, double ply, double spacing, double w, double h, List<Band> plates, List<PipeBand> pipes) {
        return new FieldProblem(
                cell,
                ring(0, 0, w, h),
                List.of(),
                plates,
                pipes,
                Stack.of(ply, 0.13, 0, 30, 0.034),
                PIPE,
                SHEET,
                Contact.IDEAL,
                spacing,
                20,
                -10);
    }

    private static Ring ring(double x, double y, double w, double h) {
        return new Ring(List.of(
                new Ring.Corner(x, y),
                new Ring.Corner(x + w, y),
                new Ring.Corner(x + w, y + h),
                new Ring.Corner(x, y + h)));
    }

    private static double closedForm(double ply, double spacing, double plate, double outside) {
        Stack stack = Stack.of(ply, 0.13, 0, 30, 0.034);
        StripOutput s = plate > 0
                ? new HottelWhillierBliss().solve(FinProblem.even(stack, PIPE, SHEET, plate, spacing, Contact.IDEAL))
                : new UnplatedGroove().solve(new GrooveProblem(stack, PIPE, spacing, Contact.IDEAL));
        return s.upward(45, 20, outside);
    }

    /** On a plain pattern the field's heat lies within 5 % of the fin method. */
    @ParameterizedTest
    @CsvSource({
        "12, 150, 150, 0.05",
        "12, 150, 120, 0.05",
        "6, 150, 120, 0.05",
        "18, 150, 120, 0.05",
        "12, 200, 120, 0.05",
        "9, 100, 80, 0.05"
    })
    void agreesWithTheClosedForm(double ply, double spacing, double plate, double share) {
        FieldSolution s = new ConductionField().solve(pattern(10, ply, spacing, plate, 1200, 1200));
        double flux = closedForm(ply, spacing, plate, -10);
        assertEquals(flux, s.balance().upward() / s.area(), flux * share);
        assertEquals(flux / 10.8, s.mean() - 20, flux / 10.8 * share);
    }

    /** Without plates within 9 % of what the pipe brings, in the cold too: what it shields from the cold below counts in both. */
    @ParameterizedTest
    @CsvSource({"12, 150, 20", "18, 200, 20", "12, 150, -10", "18, 200, -10"})
    void agreesWhereNoPlateIs(double ply, double spacing, double outside) {
        FieldProblem p = pattern(5, ply, spacing, 0, 1200, 1200);
        FieldSolution s = new ConductionField()
                .solve(new FieldProblem(
                        5,
                        p.floor(),
                        List.of(),
                        List.of(),
                        p.pipes(),
                        p.stack(),
                        PIPE,
                        SHEET,
                        Contact.IDEAL,
                        spacing,
                        20,
                        outside));
        double brought = closedForm(ply, spacing, 0, 20);
        assertEquals(closedForm(ply, spacing, 0, outside), s.balance().upward() / s.area(), brought * 0.09);
        assertEquals(
                s.balance().given() + s.balance().straightDown(),
                s.balance().upward() + s.balance().downward() + s.balance().straightDown(),
                0.005 * s.balance().given());
    }

    @Test
    void whatGoesInComesOut() {
        FieldSolution.Balance b = new ConductionField()
                .solve(pattern(10, 12, 150, 120, 3000, 1800))
                .balance();
        assertEquals(b.given(), b.upward() + b.downward(), 1e-6 * b.given());
        assertTrue(b.straightDown() > 0 && b.straightDown() < b.downward());
    }

    /** Half the cells' size changes the mean excess by less than 1 %, on a floor with bare places and a bend. */
    @Test
    void finerCellsSayTheSame() {
        double coarse = new ConductionField().solve(odd(10)).mean() - 20;
        double fine = new ConductionField().solve(odd(5)).mean() - 20;
        assertEquals(fine, coarse, 0.01 * Math.abs(fine));
    }

    private static FieldProblem odd(double cell) {
        FieldProblem plain = pattern(cell, 12, 150, 120, 1500, 1200);
        List<Band> plates = plain.plates().subList(0, 5);
        List<PipeBand> pipes = new ArrayList<>();
        plain.pipes().subList(0, 5).forEach(pipes::add);
        pipes.add(new PipeBand(100, 1000, 1400, 1100, false, 45, 40));
        return problem(cell, 12, 150, 1500, 1200, plates, pipes);
    }

    /** Plated floor is warm, a strip without plates colder, a bare corner coldest; all lie between outside and coolant. */
    @Test
    void coldPlacesShow() {
        FieldSolution s = new ConductionField().solve(odd(10));
        double plated = s.surface(75, 22);
        double between = s.surface(75, 30);
        double corner = s.surface(5, 118);
        assertTrue(plated > between && between > corner, plated + " " + between + " " + corner);
        assertTrue(s.least() > -10 && s.peak() < 45);
    }

    @Test
    void nothingInIsColdEverywhere() {
        FieldSolution s = new ConductionField().solve(problem(10, 12, 150, 500, 500, List.of(), List.of()));
        Stack stack = Stack.of(12, 0.13, 0, 30, 0.034);
        double through = stack.up() * stack.down(16) / (stack.up() + stack.down(16));
        assertEquals(20 - through * 30 / 10.8, s.mean(), 1e-6);
        assertEquals(s.mean(), s.peak(), 1e-6);
    }

    @Test
    void holesAreNoFloor() {
        FieldProblem plain = pattern(10, 12, 150, 120, 1000, 1000);
        FieldProblem holed = new FieldProblem(
                10,
                plain.floor(),
                List.of(ring(300, 300, 200, 100)),
                plain.plates(),
                plain.pipes(),
                plain.stack(),
                PIPE,
                SHEET,
                Contact.IDEAL,
                150,
                20,
                -10);
        FieldSolution s = new ConductionField().solve(holed);
        assertEquals(0.98, s.area(), 1e-9);
        assertTrue(!s.isFloor(35, 32) && s.isFloor(29, 32));
        assertEquals(20, s.surface(35, 32));
    }

    @Test
    void tooManyCellsIsOneLine() {
        String line = assertThrows(OddInput.class, () -> pattern(1, 12, 150, 120, 10_000, 10_000))
                .getMessage();
        assertEquals("cells of 1.0 mm make a raster of 10000 x 10000: too many, take larger cells", line);
    }
}
