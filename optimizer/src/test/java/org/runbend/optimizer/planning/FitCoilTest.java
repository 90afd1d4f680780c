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
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Loops that are shortened to what the pipe allows. */
class FitCoilTest {
    @TempDir
    Path folder;

    /**
     * The limit is kept and used: two places more would need two spacings of pipe, 300 mm and 2 %, less what two bends more
     * save, 64 mm, which is not left over.
     */
    @ParameterizedTest(name = "{0} within {1} mm")
    @CsvSource({"f01-rect, 22000, 28, 20", "f12-odd, 9000, 35, 12", "f02-arches, 24000, 40, 28"})
    void longestLoopWithinTheLimit(String name, int limit, int leftOut, int turns) throws IOException {
        KitPlan plan = plan(job(name, "loops: 1", "allowance: 2%, loopLimit: " + limit), Optional.empty());
        assertEquals(List.of(), KitVerifier.verify(plan));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertTrue(loop.cutLength() <= limit, () -> loop.cutLength() + " mm");
        assertTrue(limit - loop.cutLength() < 1.02 * 300 + 66, () -> loop.cutLength() + " mm");
        assertTrue(loop.leftOut() <= leftOut && loop.turns() <= turns, () -> loop.leftOut() + ", " + loop.turns());
        assertTrue(loop.objectiveBound().isEmpty(), "a longer loop may be better");
        assertTrue(plan.remarkWords().stream().anyMatch(r -> r.startsWith("Shortened to ")));
    }

    /** On a plain rectangle 28 gaps find room in the two rows at the walls, 75 and 225 mm from them. */
    @Test
    void gapsLieAtWalls() throws IOException {
        KitPlan plan = plan(job("f01-rect", "loops: 1", "allowance: 2%, loopLimit: 22000"), Optional.empty());
        for (Point p : plan.loops().get(0).bare()) {
            double x = Math.min(p.x(), 2400 - p.x());
            double y = Math.min(p.y(), 1500 - p.y());
            assertTrue(Math.min(x, y) <= 225.01, () -> "bare in the middle: " + p);
        }
    }

    /**
     * The whole loop of f01 passes 160 nodes with 20 turns: (150 x 159 - 0.2146 x 150 x 18 + 2000) x 1.02 is under 26 m
     * and over 25.4. An opened coil of 25.4 m is used up but for less than two spacings, else the coil of 25 m that is sold.
     */
    @Test
    void openedCoilIsFitted() throws IOException {
        Path job = job("f01-rect", "fit: coil", "allowance: 2%");
        Path shelf = Files.writeString(
                folder.resolve("shelf.yaml"), "remnants:\n  - {id: C-7, product: PX-16, length: 25.4 m}\n");
        KitPlan fitted = plan(job, Optional.of(shelf));
        assertEquals(List.of(), KitVerifier.verify(fitted));
        assertEquals(Optional.of("C-7"), fitted.coils().coils().get(0).id());
        assertTrue(fitted.coils().coils().get(0).left() < 1.02 * 300 + 66);
        KitPlan sold = plan(job, Optional.empty());
        assertEquals(25_000, sold.coils().coils().get(0).length(), 1e-6);
        assertTrue(sold.coils().coils().get(0).left() < 1.02 * 300 + 66);
        KitPlan whole = plan(job("f01-rect", "fit: none", "allowance: 2%"), Optional.empty());
        assertEquals(0, whole.loops().get(0).leftOut());
    }

    @Test
    void tailsThatTakeItAllAreNamed() throws IOException {
        Path job = job("f12-odd", "loops: 1", "allowance: 2%, loopLimit: 2100");
        Unbuildable fault = assertThrows(Unbuildable.class, () -> plan(job, Optional.empty()));
        assertEquals("pipe.loopLimit", fault.key());
        assertTrue(fault.getMessage().contains("2040 mm"), fault::getMessage);
    }

    private Path job(String name, String layout, String pipe) throws IOException {
        try (var job = FitCoilTest.class.getResourceAsStream("/floors/" + name + ".yaml");
                var catalog = FitCoilTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
            String text = new String(job.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("layout: {", "layout: {" + layout + ", ")
                    .replace("allowance: 2%", pipe);
            return Files.writeString(folder.resolve(name + ".yaml"), text);
        }
    }

    private static KitPlan plan(Path job, Optional<Path> shelf) {
        return new KitPlanner(Work.silent()).plan(JobReader.read(job, shelf));
    }
}
