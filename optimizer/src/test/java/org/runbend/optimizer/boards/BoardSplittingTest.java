package org.runbend.optimizer.boards;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.verify.BoardsVerifier;

/** Floors of foam boards whose corners and openings whole boards from the walls do not meet; the verifier says what is right. */
class BoardSplittingTest {
    /** Two arms of 1200 mm: a row of whole boards leaves slivers beside the bay, joints at its corners do not. */
    @Test
    void jointsGoToTheCornersOfABay() {
        LayerPlan foam = foam(
                List.of(
                        new Point(0, 0),
                        new Point(4200, 0),
                        new Point(4200, 2400),
                        new Point(3000, 2400),
                        new Point(3000, 1050),
                        new Point(1200, 1050),
                        new Point(1200, 2400),
                        new Point(0, 2400)),
                List.of());
        // by hand: arms and bay have 4.2 x 1.05 + 2 x 1.2 x 1.35 = 7.65 m2, less 8 mm along 15.9 m: 7.52 m2; a board
        // has 0.75
        assertEquals(11, foam.bound());
        assertTrue(foam.boards() <= foam.bound() + 2, () -> "boards " + foam.boards());
    }

    /** A stove stands on 600 x 500 mm of the floor: no board of 1250 x 600 mm lies round it. */
    @Test
    void jointsGoIntoAnOpeningThatNoBoardLiesRound() {
        List<Point> stove =
                List.of(new Point(300, 2500), new Point(900, 2500), new Point(900, 3000), new Point(300, 3000));
        LayerPlan foam = foam(
                List.of(
                        new Point(0, 0),
                        new Point(4200, 0),
                        new Point(4200, 1600),
                        new Point(2900, 3300),
                        new Point(0, 3300)),
                List.of(new Cutout("stove", stove, Optional.empty(), Set.of(Role.values()), 8, Filling.OPEN)));
        assertTrue(
                foam.parts().stream().allMatch(p -> p.openings().isEmpty()),
                "a hole of 616 mm less than 100 mm from the edges of a board");
    }

    /** A floor too narrow for a part that can be held is refused still. */
    @Test
    void aStripIsRefused() {
        List<Point> strip = List.of(new Point(0, 0), new Point(3000, 0), new Point(3000, 110), new Point(0, 110));
        assertThrows(BoardSplitting.NoSplit.class, () -> foam(strip, List.of()));
    }

    private static LayerPlan foam(List<Point> outline, List<Cutout> cutouts) {
        Sheet sheet = new Sheet(1250, 600, 590, 1120);
        Layer layer = new Layer("I", Role.INSULATION, "foam", "Foam", 30, List.of(sheet), false, 6, 32);
        Making making = new Making(1, 2, Map.of(), 4, 10, 100, false, 12, 16.5, 20, 32, 16.5);
        BoardsProblem problem = new BoardsProblem(
                outline,
                List.of(layer),
                cutouts,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                making,
                List.of());
        BoardsPlan plan = new BoardSplitting().solve(problem);
        assertEquals(List.of(), BoardsVerifier.verify(plan));
        return plan.layers().get(0);
    }
}
