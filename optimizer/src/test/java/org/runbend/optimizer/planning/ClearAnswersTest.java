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
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Floors at the edge of what can be: each gets a loop or one sentence that says what is wrong. */
class ClearAnswersTest {
    @TempDir
    Path folder;

    /** Between edges of 75 mm a width of 250 mm leaves 100 mm, and two runs at 150 mm need 150. */
    @Test
    void noLoopInTwoHundredAndFiftyMillimetres() throws IOException {
        assertTooSmall(rectangle(1500, 250));
    }

    /** 150 mm less two edges of 75 mm is one line: a row of nodes from which no pipe comes back. */
    @Test
    void oneRow() throws IOException {
        assertTooSmall(rectangle(3000, 150));
    }

    /** A chest along the whole wall keeps pipe away: the nearest node is further than 2.2 x 150 = 330 mm. */
    @Test
    void portBehindAChest() throws IOException {
        Job job = job(box(3000, 1800), "[0, 900]", keepOut("chest", 0, 0, 600, 1800, 60));
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("floor.port", answer.key());
        assertTrue(answer.getMessage().contains("within 330 mm of the port"), answer.getMessage());
    }

    /**
     * A port in a pen of four walls: clear inside from 1120 to 1880 and from 620 to 1240 (walls and 60 mm), so at 150 mm
     * at most 6 x 5 = 30 nodes can be served and all others are out of reach.
     */
    @Test
    void portWalledIn() throws IOException {
        String pen = keepOut("south", 1000, 500, 2000, 560, 60)
                + keepOut("north", 1000, 1300, 2000, 1360, 60)
                + keepOut("west", 1000, 500, 1060, 1360, 60)
                + keepOut("east", 1940, 500, 2000, 1360, 60);
        KitPlan plan = plan(job(box(3000, 1800), "[1500, 900]", pen));
        assertEquals(30, plan.lattice().reachable());
        assertEquals(0, plan.loops().get(0).leftOut());
        assertTrue(
                plan.remarkWords().stream().anyMatch(n -> n.startsWith("Out of reach: ")),
                () -> "" + plan.remarkWords());
    }

    /** A gap of 150 mm lets one link through, and no loop goes there and back on it; the port's room is 8 x 8 nodes. */
    @Test
    void twoRoomsJoinedByOneLink() throws IOException {
        String rooms = "[[0, 0], [1200, 0], [1200, 450], [1500, 450], [1500, 0], [3000, 0], [3000, 1200], [1500, 1200],"
                + " [1500, 600], [1200, 600], [1200, 1200], [0, 1200]]";
        KitPlan plan = plan(job(rooms, "[0, 75]", ""));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(64, plan.lattice().reachable());
        assertEquals(0, loop.leftOut());
        assertEquals(16, loop.turns(), "a square of 2n x 2n needs 4n turns, n = 4 (Jehn 2021)");
        assertTrue(
                plan.remarkWords().stream().anyMatch(n -> n.startsWith("Out of reach: ")),
                () -> "" + plan.remarkWords());
    }

    /** Two rows of 33 nodes (75 + 32 x 150 = 4875): once round is the only loop that serves all, with four turns. */
    @Test
    void fiveMetresByThirtyCentimetres() throws IOException {
        KitPlan plan = plan(rectangle(5000, 300));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(66, plan.lattice().reachable());
        assertEquals(0, loop.leftOut());
        assertEquals(4, loop.turns());
        assertEquals(OptionalInt.of(4), loop.objectiveBound());
    }

    /** A piece as short as a step is the shortest there is. */
    @Test
    void noLeastPiece() throws IOException {
        KitPlan plan = plan(job(box(1500, 300), "[0, 75]", "", "minPiece: 0, gap: 0, coverage: 100%"));
        assertTrue(plan.plates().plated() > 0.9 * plan.plates().plateable());
    }

    /** A cold strip of 40 mm across both runs, yet pieces are to lie 100 mm apart: those beside it too. */
    @Test
    void coldStripNarrowerThanTheGap() throws IOException {
        String strip = "  unheated: [{name: threshold, polygon: [[700, 0], [740, 0], [740, 300], [700, 300]]}]\n";
        KitPlan plan = plan(job(box(1500, 300), "[0, 75]", strip, "gap: 100, coverage: 100%"));
        // Each run of 1350 loses the bend of 75 at its far end, a clearance of 100 and, for strip and gap, 100; at its
        // hole the
        // slot of 55 + 8 mm with half the groove of 20 at its end.
        assertEquals(2 * (1075 - 73), plan.plates().plateable(), 0.01);
        assertEquals(4, plan.plates().pieces().size(), () -> "" + plan.plates().pieces());
    }

    /** Sides of lattice squares fall within 1e-13 mm of the outline's, where overlays of floating numbers may fail. */
    @Test
    void latticeThatAllButMeetsTheOutline() throws IOException {
        String cross = "[[147.1, 0], [576.1, 0], [576.1, 166.5], [723.2, 166.5], [723.2, 313], [576.1, 313],"
                + " [576.1, 479.5], [147.1, 479.5], [147.1, 313], [0, 313], [0, 166.5], [147.1, 166.5]]";
        String port = "[679.1, -110.6], reach: 2000";
        KitPlan plan = plan(read(text(cross, port, "", "coverage: 99.9%").replace("edge: 75", "edge: 30, along: 90")));
        assertEquals(4, plan.loops().get(0).turns());
    }

    /** On a slanting lattice the corner of a plate sticks out of the floor: a thin part, but more than 1 mm deep. */
    @Test
    void thinCornerOfAPlateOutsideTheFloor() throws IOException {
        String drain = "  keepOut: [{polygon: [[345.9, 106.8], [470.6, 106.8], [470.6, 231.5], [345.9, 231.5]],"
                + " clearance: 20}]\n";
        String floor = "[[0, 0], [453.7, 0], [453.7, 926.7], [0, 926.7]]";
        String text = text(floor, "[453.7, 858], reach: 2000", drain, "bendClearance: 0, gap: 5, coverage: 100%");
        KitPlan plan = plan(read(text.replace("spacing: 150, edge: 75", "spacing: 120, edge: 50, along: 12.5")));
        assertTrue(plan.plates().plated() > 0);
    }

    /** Bodies of plates reach a hair beyond the wall all along their runs. */
    @Test
    void platesAHairBeyondTheWall() throws IOException {
        String floor = "[[0, 0], [157.1, 0], [157.1, 40.9], [318.1, 40.9], [318.1, 0], [576.4, 0], [576.4, 610.7],"
                + " [0, 610.7]]";
        String text = text(floor, "[0, 116.6], reach: 330", "", "gap: 5")
                .replace("spacing: 150, edge: 75", "spacing: 100, edge: 30")
                .replace("PX-16", "PX-10")
                .replace("SP-1", "SP-10");
        assertTrue(plan(read(text)).plates().plated() > 0);
    }

    /** 5.2 m x 5 m. */
    @Test
    void twentySixSquareMetres() {
        BadInput answer = assertThrows(BadInput.class, () -> rectangle(5200, 5000));
        assertTrue(answer.getMessage().contains("26.00 m2, at most 25 m2"), answer.getMessage());
    }

    /** 26 m x 0.5 m. */
    @Test
    void twentySixMetres() {
        BadInput answer = assertThrows(BadInput.class, () -> rectangle(26_000, 500));
        assertTrue(answer.getMessage().contains("is 26.00 m long, at most 25 m"), answer.getMessage());
    }

    private static void assertTooSmall(Job job) {
        Unbuildable answer = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("floor.outline", answer.key());
        assertTrue(answer.getMessage().contains("a clear square of at least 300 mm"), answer.getMessage());
    }

    private static KitPlan plan(Job job) {
        KitPlan plan = new KitPlanner(Work.silent()).plan(job);
        assertEquals(List.of(), KitVerifier.verify(plan));
        return plan;
    }

    private static String box(int length, int width) {
        return "[[0, 0], [%1$d, 0], [%1$d, %2$d], [0, %2$d]]".formatted(length, width);
    }

    private static String keepOut(String name, int west, int south, int east, int north, int clearance) {
        return "    - {name: %s, polygon: [[%2$d, %3$d], [%4$d, %3$d], [%4$d, %5$d], [%2$d, %5$d]], clearance: %6$d}\n"
                .formatted(name, west, south, east, north, clearance);
    }

    private Job rectangle(int length, int width) throws IOException {
        return job(box(length, width), "[0, 75]", "");
    }

    private Job job(String outline, String port, String keepOuts) throws IOException {
        return job(outline, port, keepOuts.isEmpty() ? "" : "  keepOut:\n" + keepOuts, "plateClearance: 5");
    }

    private Job job(String outline, String port, String regions, String plates) throws IOException {
        return read(text(outline, port, regions, plates));
    }

    private static String text(String outline, String port, String regions, String plates) {
        return """
                job: Edge of what can be
                order: E-1
                catalog: workshop.yaml
                floor:
                  outline: %s
                  port: {at: %s}
                %slayout: {leftOutPrice: 10, spacing: 150, edge: 75}
                pipe: {product: PX-16}
                plates: {product: [SP-1], %s}
                """.formatted(outline, port, regions, plates);
    }

    private Job read(String text) throws IOException {
        try (var catalog = ClearAnswersTest.class.getResourceAsStream("/floors/workshop.yaml")) {
            Files.write(folder.resolve("workshop.yaml"), catalog.readAllBytes());
        }
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }
}
