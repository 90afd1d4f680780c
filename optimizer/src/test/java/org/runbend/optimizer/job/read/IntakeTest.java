package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** Floors that come as lengths, as arcs and as differences from a base. */
class IntakeTest {
    private static final String OUTLINE = "outline: [[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";
    /** Sides 2400 and 1500, diagonals the root of 2400^2 + 1500^2 = 8010000: 2830.19. */
    private static final String MEASURED = "measured: {corners: [A, B, C, D], lengths: [[A, B, 2400], [B, C, 1500],"
            + " [C, D, 2400], [D, A, 1500], [A, C, 2830.194], [B, D, 2830.194]]}";

    @TempDir
    Path folder;

    private Job measured(String what, String with) throws IOException {
        assertTrue(MEASURED.contains(what), what);
        return Jobs.read(folder, Jobs.GOOD.replace(OUTLINE, MEASURED.replace(what, with)));
    }

    private List<String> faults(String text) {
        return assertThrows(BadInput.class, () -> Jobs.read(folder, text)).faults().stream()
                .map(f -> f.text().replace(folder + File.separator, ""))
                .toList();
    }

    @Test
    void measuredRectangleIsTheRectangle() throws IOException {
        Job job = measured("A", "A");
        assertEquals(
                Jobs.read(folder, Jobs.GOOD).floor().outline().size(),
                job.floor().outline().size());
        List<Point> expected = List.of(new Point(0, 0), new Point(2400, 0), new Point(2400, 1500), new Point(0, 1500));
        for (int i = 0; i < 4; i++) {
            assertEquals(0, expected.get(i).distance(job.floor().outline().get(i)), 0.002);
        }
        assertEquals(6, job.measured().size());
        assertEquals("B", job.measured().get(5).from());
        assertEquals("D", job.measured().get(5).to());
        assertEquals(0, job.measured().get(5).residual(), 0.001);
        assertEquals(
                List.of(),
                job.warnings().stream().filter(w -> w.contains("length")).toList());
    }

    /**
     * A diagonal 25 mm long: by the condition row (a, b, a, b, -1, -1) with a = 2400 / 2830.19 and b = 1500 / 2830.19, whose
     * squares add up to 4, each diagonal keeps 25 / 4 mm = 6.25 mm.
     */
    @Test
    void aLengthThatDoesNotFitIsWarnedOf() throws IOException {
        Job job = measured("[A, C, 2830.194]", "[A, C, 2855.194]");
        assertEquals(6.25, job.measured().get(4).residual(), 0.1);
        assertEquals(
                "The measured lengths miss each other by up to 6.3 mm: one of A-B, B-C, C-D, D-A, A-C, B-D is wrong and"
                        + " the others cannot tell which, take them again or measure one more diagonal.",
                job.warnings().get(0));
        Job bare = measured(", [B, D, 2830.194]", "");
        assertEquals(
                "No measured length checks another one: measure one more diagonal.",
                bare.warnings().get(0));
    }

    @Test
    void aWrongLengthStops() {
        String five = "measured: {corners: [A, B, C, D, E], lengths: [[A, B, 2400], [B, C, 1500], [C, D, 1300],"
                + " [D, E, 1300], [E, A, 1500], [A, C, 2930], [B, E, 2830], [A, D, 2332.4], [B, D, 2332.4], [C, E, 2400]]}";
        assertEquals(
                List.of(
                        "job.yaml:5:120: floor.measured.lengths[5]: the lengths miss each other by up to 17.0 mm, at most"
                                + " 15 mm are possible: take A-C again, it reads 2930 and the others make it about 2830.0"),
                faults(Jobs.GOOD.replace(OUTLINE, five)).stream()
                        .map(f -> f.replaceAll("up to [1-4][0-9]\\.\\d mm", "up to 17.0 mm"))
                        .map(f -> f.replaceAll("about 28(29|30|31)\\.\\d", "about 2830.0"))
                        .toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            [A, C, 2830.194], [B, D, 2830.194] | [A, B, 2400] | 5:46: floor.measured.lengths: corner C is not fixed: lengths to two corners that are fixed by others are wanted, measure one more diagonal from it
            , [A, C, 2830.194], [B, D, 2830.194] | `` | 5:46: floor.measured.lengths: 4 corners need at least 5 lengths, better 7; there are 4
            [A, B, 2400] | [A, X, 2400] | 5:51: floor.measured.lengths[0][1]: there is no corner 'X', the nearest one is A
            [A, B, 2400] | [A, A, 2400] | 5:47: floor.measured.lengths[0]: a length leads from one corner to another one
            [A, B, 2400] | [A, B] | 5:47: floor.measured.lengths[0]: has 2 entries, a length [corner, corner, length] is wanted
            [A, B, 2400] | [A, B, -2] | 5:54: floor.measured.lengths[0][2]: found '-2', a length from 1 to 30000 mm is wanted
            [A, B, C, D] | [A, B, C, C] | 5:33: floor.measured.corners[3]: corner 'C' stands twice
            lengths | length | 5:13: floor.measured.lengths: is missing, a list of lengths [corner, corner, length] is wanted
            corners: | round: left, corners: | 5:21: floor.measured.round: found 'left', one of anticlockwise, clockwise is wanted
            """)
    void faultsOfMeasuredFloors(String what, String with, String line) {
        assertTrue(MEASURED.contains(what), what);
        String told =
                faults(Jobs.GOOD.replace(OUTLINE, MEASURED.replace(what, with))).get(0);
        assertEquals("job.yaml:" + line, told);
    }

    @Test
    void outlineAndLengthsTogetherAreRefused() {
        assertEquals(
                List.of("job.yaml:5:12: floor.outline: the floor is measured already: outline or measured, not both"),
                faults(Jobs.GOOD.replace(OUTLINE, OUTLINE + "\n  " + MEASURED)));
    }

    /** Half a circle of 400 mm radius at the end of a floor: by hand each chord turns 2 acos(1 - 0.499 / 400) at most. */
    @Test
    void anArcAndItsChordsAreOneFloor() throws IOException {
        String arc = Jobs.GOOD.replace(
                "[2400, 0], [2400, 1500]", "[2400, 0], [2400, 350], {arc: [[2800, 750], [2400, 1150]]}, [2400, 1500]");
        Job job = Jobs.read(folder, arc + "\n");
        List<Point> corners = job.floor().outline();
        int chords = (int) Math.ceil(Math.PI / (2 * Math.acos(1 - 0.499 / 400)));
        assertEquals(4 + 1 + chords, corners.size());
        for (int i = 2; i <= chords + 1; i++) {
            Point a = corners.get(i);
            Point b = corners.get(i + 1);
            Point middle = new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
            assertEquals(400, a.distance(new Point(2400, 750)), 0.001);
            assertTrue(middle.distance(new Point(2400, 750)) >= 399.5, "chord " + i);
        }
        String twin = corners.stream()
                .map(p -> "[" + p.x() + ", " + p.y() + "]")
                .collect(Collectors.joining(", ", "outline: [", "]"));
        assertEquals(
                job.floor(), Jobs.read(folder, Jobs.GOOD.replace(OUTLINE, twin)).floor());
    }

    @Test
    void aMarkAtACurvedSideStandsAtItsMiddle() throws IOException {
        String arc = "outline: [[0, 0], [2400, 0], {arc: [[2700, 750], [2400, 1500]]}, [0, 1500]]\n"
                + "  marks: [{edge: 1, text: bow}, {edge: 3, text: stern}]";
        List<Job.FloorMark> marks =
                Jobs.read(folder, Jobs.GOOD.replace(OUTLINE, arc)).floor().marks();
        assertEquals(0, marks.get(0).at().distance(new Point(2700, 750)), 45);
        assertEquals(new Point(0, 750), marks.get(1).at());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            [0, 0], [2400, 0] | {arc: [[1, 1], [0, 2]]}, [2400, 0] | 5:13: floor.outline[0]: an arc begins at the corner before it, so the first entry must be a point [x, y]
            [2400, 1500] | {arc: [[2400, 700], [2400, 1500]]} | 5:32: floor.outline[2]: no arc passes through these points: they lie on a line, or its radius is under 5 mm
            [2400, 1500] | {arc: [[2400, 700]]} | 5:38: floor.outline[2].arc: has 1 entry, a list of two points [through, to] is wanted
            [2400, 1500] | {ark: [[2400, 700]]} | 5:32: floor.outline[2].arc: is missing, a list of two points [through, to] is wanted
            """)
    void faultsOfArcs(String what, String with, String line) {
        assertEquals(
                "job.yaml:" + line,
                faults(Jobs.GOOD.replace(OUTLINE, OUTLINE.replace(what, with))).get(0));
    }

    @Test
    void aJobThatExtendsABaseIsItsPlainTwin() throws Exception {
        Job plain = Jobs.read(
                folder,
                Jobs.GOOD
                        .replace("order: T-1", "order: T-2")
                        .replace("radius: 60", "radius: 45")
                        .replace("spacing: 150", "spacing: 150, edge: 80"));
        Path bases = Files.createDirectory(folder.resolve("bases"));
        Files.writeString(
                bases.resolve("base.yaml"), Jobs.GOOD.replace("catalog: workshop.yaml", "catalog: ../workshop.yaml"));
        String own = """
                extends: bases/base.yaml
                order: T-2
                floor:
                  keepOut: [{name: drain, circle: {centre: [700, 250], radius: 45}, clearance: 60}]
                layout: {edge: 80}
                """;
        Job job = Jobs.read(folder, own);
        assertEquals(plain.floor(), job.floor());
        assertEquals(plain.layout(), job.layout());
        assertEquals(plain.order(), job.order());
        assertEquals(plain.title(), job.title());
        assertEquals(plain.plates(), job.plates());
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        for (String name : List.of("job.yaml", "bases/base.yaml", "workshop.yaml")) {
            digest.update(Files.readAllBytes(folder.resolve(name)));
        }
        assertEquals(HexFormat.of().formatHex(digest.digest()), job.fingerprint());
    }

    @Test
    void faultsNameTheFileTheyStandIn() throws IOException {
        Files.writeString(folder.resolve("base.yaml"), Jobs.GOOD.replace("radius: 60", "radius: wide"));
        assertEquals(
                List.of(
                        "job.yaml:2:20: layout.spacing: found '15', a length from 100 to 300 mm is wanted",
                        "base.yaml:7:58: floor.keepOut[0].circle.radius: found 'wide', a length in mm is wanted"),
                faults("extends: base.yaml\nlayout: {spacing:  15}\n").stream()
                        .sorted((a, b) -> b.compareTo(a))
                        .toList());
    }

    @Test
    void circlesLongChainsAndMixedUnitsAreRefused() throws IOException {
        Files.writeString(folder.resolve("base.yaml"), "extends: job.yaml\n");
        assertTrue(faults("extends: base.yaml\n" + Jobs.GOOD)
                .contains("base.yaml:1:10: extends: the files extend each other in a circle"));
        for (int i = 0; i < 7; i++) {
            Files.writeString(folder.resolve("b" + i + ".yaml"), "extends: b" + (i + 1) + ".yaml\n");
        }
        assertEquals(
                List.of("b4.yaml:1:10: extends: more than 5 files extend each other in a row"),
                faults("extends: b0.yaml\n" + Jobs.GOOD));
        Files.writeString(folder.resolve("base.yaml"), Jobs.GOOD);
        assertEquals(
                List.of("job.yaml:2:8: units: the base is in 'mm': both files need one unit"),
                faults("extends: base.yaml\nunits: in\nlayout: {spacing: 150mm}\n").stream()
                        .filter(f -> f.contains("units"))
                        .toList());
        assertEquals(
                Optional.empty(),
                Jobs.read(folder, "extends: base.yaml\nunits: mm\n").customer());
    }

    /** A half circle of radius 150 about (2150, 0), in an unheated region and in a keep-out. */
    @Test
    void arcsInKeepOutsAndUnheatedRegionsAreTheirChords() throws IOException {
        String arc = "[[2000, 0], {arc: [[2150, 150], [2300, 0]]}]";
        String text = Jobs.GOOD
                .replace("[[2000, 0], [2400, 0], [2400, 300]]", arc)
                .replace("circle: {centre: [700, 250], radius: 60}", "polygon: " + arc);
        Job job = Jobs.read(folder, text);
        List<Point> corners = job.floor().unheated().get(0).region().corners();
        assertEquals(corners, ((Shape.Polygon) job.floor().keepOuts().get(0).bare()).corners());
        assertTrue(corners.size() > 15, corners::toString);
        Point centre = new Point(2150, 0);
        for (int i = 0; i + 1 < corners.size(); i++) {
            Point a = corners.get(i);
            Point b = corners.get(i + 1);
            assertEquals(150, a.distance(centre), 0.001);
            assertTrue(new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2).distance(centre) >= 149.5, "chord " + i);
        }
        assertEquals(
                List.of("job.yaml:8:39: floor.unheated[0].polygon[0]: an arc begins at the corner before it, so the"
                        + " first entry must be a point [x, y]"),
                faults(Jobs.GOOD.replace(
                        "[[2000, 0], [2400, 0], [2400, 300]]", "[{arc: [[1, 1], [2, 2]]}, [0, 0], [1, 0]]")));
    }

    @Test
    void assumptionsNameWhatTheJobLeftOut() throws IOException {
        Job job = Jobs.read(folder, Jobs.GOOD);
        assertEquals(
                List.of(
                        "Numbers without a unit are millimetres.",
                        "The middle of the pipe stays 75 mm away from the edge of the floor.",
                        "Where the pipe goes through the floor is proposed: look underneath before anything is drilled.",
                        "No pipe is counted for the way from the port to the valves (tails of flow and return).",
                        "2 % is added to the pipe when it is cut."),
                job.written().assumptions());
        String told = Jobs.GOOD
                .replace("product: PX-16", "product: PX-16, tails: [500, 500], allowance: 3%")
                .replace("spacing: 150", "spacing: 150, edge: 80")
                .replace(", clearance: 60", "");
        assertEquals(
                List.of(
                        "No clearance is given, so the groove keeps the usual air, 10 to 25 mm by kind, from: 'drain'.",
                        "Where the pipe goes through the floor is proposed: look underneath before anything is drilled."),
                Jobs.read(folder, "units: mm\n" + told).written().assumptions());
        assertEquals(List.of("A", "B", "C", "D"), measured("A", "A").written().corners());
        assertTrue(measured("A", "A")
                .written()
                .assumptions()
                .contains("The corners are listed anticlockwise, as seen from above."));
    }

    /** 96 x 60 in are 2438.4 x 1524 mm; the port moved by a thousandth of a millimetre more than that is another floor. */
    @Test
    void theFloorsFingerprintKnowsNoUnit() throws IOException {
        String inches = "units: in\n"
                + Jobs.GOOD
                        .replace("[0, 75]", "[0, 3]")
                        .replace("[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]", "[[0, 0], [96, 0], [96, 60], [0, 60]]")
                        .replace("[[2000, 0], [2400, 0], [2400, 300]]", "[[80, 0], [96, 0], [96, 12]]")
                        .replace("[700, 250], radius: 60}, clearance: 60", "[28, 10], radius: 2 1/2}, clearance: 2.5")
                        .replace("spacing: 150", "spacing: 150mm");
        String metric = Jobs.GOOD
                .replace("[0, 75]", "[0, 76.2]")
                .replace(
                        "[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]",
                        "[[0, 0], [2438.4, 0], [2438.4, 1524], [0, 1524]]")
                .replace("[[2000, 0], [2400, 0], [2400, 300]]", "[[2032, 0], [2438.4, 0], [2438.4, 304.8]]")
                .replace("[700, 250], radius: 60}, clearance: 60", "[711.2, 254], radius: 63.5}, clearance: 63.5");
        String print = Jobs.read(folder, metric).floor().fingerprint();
        assertTrue(print.matches("[0-9a-f]{64}"), print);
        assertEquals(print, Jobs.read(folder, inches).floor().fingerprint());
        assertTrue(!print.equals(
                Jobs.read(folder, metric.replace("76.2", "76.202")).floor().fingerprint()));
    }
}
