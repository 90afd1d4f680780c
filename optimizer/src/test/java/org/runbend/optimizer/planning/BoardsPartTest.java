package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.verify.BoardsVerifier;
import org.runbend.optimizer.work.Work;

/** The boards of an example: what its verifier says of them, and of spoilt ones. */
class BoardsPartTest {
    private static BoardsPlan plan;

    @BeforeAll
    static void planOnce() {
        Path job = Path.of("..", "examples", "ways-in", "boards-hut.yaml");
        KitPlan kit = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty()));
        plan = kit.boards().orElseThrow();
    }

    @Test
    void threeLayersAreWhole() {
        assertEquals(List.of(), BoardsVerifier.verify(plan));
        assertEquals(
                List.of(Role.INSULATION, Role.ROUTED, Role.COVER),
                plan.layers().stream().map(l -> l.layer().role()).toList());
        // by area 1.9 m x 1.4 m take 4 foam boards of 0.75 m2 and more than one of ply 1.25 m wide
        assertEquals(4, plan.layers().get(0).bound());
        for (LayerPlan l : plan.layers()) {
            assertTrue(l.bound() <= l.triedBound() && l.triedBound() <= l.boards());
            assertEquals(
                    l.parts().size(),
                    l.parts().stream().map(Part::label).distinct().count());
        }
    }

    /** A part turned, moved, left out, twice on a board, with a groove too few or too many: each is found. */
    @Test
    void spoiltBoardsAreFound() {
        for (int l = 0; l < plan.layers().size(); l++) {
            LayerPlan layer = plan.layers().get(l);
            Part part = layer.parts().get(0);
            Spot s = part.spot();
            List<Part> spoilt = new ArrayList<>(List.of(
                    with(part, new Spot(s.board(), s.x() - 15, s.y(), s.quarters()), part.pockets()),
                    with(part, new Spot(s.board() + 40, s.x(), s.y(), s.quarters()), part.pockets()),
                    moved(part, 3)));
            if (layer.layer().role() == Role.ROUTED) {
                spoilt.add(
                        with(part, s, part.pockets().subList(1, part.pockets().size())));
                List<List<Point>> more = new ArrayList<>(part.pockets());
                Point p = part.edge().get(0);
                Point q = part.edge().get(2);
                double x = (p.x() + q.x()) / 2;
                double y = (p.y() + q.y()) / 2;
                more.add(List.of(
                        new Point(x, y), new Point(x + 40, y), new Point(x + 40, y + 40), new Point(x, y + 40)));
                spoilt.add(with(part, s, more));
            }
            for (int k = 0; k < spoilt.size(); k++) {
                List<Part> parts = new ArrayList<>(layer.parts());
                parts.set(0, spoilt.get(k));
                int at = k;
                assertFalse(
                        BoardsVerifier.verify(with(l, parts)).isEmpty(),
                        () -> layer.layer().name() + " " + at);
            }
        }
    }

    private static Part with(Part p, Spot spot, List<List<Point>> pockets) {
        return new Part(p.label(), p.edge(), p.openings(), p.rounds(), pockets, p.ramps(), spot);
    }

    private static Part moved(Part p, double by) {
        List<Point> edge =
                p.edge().stream().map(c -> new Point(c.x() + by, c.y())).toList();
        return new Part(p.label(), edge, p.openings(), p.rounds(), p.pockets(), p.ramps(), p.spot());
    }

    private static BoardsPlan with(int at, List<Part> parts) {
        List<LayerPlan> layers = new ArrayList<>(plan.layers());
        LayerPlan l = layers.get(at);
        layers.set(
                at,
                new LayerPlan(
                        l.layer(), l.sheet(), l.boards(), l.bound(), l.triedBound(), parts, l.joints(), l.breaches()));
        return new BoardsPlan(plan.problem(), layers);
    }
}
