package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Pipe whose least radius is over half the spacing, on whole floors; each plan passes every verifier. */
class StiffPipeTest {
    @TempDir
    Path folder;

    /** 2 x min(16, 10) = 20 turns are the least of any loop here: stiff pipe keeps them. Beside a wall 75 mm away a keyhole has no
     * room for its swing of 5 mm, so some of the turns are single corners. */
    @Test
    void keyholesOnARectangle() throws IOException {
        KitPlan plan = plan("f01-rect", 80, "");
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(0, loop.leftOut());
        assertEquals(20, loop.turns());
        List<Element> elements = loop.breakdown().elements();
        long wide = elements.stream()
                .filter(e -> e instanceof Element.Bend b && Math.abs(b.turn()) > 180)
                .peek(e -> assertEquals(208.723, Math.abs(((Element.Bend) e).turn()), 0.001))
                .count();
        assertTrue(wide >= 5, "keyholes: " + wide);
        assertEquals(
                2 * wide,
                elements.stream()
                        .filter(e -> e instanceof Element.Bend b && Math.abs(b.turn()) < 45)
                        .count());
        assertEquals(wide, loop.breakdown().returnBends());
    }

    /**
     * No return bends at radius 100. With 4 turns a place left out the optima of a rule that also counts a turn beside the
     * way through the floor are, by an independent solver at the same edge and spacing: 152 places and 26 turns on the
     * rectangle, 70 and 16 on the odd floor, 156 of 182 and 44 on the cabin. Here pipe does not bend where it comes through the floor, so a bend may follow
     * at once, and may lie on unheated floor, so a loop can only be better: turns + 4 x left out is at most 26 + 4 x 8,
     * 16 + 4 x 11 and 44 + 4 x 26.
     */
    @ParameterizedTest
    @CsvSource({"f01-rect, 58", "f12-odd, 60", "f02-arches, 148"})
    void noTwoTurnsInARow(String floor, int atMost) throws IOException {
        KitPlan plan = plan(floor, 100, "leftOutPrice: 4");
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertTrue(loop.objective() <= atMost, floor + ": " + loop.objective());
        assertTrue(plan.remarkWords().stream().anyMatch(r -> r.endsWith("It is proved that no such loop is better.")));
        List<Element> elements = loop.breakdown().elements();
        for (int i = 1; i < elements.size(); i++) {
            assertTrue(
                    elements.get(i) instanceof Element.Run || elements.get(i - 1) instanceof Element.Run,
                    "a straight between two bends");
        }
    }

    /** A wall too near for the swing of 5 mm: with edge 75 no keyhole lies beside a wall, and the verifiers agree. */
    @Test
    void keyholesKeepTheEdge() throws IOException {
        KitPlan plan = plan("f12-odd", 80, "");
        assertTrue(plan.loops().get(0).breakdown().elements().stream()
                .anyMatch(e -> e instanceof Element.Bend b && Math.abs(b.turn()) > 180));
    }

    @Test
    void thePersonIsTold() throws IOException {
        assertTrue(plan("f12-odd", 80, "").remarkWords().stream()
                .anyMatch(w -> w.contains("swing out 5.0 mm on each side")));
        assertTrue(
                plan("f12-odd", 100, "").remarkWords().stream().anyMatch(w -> w.contains("80 to 95 % of the places")));
    }

    /** A keyhole takes 129 mm of its legs at radius 82 and 123 at 80, a corner 82 and 80: none lies where it shortens a line. */
    @ParameterizedTest
    @CsvSource({"80, 1854.8, 2218.6, 675", "82, 1459.5, 1940.9, 1125", "82, 300, 2180, 675", "78, 1500, 2230, 375"})
    void noKeyholeShortensALineToRunAlong(double radius, double from, double to, double y) throws IOException {
        String veto = "veto: [{mustRun: [[" + from + ", " + y + "], [" + to + ", " + y + "]]}]";
        KitPlan plan;
        try {
            plan = plan("f01-rect", radius, veto);
        } catch (Unbuildable e) {
            assertTrue(e.getMessage().contains("collides with"), e.getMessage());
            return;
        }
        assertTrue(plan.loops().get(0).breakdown().elements().stream()
                .filter(Element.Run.class::isInstance)
                .anyMatch(e -> Math.abs(e.from().y() - y) < 0.5
                        && Math.min(e.from().x(), e.to().x()) <= from + 0.5
                        && Math.max(e.from().x(), e.to().x()) >= to - 0.5));
    }

    @Test
    void overOneSpacing() {
        BadInput answer = assertThrows(BadInput.class, () -> job("f12-odd", 151, ""));
        assertTrue(answer.getMessage().contains("so the least spacing is 151 mm"), answer.getMessage());
    }

    private KitPlan plan(String floor, double radius, String layout) throws IOException {
        KitPlan plan = new KitPlanner(Work.silent()).plan(job(floor, radius, layout));
        assertEquals(List.of(), KitVerifier.verify(plan));
        return plan;
    }

    private Job job(String floor, double radius, String layout) throws IOException {
        String text = read(floor + ".yaml");
        if (!layout.isEmpty()) {
            text = layout.contains("leftOutPrice") ? text.replace("leftOutPrice: 10, ", "") : text;
            text = text.replace("spacing: 150", "spacing: 150, " + layout);
        }
        String catalog = read("workshop.yaml").replace("fitted: 55, byHand: 80", "fitted: " + radius + ", byHand: 160");
        assertTrue(catalog.contains("fitted: " + radius), "the catalog's pipe is the stiff one");
        Files.writeString(folder.resolve("workshop.yaml"), catalog);
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }

    private static String read(String name) throws IOException {
        try (var file = StiffPipeTest.class.getResourceAsStream("/floors/" + name)) {
            return new String(file.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }
}
