package org.runbend.optimizer.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;

/** Lengths worked by hand on a drawing. */
class TapeMeasuringTest {
    @TempDir
    Path folder;

    private TapeSheet tape(String floor) throws IOException {
        Files.copy(
                Path.of("..", "examples", "workshop.yaml"),
                folder.resolve("workshop.yaml"),
                StandardCopyOption.REPLACE_EXISTING);
        String text =
                "job: T\norder: T\ncatalog: workshop.yaml\npipe: {product: PX-16}\nplates: {product: SP-1}\nfloor:\n"
                        + floor.indent(2);
        Job job = JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
        return new TapeMeasuring().measure(job);
    }

    private static String corners(TapeSheet tape) {
        return tape.corners().stream()
                .map(c -> String.format(Locale.ROOT, "%s %.0f %.0f", c.name(), c.at().x(), c.at().y()))
                .collect(Collectors.joining(", "));
    }

    private static String ties(TapeSheet.Thing thing) {
        return thing.ties().stream()
                .map(t -> String.format(Locale.ROOT, "%s%s %.0f", t.from(), t.to(), t.distance()))
                .collect(Collectors.joining(", "));
    }

    private static String diagonals(TapeSheet tape) {
        return tape.diagonals().stream()
                .map(d -> String.format(Locale.ROOT, "%s%s %.0f", d.from(), d.to(), d.length()))
                .collect(Collectors.joining(", "));
    }

    /** 3-4-5: sides 1200 and 900 (x 2), diagonals 1500. Listed clockwise from the upper right, lettered from the lower left. */
    @Test
    void aRectangleHasFourSidesAndTwoDiagonals() throws IOException {
        TapeSheet tape = tape("""
                outline: [[1200, 900], [1200, 0], [0, 0], [0, 900]]
                keepOut: [{name: drain, circle: {centre: [300, 200], radius: 50}}]
                unheated: [{name: step, polygon: [[900, 0], [1100, 0], [1100, 150], [900, 150]]}]
                port: {at: [0, 300]}
                """);
        assertEquals("A 0 0, B 1200 0, C 1200 900, D 0 900", corners(tape));
        assertEquals("AC 1500, BD 1500", diagonals(tape));
        assertEquals(
                List.of(1200.0, 900.0, 1200.0, 900.0),
                tape.sides().stream().map(TapeSheet.Side::length).toList());
        assertEquals("AB 200, DA 300", ties(tape.keepOuts().get(0)));
        assertEquals("AB 0, BC 100", ties(tape.unheated().get(0)));
        assertEquals("DA 0, AB 300", ties(tape.port()));
    }

    /** Outside the wall AD only the corner A is of use beside it: 728 is the root of 200^2 + 700^2. */
    @Test
    void aPortOutsideIsTiedToASideAndACorner() throws IOException {
        TapeSheet tape = tape("outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]\nport: {at: [-200, 700]}\n");
        assertEquals("DA -200, A 728", ties(tape.port()));
    }

    /**
     * An L: C is not seen from F, E not from B ... of the pairs that see each other A-C is the root of 2400^2 + 900^2 = 2563 and
     * A-E that of 1200^2 + 1950^2 = 2290, B-D 1500 by 3-4-5; D-F the root of 1200^2 + 1050^2 = 1595.
     */
    @Test
    void anEllHasOnlyDiagonalsThatLieOnIt() throws IOException {
        TapeSheet tape = tape(
                "outline: [[0, 0], [2400, 0], [2400, 900], [1200, 900], [1200, 1950], [0, 1950]]\nport: {at: [0, 300]}\n");
        assertEquals("AC 2563, AE 2290, DF 1595, BD 1500", diagonals(tape));
    }

    /** Chord 1500 and rise 480 as written; a curve has no corners but its ends, and its chords written out are the same floor. */
    @Test
    void aCurveIsOneSideHoweverItIsWritten() throws IOException {
        TapeSheet arc = tape(
                "outline: [[0, 0], [2000, 0], {arc: [[2480, 750], [2000, 1500]]}, [0, 1500]]\nport: {at: [0, 1350]}\n");
        assertEquals("A 0 0, B 2000 0, C 2000 1500, D 0 1500", corners(arc));
        assertEquals(1500, arc.sides().get(1).length(), 1e-9);
        assertEquals(480, arc.sides().get(1).rise(), 0.5);
        assertEquals(2480, arc.width(), 0.5);
        String inwards = "outline: [[0, 0], [2000, 0], {arc: [[1900, 750], [2000, 1500]]}, [0, 1500]]\n";
        assertEquals(
                -100, tape(inwards + "port: {at: [0, 1350]}\n").sides().get(1).rise(), 0.5);
        TapeSheet round = tape("""
                outline: [[900, 0], {arc: [[1800, 900], [900, 1800]]}, {arc: [[0, 900], [900, 0]]}]
                port: {at: [900, 100]}
                """);
        assertEquals(4, round.corners().size(), "outermost points of a circle");
    }

    @Test
    void aMeasuredFloorKeepsItsNamesAndItsDiagonals() throws IOException {
        String floor = "measured: {round: %s, corners: [P, Q, R, S], lengths: [[P, Q, 1200], [Q, R, 900], [R, S, 1200],"
                + " [S, P, 900], [P, R, 1500], [Q, S, 1500]]}\nport: {at: [0, %s300]}\n";
        TapeSheet tape = tape(String.format(Locale.ROOT, floor, "anticlockwise", ""));
        assertTrue(tape.named());
        assertEquals("P 0 0, Q 1200 0, R 1200 900, S 0 900", corners(tape));
        TapeSheet mirror = tape(String.format(Locale.ROOT, floor, "clockwise", "-"));
        assertNotEquals(corners(tape), corners(mirror));
        assertEquals("S", mirror.corners().get(0).name());
        assertEquals("R", mirror.corners().get(1).name());
    }

    /** A floor like its mirror image but for the port: what is told of it differs. */
    @Test
    void aMirrorImageIsToldOtherwise() throws IOException {
        TapeSheet left = tape("outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]\nport: {at: [0, 700]}\n");
        TapeSheet right = tape("outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]\nport: {at: [2400, 700]}\n");
        assertEquals("DA 0, AB 700", ties(left.port()));
        assertEquals("BC 0, AB 700", ties(right.port()));
    }
}
