package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.boards.BoardSplitting;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.boards.SameParts;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.BoardsChange;
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

    /** After a bolt came to a corner a part stays unless the bolt stands in it; what was cut is as kit.json has it, to a thousandth. */
    @Test
    void aNewBoltTouchesItsPartAlone() {
        Point at = new Point(1860, 40);
        List<Point> square =
                List.of(new Point(1850, 30), new Point(1870, 30), new Point(1870, 50), new Point(1850, 50));
        Cutout bolt = new Cutout("bolt", square, Optional.empty(), Set.of(Role.values()), 1, Filling.OPEN);
        List<Cutout> cutouts = new ArrayList<>(plan.problem().cutouts());
        cutouts.add(bolt);
        // foam alone, as wood takes longer; a whole kit is planned so by the command line's test
        List<CutLayer> before = before(BoardsPartTest::written).stream()
                .filter(l -> l.role() == Role.INSULATION)
                .toList();
        BoardsProblem problem = changed(plan.problem().outline(), cutouts, before);
        BoardsPlan after = new BoardSplitting()
                .solve(only(problem, List.of(problem.layers().get(0))));
        assertStays(after, p -> !(left(p) < at.x() && at.x() < right(p) && low(p) < at.y() && at.y() < high(p)));
        BoardsChange change = BoardsChange.of(before, Optional.of(after)).orElseThrow();
        assertEquals(1, change.gone().size(), change.sentence());
        assertTrue(change.sentence().contains("1 is cut again"), change.sentence());
    }

    /** A wall 20 mm further in: foam whose joints were sought anew would lie 20 mm further in too; those cut stay where they are. */
    @Test
    void jointsStayWhereTheyWereCut() {
        List<Point> outline = plan.problem().outline().stream()
                .map(p -> new Point(Math.min(p.x(), 1880), p.y()))
                .toList();
        BoardsProblem all = changed(outline, plan.problem().cutouts(), before(p -> p));
        BoardsProblem foam = only(all, List.of(all.layers().get(0)));
        BoardsPlan after = new BoardSplitting().solve(foam);
        assertEquals(List.of(), BoardsVerifier.verify(after));
        assertStays(after, p -> right(p) < 1860);
        assertTrue(after.layers().get(0).boards() <= plan.layers().get(0).boards());
    }

    /** A part is the same to 0.05 mm: its place, its grooves, its depth. Nothing cut before: all is cut, and nothing breaks. */
    @Test
    void whatIsTheSame() {
        assertEquals(12, stay(before(p -> p), 0));
        assertEquals(12, stay(before(p -> moved(p, 0.03)), 0));
        assertEquals(0, stay(before(p -> moved(p, 0.2)), 0));
        assertEquals(10, stay(before(p -> p), 0.1), "two parts are routed");
        assertEquals(10, stay(before(p -> with(p, p.spot(), List.of())), 0));
        assertEquals(0, stay(List.of(), 0));
        assertEquals(
                "No boards were cut before: all of the floor is cut, 12 parts.",
                BoardsChange.of(List.of(), Optional.of(plan)).orElseThrow().sentence());
        assertEquals(
                12,
                BoardsChange.of(before(p -> p), Optional.empty())
                        .orElseThrow()
                        .gone()
                        .size());
    }

    private static long stay(List<CutLayer> before, double deeper) {
        List<CutLayer> cut = before.stream()
                .map(l -> new CutLayer(
                        l.role(), l.material(), l.name(), l.thickness(), l.depth() + deeper, l.parts(), l.joints()))
                .toList();
        BoardsProblem problem = changed(plan.problem().outline(), plan.problem().cutouts(), cut);
        return plan.layers().stream()
                .flatMap(l -> SameParts.of(problem, l).stream())
                .filter(Optional::isPresent)
                .count();
    }

    private static void assertStays(BoardsPlan after, Predicate<Part> expected) {
        for (LayerPlan layer : after.layers()) {
            List<Optional<Part>> same = SameParts.of(after.problem(), layer);
            for (int i = 0; i < same.size(); i++) {
                Part part = layer.parts().get(i);
                assertEquals(expected.test(part), same.get(i).isPresent(), part.label());
            }
        }
    }

    /** What was cut by the plan, each part changed. */
    private static List<CutLayer> before(UnaryOperator<Part> way) {
        return plan.layers().stream()
                .map(l -> new CutLayer(
                        l.layer().role(),
                        l.layer().material(),
                        l.layer().name(),
                        l.layer().thickness(),
                        plan.problem().making().depth(),
                        l.parts().stream().map(way).toList(),
                        l.joints()))
                .toList();
    }

    /** A part with lengths of three decimals. */
    private static Part written(Part p) {
        return new Part(
                p.label(),
                written(p.edge()),
                p.openings().stream().map(BoardsPartTest::written).toList(),
                p.rounds().stream()
                        .map(r -> new Round(written(List.of(r.centre())).get(0), r.radius()))
                        .toList(),
                p.pockets().stream().map(BoardsPartTest::written).toList(),
                p.ramps(),
                p.spot());
    }

    private static List<Point> written(List<Point> line) {
        return line.stream()
                .map(p -> new Point(Math.rint(p.x() * 1000) / 1000, Math.rint(p.y() * 1000) / 1000))
                .toList();
    }

    private static BoardsProblem changed(List<Point> outline, List<Cutout> cutouts, List<CutLayer> before) {
        BoardsProblem p = plan.problem();
        return new BoardsProblem(
                outline,
                p.layers(),
                cutouts,
                p.packers(),
                p.loops(),
                p.grooves(),
                p.ramps(),
                p.supports(),
                p.making(),
                before);
    }

    private static BoardsProblem only(BoardsProblem p, List<BoardsProblem.Layer> layers) {
        return new BoardsProblem(
                p.outline(),
                layers,
                p.cutouts(),
                p.packers(),
                p.loops(),
                p.grooves(),
                p.ramps(),
                p.supports(),
                p.making(),
                p.before());
    }

    private static double left(Part p) {
        return p.edge().stream().mapToDouble(Point::x).min().orElseThrow();
    }

    private static double right(Part p) {
        return p.edge().stream().mapToDouble(Point::x).max().orElseThrow();
    }

    private static double low(Part p) {
        return p.edge().stream().mapToDouble(Point::y).min().orElseThrow();
    }

    private static double high(Part p) {
        return p.edge().stream().mapToDouble(Point::y).max().orElseThrow();
    }

    /** On boards of some sizes a joint crosses a bend at a slant; its groove runs out no farther than parts lie apart. */
    @Test
    void groovesAtASlantRunOutIntoNoOtherPart() {
        boolean slanting = false;
        for (int length = 1250; length >= 1000 && !slanting; length -= 50) {
            BoardsPlan cut = routedOn(new Sheet(length, 700, 1, 1));
            assertEquals(List.of(), BoardsVerifier.verify(cut), "boards of " + length);
            slanting = cut.layers().get(0).breaches().stream().anyMatch(b -> b.wish() == BoardsPlan.Wish.SQUARE);
        }
        assertTrue(slanting, "no joint crossed a bend at a slant");
    }

    /** The routed layer on boards of one size. */
    private static BoardsPlan routedOn(Sheet sheet) {
        BoardsProblem p = plan.problem();
        Layer r = plan.layers(Role.ROUTED).get(0).layer();
        Layer small = new Layer(
                r.code(),
                r.role(),
                r.material(),
                r.name(),
                r.thickness(),
                List.of(sheet),
                true,
                r.perimeterGap(),
                r.density());
        return new BoardSplitting()
                .solve(new BoardsProblem(
                        p.outline(),
                        List.of(small),
                        p.cutouts(),
                        List.of(),
                        p.loops(),
                        p.grooves(),
                        p.ramps(),
                        p.supports(),
                        p.making(),
                        List.of()));
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
