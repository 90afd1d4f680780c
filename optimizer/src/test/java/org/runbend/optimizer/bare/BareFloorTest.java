package org.runbend.optimizer.bare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.bare.Remedy.Change;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Floors made by hand for each reason, with place and remedy worked out; every remedy is then taken and the floor planned
 * anew.
 */
class BareFloorTest {
    /** Two rooms of 8 x 8 and 10 x 8 places, and a passage between them from x = 1200 to 1500. */
    private static final String ROOMS =
            "[[0, 0], [1200, 0], [1200, 450], [1500, 450], [1500, 0], [3000, 0], [3000, 1200],"
                    + " [1500, 1200], [1500, %1$d], [1200, %1$d], [1200, 1200], [0, 1200]]";

    @TempDir
    Path folder;

    @Test
    void nothingIsSaidOfAFloorThatIsServed() throws IOException {
        assertEquals(List.of(), Trialled.rectangle(2400, 1500).plan(folder).bareFloor());
    }

    /**
     * A passage 290 wide: at edge 75 it holds one row (140 mm for pipe), at edge 70 two (150 mm). The row lies at y = 525
     * and leaves the port's room at [1125, 525]. Beyond lie 2 places of the passage and 80 of the room. At edge 70 the
     * passage holds 4 places: 64 + 4 + 80 = 148, 84 more than 64.
     */
    @Test
    void joinedByOnePlaceUntilTheEdgeIsLess() throws IOException {
        Trialled floor = Trialled.floor(ROOMS.formatted(740), "[0, 75]");
        KitPlan plan = floor.plan(folder);
        BareFloor bare = only(plan);
        assertEquals(Reason.JOINED_BY_ONE, bare.reason());
        assertEquals(82, bare.places());
        assertEquals(
                "Out of reach: 82 places " + bare.where() + " join the port's part of the floor by one place only,"
                        + " [1125, 525], so a closed loop cannot go there and back.",
                bare.sentence().substring(0, bare.sentence().indexOf(" With ")));
        assertTrue(bare.at().x() > 1800 && bare.at().x() < 2700, bare::where);
        Remedy edge = bare.remedies().get(0);
        assertEquals(new Remedy(Change.EDGE, "", 75, 70, 0, 0, 82, 84, 84 * 0.0225), edge);
        assertEquals(148, floor.with(edge).plan(folder).lattice().reachable());
        floor.assertPromisesKept(plan, 64, folder);
    }

    /**
     * A passage 150 wide can never hold two rows. The other room alone has 80 places, 16 more than the port's 64; the pair
     * of it nearest to the port is [1575, 75] and [1575, 225].
     */
    @Test
    void joinedByOnePlaceUntilThePortMoves() throws IOException {
        Trialled floor = Trialled.floor(ROOMS.formatted(600), "[0, 75]");
        KitPlan plan = floor.plan(folder);
        BareFloor bare = only(plan);
        assertEquals(Reason.JOINED_BY_ONE, bare.reason());
        Remedy port = remedy(bare, Change.PORT);
        assertEquals(new Remedy(Change.PORT, "", 0, 0, 1575, 150, 80, 16, 16 * 0.0225), port);
        assertEquals(
                "With the port at [1575, 150] a loop can reach 80 of them and 16 places more than now on the whole floor.",
                port.sentence());
        floor.assertPromisesKept(plan, 64, folder);
    }

    /**
     * Behind a bench from y = 800 to 900 pipe has 125 mm at a clearance of 100 and 150 mm at 75, enough for two rows. The row
     * at y = 1125 has 6 places over the bench (75 to 825) and leaves the port's part at [975, 1125]. The port's part has 10 x
     * 8 = 80 places less these 6, 7 of the row at 825 and 6 of the row at 975: 61, so a loop passes 60.
     */
    @Test
    void joinedByOnePlaceUntilTheClearanceIsLess() throws IOException {
        Trialled floor =
                Trialled.rectangle(1500, 1200).keepingOut("polygon: [[0, 800], [900, 800], [900, 900], [0, 900]]", 100);
        KitPlan plan = floor.plan(folder);
        BareFloor bare = plan.bareFloor().get(0);
        assertEquals(Reason.JOINED_BY_ONE, bare.reason());
        assertEquals(6, bare.places());
        assertTrue(bare.sentence().contains("[975, 1125]"), bare::sentence);
        assertTrue(bare.where().contains(" near thing, "), bare::where);
        Remedy clearance = remedy(bare, Change.CLEARANCE);
        assertEquals(100, clearance.from());
        assertEquals(75, clearance.to());
        assertEquals(6, clearance.here());
        floor.assertPromisesKept(plan, 60, folder);
    }

    /** The port stands in a pen; at 150 mm 6 x 5 places lie in it, all others join it nowhere. */
    @Test
    void notJoined() throws IOException {
        String ring = "polygon: [[1000, 500], [2000, 500], [2000, 1360], [1000, 1360], [1000, 940], [1060, 940],"
                + " [1060, 1300], [1940, 1300], [1940, 560], [1060, 560], [1060, 920], [1000, 920]]";
        Trialled floor = Trialled.floor("[[550, 50], [2450, 50], [2450, 1810], [550, 1810]]", "[1500, 900]")
                .keepingOut(ring, 60);
        KitPlan plan = floor.plan(folder);
        assertEquals(30, plan.lattice().reachable());
        BareFloor bare = plan.bareFloor().get(0);
        assertEquals(Reason.NOT_JOINED, bare.reason());
        assertTrue(bare.sentence().contains(" join the port's part of the floor nowhere."), bare::sentence);
        Remedy reach = remedy(bare, Change.REACH);
        assertTrue(reach.to() > 330 && reach.to() <= 660, reach::words);
        floor.assertPromisesKept(plan, 30, folder);
    }

    /** An arm 140 wide: pipe keeps 75 from both walls, so 150 would be the least; no change tried makes room for two rows. */
    @Test
    void tooNarrow() throws IOException {
        BareFloor bare = only(Trialled.floor(
                        "[[0, 0], [2400, 0], [2400, 600], [3400, 600], [3400, 740], [2400, 740], [2400, 1500], [0, 1500]]",
                        "[0, 75]")
                .plan(folder));
        assertEquals(Reason.TOO_NARROW, bare.reason());
        // 1000 x 140 less what a disc of 45 leaves in four corners: (4 - pi) x 45^2 = 1738
        assertEquals(0.138, bare.area(), 0.001);
        assertEquals(6, bare.places(), "0.138 / 0.0225 = 6.1");
        assertTrue(bare.at().x() > 2400 && bare.at().y() > 600 && bare.at().y() < 740, bare::where);
        assertEquals(List.of(), bare.remedies());
        assertTrue(
                bare.sentence()
                        .endsWith(
                                ": pipe would come nearer there than 75 mm to the outline (edge). No change of one size was"
                                        + " found that serves it."),
                bare::sentence);
    }

    /**
     * 2690 long: 17 columns of 10 (2400 of 2540 mm), and 140 mm stay at one end. At edge 70 there are 2550 mm: 18 columns.
     */
    @Test
    void betweenPlaces() throws IOException {
        Trialled floor = Trialled.rectangle(2690, 1500);
        KitPlan plan = floor.plan(folder);
        BareFloor bare = only(plan);
        assertEquals(Reason.BETWEEN_PLACES, bare.reason());
        assertEquals(0.21, bare.area(), 0.003);
        assertEquals(List.of(new Remedy(Change.EDGE, "", 75, 70, 0, 0, 10, 10, 0.225)), bare.remedies());
        assertTrue(
                bare.sentence().endsWith("With edge 70 instead of 75 a loop can reach 10 places more."),
                bare::sentence);
        floor.assertPromisesKept(plan, 170, folder);
    }

    /**
     * A bolt 45/45 mm inside the corner place [2325, 1425]: 64 mm from it, 45 from both legs, but sqrt(2) x 30 = 42.4 mm from
     * the centre of the bend, so 32.6 mm from the bend of radius 75. Without that corner 80 and 79 places are left.
     */
    @Test
    void noArc() throws IOException {
        Trialled floor = Trialled.rectangle(2400, 1500).keepingOut("point: [2280, 1380]", 40);
        KitPlan plan = floor.plan(folder);
        BareFloor bare = of(plan, Reason.NO_ARC);
        assertEquals(1, bare.places());
        assertEquals(new Point(2325, 1425), bare.at());
        assertEquals(
                "at [2325, 1425] near thing, 75 mm from the right wall and 75 mm from the upper wall", bare.where());
        assertTrue(bare.sentence().contains("the bend of radius 75 mm"), bare::sentence);
        Remedy clearance = remedy(bare, Change.CLEARANCE);
        assertEquals(new Remedy(Change.CLEARANCE, "thing", 40, 30, 0, 0, 1, 2, 2 * 0.0225), clearance);
        BareFloor other = of(plan, Reason.COLOURS);
        assertEquals(1, other.places());
        assertTrue(other.sentence().contains("80 of one kind and 79 of the other"), other::sentence);
        floor.assertPromisesKept(plan, 158, folder);
    }

    /** 9 x 9 places: 41 and 40. No less edge gives a tenth row. */
    @Test
    void coloursWithoutARemedy() throws IOException {
        BareFloor bare = only(Trialled.rectangle(1350, 1350).plan(folder));
        assertEquals(Reason.COLOURS, bare.reason());
        assertEquals(1, bare.places());
        assertTrue(
                bare.cause().contains("41 of one kind and 40 of the other, so one loop must leave out 1"), bare::cause);
        assertEquals(List.of(), bare.remedies());
    }

    /**
     * 9 x 9 places less [825, 675], one of the 40: a bolt 30/30 mm off it, 42.4 mm, at a clearance of 45. One loop passes
     * 2 x 39 = 78. At 40 the place is back with two legs: 80 can be passed and 1 instead of 2 must be left out.
     */
    @Test
    void coloursUntilTheClearanceIsLess() throws IOException {
        Trialled floor = Trialled.rectangle(1350, 1350).keepingOut("point: [855, 705]", 45);
        KitPlan plan = floor.plan(folder);
        BareFloor bare = of(plan, Reason.COLOURS);
        assertEquals(2, bare.places());
        assertEquals(new Remedy(Change.CLEARANCE, "thing", 45, 40, 0, 0, 1, 2, 0.045), remedy(bare, Change.CLEARANCE));
        floor.assertPromisesKept(plan, 78, folder);
    }

    /**
     * 10 x 4 places and a niche of two beside a long side. Four rows take 8 turns; the niche breaks the row beside it, up,
     * over, down and on: 4 more for 2 places. At a price of 1 they are left out, and they are worth it from 3 on, as
     * 12 < 8 + 2 x 3.
     */
    @Test
    void turnsUntilThePriceIsHigher() throws IOException {
        Trialled floor = Trialled.floor(
                        "[[0, 0], [1500, 0], [1500, 600], [900, 600], [900, 750], [600, 750], [600, 600], [0, 600]]",
                        "[0, 75]")
                .priced(1);
        KitPlan plan = floor.plan(folder);
        BareFloor bare = only(plan);
        assertEquals(Reason.TURNS, bare.reason());
        assertEquals(2, bare.places());
        assertEquals(675, bare.at().y());
        assertEquals(List.of(new Remedy(Change.PRICE, "", 1, 3, 0, 0, 2, 2, 0.045, 4)), bare.remedies());
        assertTrue(
                bare.sentence()
                        .endsWith(
                                "A loop that serves 2 places more was found, at 4 quarter bends more; with leftOutPrice 3"
                                        + " instead of 1 it is the one laid."),
                bare::sentence);
        floor.assertPromisesKept(plan, 42, folder);
    }

    private static BareFloor only(KitPlan plan) {
        assertEquals(1, plan.bareFloor().size(), () -> plan.remarkWords().toString());
        return plan.bareFloor().get(0);
    }

    private static BareFloor of(KitPlan plan, Reason reason) {
        return plan.bareFloor().stream()
                .filter(b -> b.reason() == reason)
                .findFirst()
                .orElseThrow(() -> new AssertionError(plan.remarkWords().toString()));
    }

    private static Remedy remedy(BareFloor bare, Change change) {
        return bare.remedies().stream()
                .filter(r -> r.change() == change)
                .findFirst()
                .orElseThrow(() -> new AssertionError(bare.sentence()));
    }
}
