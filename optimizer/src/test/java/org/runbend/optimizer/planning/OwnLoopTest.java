package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Loops that a designer drew: taken as they are where they are sound, every fault at its place where not. */
class OwnLoopTest {
    /** Two rows of teeth on 1200 x 900 mm, off any lattice that we would choose: edges of 80 and 100 mm, spacings of 150 to 170. */
    private static final String SOUND =
            "[80, 100], [1110, 100], [1110, 270], [600, 270], [600, 430], [1110, 430], [1110, 590],"
                    + " [600, 590], [600, 750], [430, 750], [430, 270], [260, 270], [260, 750], [100, 750], [100, 260]";

    @TempDir
    Path folder;

    @Test
    void aSoundLoopIsTakenAsItIs() throws IOException {
        KitPlan plan = new KitPlanner(Work.silent()).plan(job(SOUND));
        assertEquals(List.of(), KitVerifier.verify(plan));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(new Point(80, 100), loop.breakdown().elements().get(0).from());
        // the way along the corners less (2 - pi / 2) x 75 for each of 13 right angles
        double corners = 1030 + 170 + 510 + 160 + 510 + 160 + 510 + 160 + 170 + 480 + 170 + 480 + 160 + 490;
        assertEquals(corners - 13 * (2 - Math.PI / 2) * 75, loop.floorLength(), 0.001);
        assertEquals(13, loop.turns());
        assertTrue(loop.turnBound().isEmpty());
    }

    /** The corners of one of our own loops, given as the designer's, make the same runs and bends. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "[[0, 0], [1200, 0], [1200, 900], [0, 900]]",
                "[[0, 0], [1350, 0], [1350, 1350], [0, 1350]]",
                "[[0, 0], [1800, 0], [1800, 750], [900, 750], [900, 1500], [0, 1500]]"
            })
    void ourLoopDrawnByHand(String outline) throws IOException {
        KitPlan ours = new KitPlanner(Work.silent()).plan(job(outline, "", ""));
        List<Element> elements = ours.loops().get(0).breakdown().elements();
        String drawn = corners(elements).stream()
                .map(p -> "[" + p.x() + ", " + p.y() + "]")
                .collect(Collectors.joining(", "));
        KitPlan own = new KitPlanner(Work.silent()).plan(job(outline, "loop: [" + drawn + "]", ""));
        assertEquals(List.of(), KitVerifier.verify(own));
        List<Element> same = own.loops().get(0).breakdown().elements();
        assertEquals(elements.size(), same.size());
        for (int i = 0; i < same.size(); i++) {
            assertEquals(elements.get(i).length(), same.get(i).length(), 1e-6);
            assertEquals(0, elements.get(i).to().distance(same.get(i).to()), 1e-6);
        }
        assertEquals(ours.total(), own.total());
        assertTrue(new LoopComparison(own, ours).verdict().contains("neither bends nor money"));
    }

    /** Where the legs of a bend meet, from its tangents; a return bend has two corners. */
    private static List<Point> corners(List<Element> elements) {
        List<Point> corners = new ArrayList<>(List.of(elements.get(0).from()));
        for (Element e : elements) {
            if (e instanceof Element.Bend bend) {
                double half = Math.toRadians(bend.turn()) / bend.quarters() / 2;
                double start = Math.atan2(
                        bend.from().y() - bend.centre().y(),
                        bend.from().x() - bend.centre().x());
                for (int q = 0; q < bend.quarters(); q++) {
                    double at = start + (2 * q + 1) * half;
                    double away = bend.radius() / Math.cos(half);
                    corners.add(new Point(
                            Math.rint(1e6 * (bend.centre().x() + away * Math.cos(at))) / 1e6,
                            Math.rint(1e6 * (bend.centre().y() + away * Math.sin(at))) / 1e6));
                }
            }
        }
        corners.add(elements.get(elements.size() - 1).to());
        return corners;
    }

    /** One change, one fault, told by the designer's own points. Worked by hand from SOUND. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            [430, 270], [260, 270] | [430, 180], [260, 180] | segment 0 from [80, 100] to [1110, 100] and segment 10 from [430, 180] to [260, 180]: parallel runs lie 80.00 mm apart, 145.50 mm asked, at (355.0, 100.0)
            [1110, 430], [1110, 590] | [1150, 430], [1150, 590] | segment 5 from [1150, 430] to [1150, 590]: comes within 50.00 mm of the outline, 75.00 mm asked, at (1150.0, 505.0)
            [80, 100] | [600, 100] | the loop: begins 605.31 mm from the port, 330.00 mm allowed
            [600, 750], [430, 750] | [600, 690], [430, 690] | the bend at point 8 [600, 690]: radius 50.00 mm is under the pipe's least radius 55.00 mm
            [100, 750], [100, 260] | [500, 750], [500, 500] | the bend at point 13 [500, 750] and the bend at point 9 [430, 750]: come within 0.00 mm, 135.00 mm asked
            [260, 750], [100, 750] | [260, 850], [100, 850] | segment 12 from [260, 850] to [100, 850]: comes within 50.00 mm of the outline, 75.00 mm asked
            """)
    void everyFaultAtItsPlace(String what, String with, String fault) throws IOException {
        assertTrue(SOUND.contains(what), what);
        Job job = job(SOUND.replace(what, with));
        Unbuildable answer = assertThrows(Unbuildable.class, () -> new KitPlanner(Work.silent()).plan(job));
        assertEquals("layout.loop", answer.key());
        assertTrue(answer.lines().stream().anyMatch(l -> l.contains(fault)), () -> String.join("\n", answer.lines()));
    }

    /** Three faults in one drawing are three lines, and crossing pipe is one of them. */
    @Test
    void allFaultsAtOnce() throws IOException {
        Job job = job(
                "[[0, 0], [1200, 0], [1200, 900], [0, 900]]",
                "loop: [[80, 100], [1110, 100], [1110, 600], [400, 600], [400, 40], [100, 40], [100, 260]]",
                "  keepOut: [{name: bolt, point: [700, 610], clearance: 50}]\n");
        List<String> lines = assertThrows(Unbuildable.class, () -> new KitPlanner(Work.silent()).plan(job))
                .lines();
        assertTrue(
                lines.stream().anyMatch(l -> l.startsWith("the loop: the pipe crosses itself at (")), () -> "" + lines);
        assertTrue(
                lines.stream()
                        .anyMatch(l -> l.startsWith(
                                "segment 2 from [1110, 600] to [400, 600]: comes within 10.00 mm of keep-out"
                                        + " 'bolt', 50.00 mm asked, at (700.0, 600.0)")),
                () -> "" + lines);
        assertTrue(
                lines.stream()
                        .anyMatch(l -> l.startsWith(
                                "segment 4 from [400, 40] to [100, 40]: comes within 40.00 mm of the outline")),
                () -> "" + lines);
    }

    /**
     * A sound loop and its room, turned together and written with 1 to 6 decimals as drawings are: rounding makes no run of
     * hundredths between the two halves of a return bend, and no edge a tenth too narrow.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 17",
        "2, 30",
        "3, 33.3",
        "4, 123.4",
        "5, 61.7",
        "6, 271",
        "1, 45",
        "2, 299",
        "4, 30",
        "1, 205.3",
        "3, 90"
    })
    void turnedAndRounded(int decimals, double degrees) throws IOException {
        String outline = "[[0, 0], [2100, 0], [2100, 900], [1200, 900], [1200, 1800], [0, 1800]]";
        KitPlan ours = new KitPlanner(Work.silent()).plan(job(outline, "", ""));
        Breakdown laid = ours.loops().get(0).breakdown();
        String room = turned(
                List.of(
                        new Point(0, 0),
                        new Point(2100, 0),
                        new Point(2100, 900),
                        new Point(1200, 900),
                        new Point(1200, 1800),
                        new Point(0, 1800)),
                degrees,
                decimals);
        String loop = turned(corners(laid.elements()), degrees, decimals);
        String port = turned(List.of(new Point(0, 180)), degrees, decimals);
        String text = """
                job: Turned
                order: O-2
                catalog: workshop.yaml
                floor: {outline: [%s], port: {at: %s}}
                layout: {loop: [%s]}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.formatted(room, port, loop);
        Job job = JobReader.read(Files.writeString(folder.resolve("turned.yaml"), text), Optional.empty());
        KitPlan plan = new KitPlanner(Work.silent()).plan(job);
        Breakdown drawn = plan.loops().get(0).breakdown();
        assertEquals(laid.elements().size(), drawn.elements().size());
        assertEquals(laid.returnBends(), drawn.returnBends());
        assertEquals(laid.floorLength(), drawn.floorLength(), 1);
    }

    private static String turned(List<Point> points, double degrees, int decimals) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        String form = "[%." + decimals + "f, %." + decimals + "f]";
        return points.stream()
                .map(p -> String.format(Locale.ROOT, form, c * p.x() - s * p.y() + 900, s * p.x() + c * p.y() - 40))
                .collect(Collectors.joining(", "));
    }

    @Test
    void vetoesHoldForDrawnLoopsToo() throws IOException {
        Job job = job(
                "[[0, 0], [1200, 0], [1200, 900], [0, 900]]",
                "loop: [" + SOUND + "], veto: [{noBend: [600, 270, 60]}]",
                "");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> new KitPlanner(Work.silent()).plan(job));
        // the arc of a right angle comes (sqrt 2 - 1) x 75 = 31.07 mm near to its corner
        assertEquals(
                "the bend at point 3 [600, 270]: a bend comes within 31.07 mm of the middle of layout.veto[0].noBend, 60.00 mm asked",
                answer.getMessage());
    }

    @Test
    void backAndForth() {
        BadInput answer = assertThrows(BadInput.class, () -> job("[80, 100], [900, 100], [500, 100], [500, 300]"));
        assertTrue(answer.getMessage().contains("layout.loop[2]: the loop turns straight back"), answer.getMessage());
    }

    private Job job(String points) throws IOException {
        return job("[[0, 0], [1200, 0], [1200, 900], [0, 900]]", "loop: [" + points + "]", "");
    }

    private Job job(String outline, String layout, String keepOuts) throws IOException {
        String text = """
                job: Drawn by hand
                order: O-1
                catalog: workshop.yaml
                floor:
                  outline: %s
                  port: {at: [0, 180]}
                %slayout: {leftOutPrice: 10, %s}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.formatted(outline, keepOuts, layout);
        try (var catalog = OwnLoopTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }
}
