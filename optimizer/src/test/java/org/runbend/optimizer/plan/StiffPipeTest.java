package org.runbend.optimizer.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
import org.runbend.optimizer.job.JobReader;

/** Plans for a pipe whose least radius is over half the spacing. */
class StiffPipeTest {
    @TempDir
    Path folder;

    /**
     * Least turns + 4 x places left out, proved by another program on these floors from the nearest port pair and without
     * unheated nodes: 26 + 4 x 8, 16 + 4 x 11, 44 + 4 x 26. Ours may choose among port pairs and pass unheated floor, so it
     * may be better.
     */
    @ParameterizedTest(name = "{0} at radius {1}")
    @CsvSource({"f01-rect, 80, 58", "f12-odd, 80, 60", "f02-arches, 80, 148", "f01-rect, 110, 58", "f12-odd, 150, 60"})
    void bendsKeepTheRadius(String name, int radius, int objective) throws IOException {
        KitPlan plan = plan(name, radius, "leftOutPrice: 4");
        assertEquals(List.of(), KitVerifier.verify(plan));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertTrue(loop.objective() <= objective, () -> loop.turns() + " and " + loop.leftOut());
        assertBends(plan, radius);
        assertTrue(plan.remarks().stream().anyMatch(r -> r.startsWith("Stiff pipe: ")));
    }

    private static void assertBends(KitPlan plan, int radius) {
        for (KitPlan.LoopPlan loop : plan.loops()) {
            for (Element e : loop.breakdown().elements()) {
                if (e instanceof Element.Bend bend) {
                    assertEquals(radius, bend.radius(), 1e-9);
                    assertEquals(radius, bend.centre().distance(bend.from()), 1e-6);
                }
            }
        }
    }

    @Test
    void severalStiffLoopsEachWithinALimit() throws IOException {
        KitPlan plan = plan("f01-rect", 80, "loops: 2, leftOutPrice: 4");
        assertEquals(List.of(), KitVerifier.verify(plan));
        assertEquals(2, plan.loops().size());
        assertBends(plan, 80);
        KitPlan shorter = plan("f01-rect", 80, "loops: 2, leftOutPrice: 4", "allowance: 2%, loopLimit: 11 m");
        assertEquals(List.of(), KitVerifier.verify(shorter));
        shorter.loops().forEach(l -> assertTrue(l.cutLength() <= 11_000, () -> l.cutLength() + " mm"));
        assertBends(shorter, 80);
    }

    private KitPlan plan(String name, int radius, String layout) throws IOException {
        return plan(name, radius, layout, "allowance: 2%");
    }

    private KitPlan plan(String name, int radius, String layout, String pipe) throws IOException {
        try (var job = StiffPipeTest.class.getResourceAsStream("/floors/" + name + ".yaml");
                var catalog = StiffPipeTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            String shop = new String(catalog.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("fitted: 55, byHand: 80", "fitted: " + radius + ", byHand: 200");
            Files.writeString(folder.resolve("workshop.yaml"), shop);
            String text = new String(job.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("layout: {", "layout: {" + layout + ", ")
                    .replace("allowance: 2%", pipe);
            Path written = Files.writeString(folder.resolve(name + ".yaml"), text);
            return new KitPlanner(Progress.SILENT).plan(JobReader.read(written, Optional.empty()));
        }
    }
}
