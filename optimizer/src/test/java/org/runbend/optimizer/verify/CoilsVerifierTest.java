package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.runbend.optimizer.plan.SoundKit.assertFound;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.coils.CoilPlan.CoilCut;
import org.runbend.optimizer.coils.CoilPlan.LoopCut;
import org.runbend.optimizer.plan.SoundKit;

/** Each rule: a sound coil plan passes, and one change that breaks the rule is found and named. */
class CoilsVerifierTest {
    private static final LoopCut A = new LoopCut("A", 3710);

    @Test
    void soundPlansHaveNothingAgainstThem() {
        assertEquals(List.of(), found(SoundKit.coils()));
        assertEquals(List.of(), found(new CoilPlan(List.of(shelf("C7", 9000, 5290)), 0, 0, "shelf")));
    }

    @Test
    void loopWithoutPipe() {
        assertFound(
                found(new CoilPlan(List.of(bought(25_000, List.of(), 25_000)), 2000, 0, "")),
                "loop A",
                "cut 0 times",
                "1 asked");
    }

    @Test
    void loopCutTwice() {
        assertFound(found(plan(bought(25_000, List.of(A, A), 18_012))), "loop A", "cut 2 times", "1 asked");
    }

    @Test
    void wrongLength() {
        assertFound(
                found(plan(bought(25_000, List.of(new LoopCut("A", 3490)), 21_510))),
                "loop A",
                "3490.00 mm",
                "3710.00 mm asked");
    }

    @Test
    void unknownLoop() {
        assertFound(
                found(plan(bought(25_000, List.of(A, new LoopCut("Z", 100)), 21_406))),
                "100.00 mm",
                "loop Z",
                "none of the 1 loops");
    }

    @Test
    void cutsDoNotFit() {
        CoilPlan plan = plan(bought(25_000, List.of(new LoopCut("A", 26_000)), 0));
        assertFound(
                verify(new LoopCut("A", 26_000), plan), "coil 0 of PX-16", "26000.00 mm do not fit its 25000.00 mm");
    }

    @Test
    void coilWithoutCuts() {
        CoilPlan plan = new CoilPlan(
                List.of(bought(25_000, List.of(A), 21_290), bought(25_000, List.of(), 25_000)), 4000, 0, "");
        assertFound(found(plan), "coil 1 of PX-16", "0 cuts");
    }

    @Test
    void wrongRest() {
        assertFound(found(plan(bought(25_000, List.of(A), 21_000))), "coil 0", "21000.00 mm are said", "21290.00 mm");
    }

    @Test
    void lengthNotSold() {
        assertFound(
                found(plan(bought(30_000, List.of(A), 26_506))),
                "coil 0",
                "30000.00 mm is not sold",
                "25000.00, 50000.00");
    }

    @Test
    void otherPipe() {
        CoilCut other = new CoilCut("PX-12", 25_000, List.of(A), 21_290, Optional.empty());
        assertFound(found(plan(other)), "coil 0 of PX-12", "PX-16, not PX-12");
    }

    @Test
    void notOnTheShelf() {
        assertFound(found(new CoilPlan(List.of(shelf("C8", 9000, 5290)), 0, 0, "")), "C8", "not lie on the shelf");
    }

    @Test
    void otherLengthOnTheShelf() {
        assertFound(found(new CoilPlan(List.of(shelf("C7", 9500, 6006)), 0, 0, "")), "C7", "9000.00 mm", "9500.00 mm");
    }

    @Test
    void shelfCoilUsedTwice() {
        CoilPlan plan = new CoilPlan(List.of(shelf("C7", 9000, 5290), shelf("C7", 9000, 5290)), 0, 0, "");
        assertFound(found(plan), "coil 1", "C7 from the shelf is used twice");
    }

    @Test
    void wrongCost() {
        assertFound(found(new CoilPlan(SoundKit.coils().coils(), 1900, 1900, "")), "cost of 1900", "add up to 2000");
    }

    @Test
    void boundOverCost() {
        assertFound(found(new CoilPlan(SoundKit.coils().coils(), 2000, 2001, "")), "bound 2001", "cost 2000");
    }

    private static CoilCut bought(double length, List<LoopCut> cuts, double left) {
        return new CoilCut("PX-16", length, cuts, left, Optional.empty());
    }

    private static CoilCut shelf(String id, double length, double left) {
        return new CoilCut("PX-16", length, List.of(A), left, Optional.of(id));
    }

    private static CoilPlan plan(CoilCut coil) {
        return new CoilPlan(List.of(coil), 2000, 2000, "");
    }

    private static List<Finding> found(CoilPlan plan) {
        return verify(A, plan);
    }

    private static List<Finding> verify(LoopCut wanted, CoilPlan plan) {
        return new CoilsVerifier(SoundKit.PIPE, SoundKit.SHELF).verify(List.of(wanted), plan);
    }
}
