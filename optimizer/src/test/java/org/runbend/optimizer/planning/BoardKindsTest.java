package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem;
import org.runbend.optimizer.boards.BoardsProblem.Packer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.verify.BoardsVerifier;
import org.runbend.optimizer.work.Work;

/** What hatch, anchor and bolt do to the boards of a floor, in numbers worked out by hand; depths at the worst of tolerances. */
class BoardKindsTest {
    private static KitPlan kit;
    private static BoardsPlan plan;

    @BeforeAll
    static void planOnce(@TempDir Path folder) throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        Path job = Files.writeString(folder.resolve("job.yaml"), """
                job: Hatch and anchor
                order: T-18
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [1300, 0], [1300, 1150], [0, 1150]]
                  marks: [{edge: 3, text: window}, {point: [1300, 300], text: door}]
                  keepOut:
                    - {name: bilge hatch, kind: hatch, polygon: [[800, 200], [1100, 200], [1100, 500], [800, 500]]}
                    - {name: seat anchor, kind: anchor, point: [900, 850]}
                    - {name: bolt, kind: bolt, point: [1200, 1000]}
                  port: {at: [0, 150], reach: 330}
                layout:
                  spacing: 150
                  edge: 75
                  loop: [[75, 150], [600, 150], [600, 600], [75, 600], [75, 300]]
                pipe: {product: PX-16, tails: [900, 1100]}
                plates: {product: SP-1, coverage: 80%}
                build:
                  insulation: 0
                  board: {material: birch-ply, thickness: 21}
                  cover: {thickness: 12, material: birch-ply}
                  boards: {}
                """);
        kit = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty()));
        plan = kit.boards().orElseThrow();
    }

    private static LayerPlan layer(Role role) {
        return plan.layers().stream()
                .filter(l -> l.layer().role() == role)
                .findFirst()
                .orElseThrow();
    }

    private static List<Round> rounds(Role role) {
        return layer(role).parts().stream().flatMap(p -> p.rounds().stream()).toList();
    }

    private static double width(Part p) {
        return p.edge().stream().mapToDouble(Point::x).max().orElseThrow()
                - p.edge().stream().mapToDouble(Point::x).min().orElseThrow();
    }

    /** A joint of 1 mm lies over the edge of the hatch all round: the lid measures 300 - 1 mm and lies 0.5 mm inside. */
    @Test
    void aHatchHasALidInEachLayer() {
        for (Role role : List.of(Role.ROUTED, Role.COVER)) {
            List<Part> lids = layer(role).parts().stream()
                    .filter(p -> Math.abs(width(p) - 299) < 1e-6)
                    .toList();
            assertEquals(1, lids.size());
            assertEquals(
                    800.5,
                    lids.get(0).edge().stream().mapToDouble(Point::x).min().orElseThrow(),
                    1e-6);
            assertEquals(List.of(), lids.get(0).pockets());
        }
    }

    /** The plate of an anchor, 40 mm, presses on 12 mm more through the cover; board lies a joint's 1 mm off the packer. */
    @Test
    void anAnchorHasASolidPackerAndNoBoard() {
        Packer packer = plan.problem().packers().get(0);
        assertEquals(new Round(new Point(900, 850), 52), packer.round().orElseThrow());
        assertEquals(21, packer.height(), 1e-9);
        assertTrue(rounds(Role.ROUTED).contains(new Round(new Point(900, 850), 53)));
        assertFalse(rounds(Role.COVER).stream().anyMatch(r -> r.centre().equals(new Point(900, 850))));
        assertTrue(kit.remarkWords().stream().anyMatch(w -> w.contains("packer of 104 mm across, 21 mm high")));
    }

    /** Head and washer, 15 mm, and 1 mm of air. */
    @Test
    void aBoltHasItsHole() {
        for (Role role : List.of(Role.ROUTED, Role.COVER)) {
            assertTrue(rounds(role).contains(new Round(new Point(1200, 1000), 16)), role.name());
        }
    }

    /**
     * Groove 16 + 0.5 mm deep in ply of 21: at worst 0.3 too shallow for pipe of 16.3 mm, and 0.3 too deep in a board of 20 mm.
     */
    @Test
    void depthsHoldAtTheWorstOfTolerances() {
        assertEquals(-0.6, check("top of the pipe").value(), 1e-9);
        assertEquals(PlanCheck.Verdict.WARN, check("top of the pipe").verdict());
        assertEquals(21 - 1 - 16.5 - 0.3, check("least wood under").value(), 1e-9);
        assertEquals(PlanCheck.Verdict.OK, check("least wood under").verdict());
        assertTrue(kit.remarkWords().stream().anyMatch(w -> w.contains("33 mm high (31 to 35 ")));
    }

    private static PlanCheck check(String begins) {
        return kit.checks().stream()
                .filter(c -> c.name().startsWith(begins))
                .findFirst()
                .orElseThrow();
    }

    /** No lid, a lid too large, a packer too low or where board lies: each is found. */
    @Test
    void spoiltOnesAreFound() {
        assertEquals(List.of(), BoardsVerifier.verify(plan));
        LayerPlan routed = layer(Role.ROUTED);
        List<Part> without = new ArrayList<>(routed.parts());
        without.removeIf(p -> Math.abs(width(p) - 299) < 1e-6);
        assertTrue(found(with(routed, without), plan.problem()).contains("of the floor open"));
        List<Part> large = new ArrayList<>(without);
        routed.parts().stream()
                .filter(p -> Math.abs(width(p) - 299) < 1e-6)
                .map(p -> wider(p))
                .forEach(large::add);
        assertTrue(found(with(routed, large), plan.problem()).contains("from bilge hatch"));
        Packer p = plan.problem().packers().get(0);
        assertTrue(found(routed, packed(new Packer(p.name(), p.edge(), p.round(), 30)))
                .contains("is 30.0 mm high"));
        List<Point> aside =
                p.edge().stream().map(c -> new Point(c.x() - 60, c.y())).toList();
        assertTrue(found(routed, packed(new Packer(p.name(), aside, Optional.empty(), 21)))
                .contains("where the packer of seat anchor stands"));
    }

    private static Part wider(Part p) {
        List<Point> edge = p.edge().stream()
                .map(c -> new Point(c.x() > 1000 ? c.x() + 0.4 : c.x(), c.y()))
                .toList();
        return new Part(p.label(), edge, p.openings(), p.rounds(), p.pockets(), p.ramps(), p.spot());
    }

    private static LayerPlan with(LayerPlan l, List<Part> parts) {
        return new LayerPlan(
                l.layer(), l.sheet(), l.boards(), l.bound(), l.triedBound(), parts, l.joints(), l.breaches());
    }

    private static BoardsProblem packed(Packer packer) {
        BoardsProblem p = plan.problem();
        return new BoardsProblem(
                p.outline(),
                p.layers(),
                p.cutouts(),
                List.of(packer),
                p.loops(),
                p.grooves(),
                p.ramps(),
                p.supports(),
                p.making(),
                p.before());
    }

    private static String found(LayerPlan routed, BoardsProblem problem) {
        List<LayerPlan> layers = new ArrayList<>(plan.layers());
        layers.set(layers.indexOf(layer(Role.ROUTED)), routed);
        return BoardsVerifier.verify(new BoardsPlan(problem, layers)).toString();
    }
}
