package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/**
 * Several wishes at once: a plan that keeps them all, by every verifier, or one line that says which two collide. Whole
 * floors of 2400 x 1500 and 1350 x 1350 mm at 150 mm centres.
 */
class CombinedWishesTest {
    private static final String RIB =
            "supports: [{name: rib, line: [[1200, 0], [1200, 1500]], width: 40, cross: square}]";
    private static final String NO_BEND = "veto: [{noBend: [1200, 750, 150]}]";
    private static final String KEPT = "keepLaid: [[[300, 375], [1500, 375]]]";

    @TempDir
    Path folder;

    private double radius = 55;

    /**
     * Two loops out of one coil of 25 m: each is cut from 12.5 m at most, and a pair of places more would need two spacings
     * and 2 %, 306 mm, less the 66 mm that two bends more save. Radius 80 makes keyholes, radius 100 bends that stand alone.
     */
    @ParameterizedTest(name = "radius {0}")
    @CsvSource({"80, 28", "100, 28"})
    void twoStiffLoopsFitACoilAcrossASupport(double stiff, int leftOut) throws IOException {
        radius = stiff;
        KitPlan plan = plan("f01-rect", RIB, "loops: 2, fit: coil, " + NO_BEND, "");
        assertEquals(2, plan.loops().size());
        assertEquals(1, plan.coils().coils().size());
        assertEquals(25_000, plan.coils().coils().get(0).length(), 1e-6);
        for (KitPlan.LoopPlan loop : plan.loops()) {
            assertTrue(loop.cutLength() <= 12_500, () -> "cut from " + loop.cutLength());
        }
        assertBalanced(plan);
        assertFewerBare(plan, leftOut);
        assertTrue(
                bends(plan).stream().allMatch(b -> Math.abs(b.from().x() - 1200) >= 28 - 1e-6),
                "no bend begins on the rib, 20 mm and half a pipe from its middle");
    }

    /** Reach 330 and a spacing more for the second loop is too short beside what is laid already; 480 is enough. */
    @Test
    void twoLoopsAroundWhatIsLaid() throws IOException {
        assertCollides("f01-rect", "", "loops: 2, " + KEPT, "", "layout.loops", "layout.keepLaid[0]", "reach of 480");
        Files.writeString(
                folder.resolve("f01-rect.yaml"),
                text("f01-rect", "", "loops: 2, " + KEPT, "").replace("reach: 330", "reach: 480"));
        KitPlan plan = plan(folder.resolve("f01-rect.yaml"));
        assertBalanced(plan);
        double kept = plan.loops().stream()
                .flatMap(l -> l.breakdown().elements().stream())
                .filter(e -> e instanceof Element.Run && Math.abs(e.from().y() - 375) < 1e-6)
                .filter(e -> Math.abs(e.to().y() - 375) < 1e-6)
                .mapToDouble(e -> Math.min(1500, Math.max(e.from().x(), e.to().x()))
                        - Math.max(300, Math.min(e.from().x(), e.to().x())))
                .max()
                .orElse(0);
        assertEquals(1200, kept, 1e-6, "one run holds the whole part");
    }

    @Test
    void ownLoopAcrossASupport() throws IOException {
        String loop = "loop: [[75, 75], [75, 1425], [2325, 1425], [2325, 75], [225, 75], [225, 225]]";
        KitPlan plan = plan("f01-rect", RIB, loop, "");
        plan.plates().pieces().forEach(p -> {
            Element.Run run = (Element.Run) plan.loops()
                    .get(0)
                    .breakdown()
                    .elements()
                    .get(p.places().get(0).element());
            double a = run.along(p.places().get(0).from()).x();
            double b = run.along(p.places().get(0).from() + p.length()).x();
            assertTrue(Math.max(a, b) <= 1180 || Math.min(a, b) >= 1220, "no plate on the rib");
        });
        String beside = RIB.replace("1200", "2300");
        assertCollides("f01-rect", beside, loop, "", "layout.loop", "a bend lies on support 'rib'");
    }

    @Test
    void limitAndClosedRegion() throws IOException {
        String veto = "veto: [{noPipe: [[1100, 600], [1400, 600], [1400, 900], [1100, 900]]}]";
        KitPlan plan = plan("f01-rect", "", veto, ", loopLimit: 20000");
        assertTrue(plan.loops().get(0).cutLength() <= 20_000);
        assertTrue(20_000 - plan.loops().get(0).cutLength() < 1.02 * 300 + 66);
    }

    @Test
    void limitAndALineToFollow() throws IOException {
        KitPlan plan = plan("f12-odd", "", "veto: [{mustRun: [[300, 410], [900, 410]]}]", ", loopLimit: 7000");
        assertTrue(plan.loops().get(0).cutLength() <= 7_000);
    }

    /**
     * The line of 750 mm lies 1275 mm from the wall with the port, where places are 75 mm from it, so a loop along it is longer than
     * 2 x 1125 + 750 mm, and its tails of 2000 mm with 2 % more make that 5100 mm.
     */
    @ParameterizedTest
    @CsvSource({"veto, layout.veto[0].mustRun", "keepLaid, layout.keepLaid[0]"})
    void limitTooShortForALine(String key, String named) throws IOException {
        String line = "[[300, 1275], [1050, 1275]]";
        String wish = key.equals("veto") ? "veto: [{mustRun: " + line + "}]" : "keepLaid: [" + line + "]";
        assertCollides("f12-odd", "", wish, ", loopLimit: 5050", "pipe.loopLimit", "collides with " + named);
    }

    @Test
    void keyholesInTwoLoops() throws IOException {
        radius = 80;
        KitPlan plan = plan("f01-rect", "", "loops: 2", "");
        assertBalanced(plan);
        assertFewerBare(plan, 0);
        assertTrue(bends(plan).stream().anyMatch(b -> Math.abs(b.turn()) > 180), "keyholes");
    }

    @Test
    void tooManyLoopsBehindASupport() throws IOException {
        String wall = RIB.replace("1200", "300").replace("square", "never");
        assertCollides("f01-rect", wall, "loops: 2", "", "layout.loops", "collides with floor.supports[0] 'rib'");
        assertCollides(
                "f01-rect", RIB, "loops: 4", "", "layout.loops", "no cut of this floor into 4 parts", "reach of 630");
    }

    @Test
    void asManyLoopsAsALimitTakes() throws IOException {
        assertCollides(
                "f01-rect",
                RIB,
                "loops: auto, " + NO_BEND,
                ", loopLimit: 9000",
                "layout.loops",
                "auto takes 3 loops, none cut longer than 9000 mm",
                "a floor.port.reach of 480 would do");
    }

    /** Both lines are as long as the floor is wide: a loop that follows both closes into a ring without the port. */
    @Test
    void twoLinesThatCloseARing() throws IOException {
        String lines = "veto: [{mustRun: [[200, 225], [1150, 225]]}, {mustRun: [[200, 375], [1150, 375]]}]";
        assertCollides(
                "f12-odd", "", lines, "", "layout.veto[0].mustRun", "collides with layout.veto[1].mustRun: no loop");
    }

    /** Runs side by side on 150 mm are joined by return bends of 75 mm, which pipe of 130 mm cannot make. */
    @Test
    void linesTooNearForStiffPipe() throws IOException {
        String lines = "veto: [{mustRun: [[300, 225], [1050, 225]]}, {mustRun: [[300, 375], [1050, 375]]}, {mustRun:"
                + " [[300, 525], [1050, 525]]}]";
        plan("f12-odd", "", lines, "");
        radius = 130;
        assertCollides("f12-odd", "", lines, "", "pipe.product", "collides with layout.veto");
    }

    @Test
    void stiffPipeOnAFloorTooNarrow() throws IOException {
        radius = 130;
        String text = text("f12-odd", "", "loops: 1", "")
                .replace("1350], [0, 1350]", "300], [0, 300]")
                .replace("1350", "700")
                .replace("at: [675, 0]", "at: [0, 75]");
        Path job = Files.writeString(folder.resolve("f12-odd.yaml"), text);
        Unbuildable fault = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("pipe.product", fault.key());
        assertTrue(fault.getMessage().startsWith("collides with floor.outline: no loop of pipe as stiff"));
    }

    private static List<Element.Bend> bends(KitPlan plan) {
        return plan.loops().stream()
                .flatMap(l -> l.breakdown().elements().stream())
                .filter(Element.Bend.class::isInstance)
                .map(Element.Bend.class::cast)
                .toList();
    }

    private static void assertBalanced(KitPlan plan) {
        double[] lengths = plan.loops().stream()
                .mapToDouble(KitPlan.LoopPlan::floorLength)
                .sorted()
                .toArray();
        assertTrue(lengths[0] >= 0.9 * lengths[lengths.length - 1], () -> lengths[0] + " mm");
    }

    private static void assertFewerBare(KitPlan plan, int most) {
        int bare = plan.loops().stream().mapToInt(KitPlan.LoopPlan::leftOut).sum();
        assertTrue(bare <= most, () -> bare + " left out");
    }

    private void assertCollides(String name, String floor, String layout, String pipe, String key, String... says)
            throws IOException {
        Path job = Files.writeString(folder.resolve(name + ".yaml"), text(name, floor, layout, pipe));
        Unbuildable fault = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals(key, fault.key(), fault::getMessage);
        for (String part : says) {
            assertTrue(fault.getMessage().contains(part), fault::getMessage);
        }
    }

    private KitPlan plan(String name, String floor, String layout, String pipe) throws IOException {
        return plan(Files.writeString(folder.resolve(name + ".yaml"), text(name, floor, layout, pipe)));
    }

    private static KitPlan plan(Path job) {
        KitPlan plan = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty()));
        assertEquals(List.of(), KitVerifier.verify(plan));
        return plan;
    }

    private String text(String name, String floor, String layout, String pipe) throws IOException {
        String catalog = read("workshop.yaml");
        String pipes = catalog.replace("fitted: 55, byHand: 80", "fitted: " + radius + ", byHand: 160");
        assertTrue(pipes.contains("fitted: " + radius), "the catalog's pipe is as stiff as asked");
        Files.writeString(folder.resolve("workshop.yaml"), pipes);
        return read(name + ".yaml")
                .replace("  port:", (floor.isEmpty() ? "" : "  " + floor + "\n") + "  port:")
                .replace("layout: {", "layout: {" + layout + ", ")
                .replace("allowance: 2%", "allowance: 2%" + pipe);
    }

    private static String read(String name) throws IOException {
        try (var file = CombinedWishesTest.class.getResourceAsStream("/floors/" + name)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
