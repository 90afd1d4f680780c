package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Whole plans on floors whose best loops are known, and lengths on rectangles that the spacing divides. */
class KnownFloorsTest {
    /** What a quarter bend at half the spacing saves: its two legs less its arc, in spacings, 1 - pi / 4. */
    private static final double SAVED = 1 - Math.PI / 4;

    @TempDir
    Path folder;

    /**
     * Turns and nodes left out of the best loops known, from the table best.csv that came with these floors: found and
     * proved there by a frontier search guided by linear programming, another program than this one. Ours may be
     * better, as nodes on unheated floor may be used here, never worse.
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "f01-rect, 160, 20, 0",
        "f02-arches, 182, 46, 2",
        "f07-corridor, 104, 8, 0",
        "f08-closet, 78, 28, 0",
        "f12-odd, 81, 18, 1"
    })
    void loopIsAsGoodAsTheBestKnown(String name, int nodes, int turns, int leftOut)
            throws IOException, URISyntaxException {
        Path job = Path.of(
                KnownFloorsTest.class.getResource("/floors/" + name + ".yaml").toURI());
        KitPlan plan = plan(JobReader.read(job, Optional.empty()));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        int objective = turns + 10 * leftOut;
        assertTrue(loop.turns() + 10 * loop.leftOut() <= objective, () -> loop.turns() + " and " + loop.leftOut());
        assertEquals(loop.turns() + 10 * loop.leftOut(), loop.objective());
        assertEquals(OptionalInt.of(loop.objective()), loop.objectiveBound(), "proved");
        assertTrue(
                plan.lattice().reachable() >= nodes,
                () -> "reaches " + plan.lattice().reachable());
        assertEquals(List.of(), KitVerifier.verify(plan));
        assertTrue(plan.isSound());
    }

    /** On nine by nine nodes black outnumbers white by one, so every closed loop leaves one out at least. */
    @Test
    void oddSquareLeavesOneOut() throws IOException {
        KitPlan.LoopPlan loop = plan(rectangle(1350, 1350, 150)).loops().get(0);
        assertEquals(1, loop.leftOut());
        assertLength(80, 150, loop);
    }

    /**
     * Rectangles the spacing divides, with a whole number of nodes n = area / spacing squared, all served: each node but
     * the last is followed by one spacing of path, and each quarter bend saves 0.2146 spacings.
     */
    @ParameterizedTest(name = "{0} x {1} at {2}")
    @CsvSource({
        "2400, 1500, 150, 160",
        "1200, 900, 150, 48",
        "900, 600, 150, 24",
        "600, 600, 150, 16",
        "2000, 1200, 200, 60",
        "300, 450, 150, 6"
    })
    void exactFitMeasuresAsReckoned(double length, double width, double spacing, int n) throws IOException {
        KitPlan plan = plan(rectangle(length, width, spacing));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(n, plan.lattice().reachable());
        assertEquals(0, loop.leftOut());
        assertEquals(length * width / spacing, n * spacing, 1e-9);
        assertLength(n, spacing, loop);
    }

    private static void assertLength(int served, double spacing, KitPlan.LoopPlan loop) {
        double turned = loop.breakdown().elements().stream()
                .filter(Element.Bend.class::isInstance)
                .mapToDouble(e -> Math.abs(((Element.Bend) e).turn()))
                .sum();
        double expected = spacing * (served - 1) - SAVED * spacing * turned / 90;
        assertEquals(0.2146, SAVED, 0.00005);
        assertEquals(expected, loop.floorLength(), 0.1);
    }

    /** Neighbouring runs at 150 are joined by half a circle of radius 75: pi x 75 = 235.6 mm. */
    @Test
    void returnBendsMeasure235Point6() throws IOException {
        List<Element.Bend> returns = plan(rectangle(2400, 1500, 150)).loops().get(0).breakdown().elements().stream()
                .filter(e -> e instanceof Element.Bend b && Math.abs(b.turn()) == 180)
                .map(Element.Bend.class::cast)
                .toList();
        assertTrue(returns.size() >= 5, () -> returns.size() + " return bends");
        returns.forEach(b -> assertEquals(235.6, b.length(), 0.05));
    }

    private static KitPlan plan(Job job) {
        return new KitPlanner(Work.silent()).plan(job);
    }

    private Job rectangle(double length, double width, double spacing) throws IOException {
        String text = """
                job: Rectangle
                order: R-1
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [%1$s, 0], [%1$s, %2$s], [0, %2$s]]
                  port: {at: [0, 75]}
                layout: {leftOutPrice: 10, spacing: %3$s, edge: %4$s}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """.formatted(length, width, spacing, spacing / 2);
        try (var catalog = KnownFloorsTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }
}
