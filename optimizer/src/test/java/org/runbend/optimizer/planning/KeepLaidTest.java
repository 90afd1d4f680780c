package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KeptPipe;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LoopChange;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.verify.WishVerifier;
import org.runbend.optimizer.work.Work;

/** Parts already routed: the rest is laid around them, and each plan is held against {@link WishVerifier}. */
class KeepLaidTest {
    private static final String F01 = "[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";
    private static final String ODD = "[[0, 0], [1350, 0], [1350, 1350], [0, 1350]]";
    private static final String ELL = "[[0, 0], [2100, 0], [2100, 900], [1200, 900], [1200, 1800], [0, 1800]]";

    @TempDir
    Path folder;

    /** Straight pipe of 300 mm each side of a part of four corners: 525 + 75 pi / 2 + 450 + ... worked beside the assertion. */
    @Test
    void aPartWithCornersOnThreeFloors() throws IOException {
        for (String outline : List.of(F01, ODD, ELL)) {
            KitPlan plan = plan(outline, "keepLaid: [[[525, 300], [525, 675], [825, 675], [825, 300]]]");
            KeptPipe kept = plan.kept().get(0);
            // legs 375 - 75, 300 - 150, 375 - 75 and two quarters of radius 75
            assertEquals(300 + 150 + 300 + Math.PI * 75, kept.length(), 1e-6, outline);
            assertEquals(5, kept.places().size());
            assertTrue(
                    plan.remarkWords().stream().anyMatch(r -> r.startsWith("0.99 m of the pipe on the floor lie in")));
        }
    }

    /** The rectangle's best loop of 20 turns (2 x min(16, 10)) keeps its turns if what is kept is part of it. */
    @Test
    void partsOfTheBestLoopCostNothing() throws IOException {
        KitPlan free = plan(F01, "along: x");
        List<Element> elements = free.loops().get(0).breakdown().elements();
        StringBuilder parts = new StringBuilder();
        for (Element e : elements.subList(4, 12)) {
            if (e instanceof Element.Run) {
                parts.append(parts.isEmpty() ? "" : ", ").append(text(e.from(), e.to()));
            }
        }
        KitPlan kept = plan(F01, "along: x, keepLaid: [" + parts + "]");
        assertEquals(20, kept.loops().get(0).turns());
        assertEquals(OptionalInt.of(20), kept.loops().get(0).turnBound());
        assertEquals(4, kept.kept().size());
    }

    /** Everything kept but the ends: the same loop again, and nothing of the loop before goes. */
    @Test
    void aWholeLoopKept() throws IOException {
        KitPlan free = plan(ELL, "along: x");
        List<Point> corners = CornersOf.breakdown(free.loops().get(0).breakdown());
        StringBuilder part = new StringBuilder();
        for (Point p : corners) {
            part.append(part.isEmpty() ? "" : ", ").append(text(p));
        }
        KitPlan again = plan(ELL, "along: x, keepLaid: [[" + part + "]]");
        LoopChange change = LoopChange.of(free.loops().get(0).breakdown().elements(), again);
        assertEquals(0, change.goes(), 1e-6);
        assertEquals(0, change.added(), 1e-6);
        assertEquals(free.loops().get(0).floorLength(), change.stays(), 1e-6);
    }

    /** A straight part off the best offset moves the lattice: rows at 410 mean a node at y = 410 - 2 x 150 = 110. */
    @Test
    void aPartSetsTheLattice() throws IOException {
        for (String outline : List.of(F01, ODD, ELL)) {
            KitPlan plan = plan(outline, "keepLaid: [[[300, 410], [900, 410]]]");
            double off = (410 - plan.lattice().origin().y()) / 150;
            assertEquals(Math.rint(off), off, 1e-6, "a row lies on the part");
            assertEquals(600, plan.kept().get(0).length(), 1e-6);
        }
    }

    /** A part that slopes 3 : 4 turns the lattice. */
    @Test
    void aSlopedPart() throws IOException {
        KitPlan plan = plan(F01, "keepLaid: [[[600, 300], [1400, 900]]]", ", reach: 600");
        assertEquals(Math.toDegrees(Math.atan2(600, 800)), plan.lattice().angle(), 1e-9);
        assertEquals(1000, plan.kept().get(0).length(), 1e-6);
    }

    /** Read with a tape off a kit of ours: legs between two bends a few tenths under the spacing, which the bends fill. */
    @Test
    void aLegALittleUnderTheSpacing() throws IOException {
        for (String x : List.of("674.8", "674.6", "675.2")) {
            KitPlan plan = plan(F01, "keepLaid: [[[525, 975], [525, 675], [" + x + ", 675], [" + x + ", 975]]]");
            // two legs of 300 less 75 each and two quarters of radius 75
            assertEquals(225 + 225 + Math.PI * 75, plan.kept().get(0).length(), 1, x);
        }
    }

    @Test
    void partsThatCross() throws IOException {
        Job job = job(F01, "keepLaid: [[[825, 300], [825, 975]], [[525, 675], [1200, 675]]]", "");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> new KitPlanner(Work.silent()).plan(job));
        assertEquals("layout.keepLaid[0]", answer.key());
        assertTrue(answer.getMessage().contains("collides with layout.keepLaid[1]"), answer.getMessage());
    }

    @Test
    void aPartAcrossAVeto() throws IOException {
        Job job = job(
                F01,
                "keepLaid: [[[525, 300], [525, 675], [825, 675], [825, 300]]], veto: [{noBend: [525, 675, 80]}]",
                "");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> new KitPlanner(Work.silent()).plan(job));
        assertEquals("layout.keepLaid[0]", answer.key());
        assertTrue(answer.getMessage().contains("collides with layout.veto[0].noBend"), answer.getMessage());
    }

    /** 1437 - 975 = 462 is 12 mm over three spacings. */
    @Test
    void aPartOffTheLattice() {
        BadInput answer = assertThrows(
                BadInput.class, () -> job(F01, "keepLaid: [[[975, 300], [975, 975]], [[1437, 975], [1437, 300]]]", ""));
        assertTrue(
                answer.getMessage()
                        .contains("layout.keepLaid[1][1]: the leg to this point lies 12.0 mm off the lines 150 mm apart"
                                + " that layout.keepLaid[0] sets"),
                answer.getMessage());
    }

    /** Read with a tape: 3 mm out of line, two runs 4 mm further apart than a spacing, an end 2 mm inside its bend. */
    @Test
    void tapeReadingsAreSnapped() throws IOException {
        KitPlan plan =
                plan(F01, "keepLaid: [[[525, 602], [527, 675], [976, 678], [979, 300]], [[1129, 301], [1131, 675]]]");
        assertEquals(0, plan.lattice().angle(), 1e-9);
        for (KeptPipe part : plan.kept()) {
            assertTrue(!part.places().isEmpty(), "a part is not followed");
        }
        Job job = job(F01, "keepLaid: [[[300, 410], [900, 413]]]", "");
        PipeRule.Kept kept = (PipeRule.Kept) job.layout().pipeRules().get(0);
        assertEquals(List.of(new Point(300, 411.5), new Point(900, 411.5)), kept.points());
    }

    /** Pipe that runs beside a part does not follow it, nor does pipe that cuts its corner. */
    @Test
    void theVerifierSeesAMiss() {
        PipeRule.Kept part =
                new PipeRule.Kept("part", List.of(new Point(0, 0), new Point(300, 0), new Point(300, 300)));
        WishVerifier verifier = new WishVerifier(List.of(), List.of(part), 16);
        Element.Run first = new Element.Run(new Point(-100, 0), new Point(225, 0));
        Element.Bend bend = new Element.Bend(new Point(225, 0), new Point(300, 75), new Point(225, 75), 75, 90);
        Element.Run last = new Element.Run(new Point(300, 75), new Point(300, 400));
        assertEquals(List.of(), verifier.verify(List.of(new Breakdown(List.of(first, bend, last)))));
        Element.Run chamfer = new Element.Run(new Point(225, 0), new Point(300, 75));
        assertEquals(
                1,
                verifier.verify(List.of(new Breakdown(List.of(first, chamfer, last))))
                        .size());
        Element.Run on = new Element.Run(new Point(225, 0), new Point(500, 0));
        assertEquals(
                1, verifier.verify(List.of(new Breakdown(List.of(first, on)))).size());
    }

    private static String text(Point a, Point b) {
        return "[" + text(a) + ", " + text(b) + "]";
    }

    private static String text(Point p) {
        return "[" + p.x() + ", " + p.y() + "]";
    }

    private KitPlan plan(String outline, String layout) throws IOException {
        return plan(outline, layout, "");
    }

    private KitPlan plan(String outline, String layout, String port) throws IOException {
        KitPlan plan = new KitPlanner(Work.silent()).plan(job(outline, layout, port));
        assertEquals(List.of(), KitVerifier.verify(plan));
        return plan;
    }

    private Job job(String outline, String layout, String port) throws IOException {
        String text = """
                job: Kept
                order: K-1
                catalog: workshop.yaml
                floor: {outline: %s, port: {at: [0, 75]%s}}
                layout: {leftOutPrice: 10, %s}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.formatted(outline, port, layout);
        try (var catalog = KeepLaidTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }

    /** The corner points of a loop of right angles, its ends included. */
    private static final class CornersOf {
        private static List<Point> breakdown(Breakdown loop) {
            List<Point> corners = new java.util.ArrayList<>();
            corners.add(loop.elements().get(0).from());
            for (Element e : loop.elements()) {
                if (e instanceof Element.Bend bend) {
                    addCorners(corners, bend);
                }
            }
            corners.add(loop.elements().get(loop.elements().size() - 1).to());
            return corners;
        }

        /** A quarter has one corner, a return bend two: from, to and centre span squares of the radius. */
        private static void addCorners(List<Point> corners, Element.Bend bend) {
            double outX = bend.from().x() - bend.centre().x();
            double outY = bend.from().y() - bend.centre().y();
            double sign = Math.signum(bend.turn());
            Point first = new Point(bend.from().x() - sign * outY, bend.from().y() + sign * outX);
            corners.add(first);
            if (bend.quarters() == 2) {
                corners.add(new Point(bend.to().x() - sign * outY, bend.to().y() + sign * outX));
            }
        }
    }
}
