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
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.verify.WishVerifier;
import org.runbend.optimizer.work.Work;

/** Supports and rules for pipe on whole floors: each plan is held against {@link WishVerifier}, or one line says what collides. */
class SiteWishesTest {
    private static final String F01 = "[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";
    private static final String ODD = "[[0, 0], [1350, 0], [1350, 1350], [0, 1350]]";
    private static final String ELL = "[[0, 0], [2100, 0], [2100, 900], [1200, 900], [1200, 1800], [0, 1800]]";

    @TempDir
    Path folder;

    /**
     * Three ribs of 40 mm between the columns of nodes. Rows along x cross them square between two columns, in the half of
     * a link that no bend takes (half a spacing, 75 mm, less half a rib and half a groove), so the rectangle keeps its
     * 2 x min(16, 10) = 20 turns.
     */
    @Test
    void ribsAcrossARectangle() throws IOException {
        KitPlan plan =
                plan(job(F01, "[0, 75]", supports(rib(600, "square"), rib(1200, "square"), rib(1800, "square")), ""));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(0, loop.leftOut());
        assertEquals(20, loop.turns());
        assertEquals(OptionalInt.of(20), loop.turnBound());
        assertTrue(crossings(loop, 600) >= 2, "pipe crosses the first rib");
        plan.plates().pieces().forEach(p -> {
            Element.Run run = (Element.Run)
                    loop.breakdown().elements().get(p.places().get(0).element());
            double a = run.along(p.places().get(0).from()).x();
            double b = run.along(p.places().get(0).from() + p.length()).x();
            for (int x : new int[] {600, 1200, 1800}) {
                assertTrue(Math.max(a, b) <= x - 20 || Math.min(a, b) >= x + 20, "a plate from " + a + " to " + b);
            }
        });
    }

    /** A joist across the whole width that nothing may cross leaves the port's side alone: 900 / 150 = 6 columns of 10. */
    @Test
    void aJoistThatNothingCrosses() throws IOException {
        KitPlan plan = plan(job(F01, "[0, 75]", supports(rib(900, "never")), ""));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(0, crossings(loop, 900));
        assertTrue(loop.breakdown().elements().stream().allMatch(e -> e.from().x() < 900 && e.to().x() < 900));
        assertTrue(
                plan.lattice().reachable() <= 60, "reachable " + plan.lattice().reachable());
    }

    /** The line lies 35 mm off the rows of the best lattice, so the lattice moves; its ends need 75 mm for the bends. */
    @Test
    void aLineToRunAlong() throws IOException {
        for (String outline : List.of(F01, ODD, ELL)) {
            KitPlan plan = plan(job(outline, "[0, 75]", "", "veto: [{mustRun: [[300, 410], [900, 410]]}]"));
            double off = (410 - plan.lattice().origin().y()) / 150;
            assertEquals(Math.rint(off), off, 1e-6, "a row lies on the line");
        }
    }

    @Test
    void aSlopedLineTurnsTheLattice() throws IOException {
        KitPlan plan = plan(job(F01, "[0, 75]", "reach: 600", "veto: [{mustRun: [[600, 300], [1400, 900]]}]"));
        assertEquals(Math.toDegrees(Math.atan2(600, 800)), plan.lattice().angle(), 1e-9);
    }

    @Test
    void circlesWithoutBendsAndRegionsWithoutPipe() throws IOException {
        for (String outline : List.of(F01, ODD, ELL)) {
            KitPlan plan = plan(job(
                    outline,
                    "[0, 75]",
                    "",
                    "veto: [{noBend: [1200, 150, 150]}, {noBend: [150, 1200, 120]}, {noPipe: [[400, 500], [520, 500],"
                            + " [520, 900], [400, 900]]}]"));
            assertTrue(plan.loops().get(0).breakdown().elements().size() > 3);
        }
    }

    /** Two parallel lines 200 mm apart cannot both lie on rows 150 mm apart. */
    @Test
    void linesThatCollide() throws IOException {
        Job job = job(
                F01, "[0, 75]", "", "veto: [{mustRun: [[300, 400], [900, 400]]}, {mustRun: [[300, 600], [900, 600]]}]");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("layout.veto[0].mustRun", answer.key());
        assertTrue(answer.getMessage().contains("collides with layout.veto[1].mustRun"), answer.getMessage());
    }

    @Test
    void aLineAcrossAKeepOut() throws IOException {
        Job job = job(
                F01,
                "[0, 75]",
                "",
                "veto: [{mustRun: [[300, 400], [900, 400]]}]",
                "  keepOut: [{name: drain, circle: {centre: [600, 420], radius: 60}, clearance: 60}]\n");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("layout.veto[0].mustRun", answer.key());
        assertTrue(answer.getMessage().contains("collides with floor.keepOut[0] 'drain'"), answer.getMessage());
    }

    @Test
    void aLineAcrossASupportThatNothingCrosses() throws IOException {
        Job job = job(F01, "[0, 75]", supports(rib(700, "never")), "veto: [{mustRun: [[300, 400], [900, 400]]}]");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("layout.veto[0].mustRun", answer.key());
        assertTrue(answer.getMessage().contains("collides with floor.supports[0] 'rib 700'"), answer.getMessage());
    }

    /** A line in the corner, where a bend would have to begin nearer to the wall than pipe may lie. */
    @Test
    void aLineTooNearAWall() throws IOException {
        Job job = job(F01, "[0, 75]", "", "veto: [{mustRun: [[300, 40], [900, 40]]}]");
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertTrue(
                answer.getMessage()
                        .contains("collides with layout.edge: no loop can have both, a smaller edge would do"),
                answer.getMessage());
    }

    @Test
    void aLineAgainstTheDirectionAsked() {
        BadInput answer = assertThrows(
                BadInput.class, () -> job(F01, "[0, 75]", "", "along: x, veto: [{mustRun: [[300, 300], [900, 600]]}]"));
        assertTrue(answer.getMessage().contains("runs at 26.565 degrees, layout.along lays"), answer.getMessage());
    }

    /** A keep-out of no clearance, thinner than a link, is not run through. */
    @Test
    void aThinWall() throws IOException {
        KitPlan plan = plan(job(
                F01,
                "[0, 75]",
                "",
                "along: x",
                "  keepOut: [{name: wall, polygon: [[1190, 0], [1210, 0], [1210, 1200], [1190, 1200]]}]\n"));
        assertEquals(
                0,
                plan.loops().get(0).breakdown().elements().stream()
                        .filter(e -> Math.min(e.from().x(), e.to().x()) < 1190
                                && Math.max(e.from().x(), e.to().x()) > 1210
                                && e.from().y() < 1200)
                        .count());
    }

    private static long crossings(KitPlan.LoopPlan loop, double x) {
        return loop.breakdown().elements().stream()
                .filter(e -> (e.from().x() - x) * (e.to().x() - x) < 0)
                .count();
    }

    private static String rib(int x, String cross) {
        return "{name: rib %1$d, line: [[%1$d, 0], [%1$d, 1500]], width: 40, cross: %2$s}".formatted(x, cross);
    }

    private static String supports(String... all) {
        return "supports: [" + String.join(", ", all) + "]";
    }

    private static KitPlan plan(Job job) {
        KitPlan plan = new KitPlanner(Work.silent()).plan(job);
        assertEquals(List.of(), KitVerifier.verify(plan));
        return plan;
    }

    private Job job(String outline, String port, String more, String layout) throws IOException {
        return job(outline, port, more, layout, "");
    }

    private Job job(String outline, String port, String more, String layout, String keepOuts) throws IOException {
        boolean reach = more.startsWith("reach");
        String text = """
                job: Wishes
                order: W-1
                catalog: workshop.yaml
                floor:
                  outline: %s
                  port: {at: %s%s}
                %s%slayout: {leftOutPrice: 10, %s}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.formatted(
                        outline,
                        port,
                        reach ? ", " + more : "",
                        more.isEmpty() || reach ? "" : "  " + more + "\n",
                        keepOuts,
                        layout);
        try (var catalog = SiteWishesTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }
}
