package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PortHole;
import org.runbend.optimizer.work.Work;

/** Where pipe comes onto the floor: holes chosen and given, slots, lead-ins, the way to the port, clearances left out. */
class HolesTest {
    private static final String ROOM = "[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";

    @TempDir
    Path folder;

    private Job job(String floor, String layout, String more) throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        String text = "job: Holes\norder: H-1\ncatalog: workshop.yaml\nfloor:\n" + floor + "layout: {" + layout
                + "}\npipe: {product: PX-16, tails: [900, 1100]}\nplates: {product: [SP-1]}\n" + more;
        return JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty());
    }

    private static KitPlan plan(Job job) {
        return new KitPlanner(Work.silent()).plan(job);
    }

    private KitPlan plan(String port, String layout) throws IOException {
        return plan(job("  outline: " + ROOM + "\n  port: {" + port + "}\n", layout, ""));
    }

    private static PortHole hole(KitPlan plan, int index) {
        return plan.holes().get(index);
    }

    /**
     * By hand: the nearest two places of the rim lie 75 mm in and 75 mm to either side of the port, sqrt(75^2 + 75^2) =
     * 106.066 mm from it. The loop of 160 places turns 20 times, two of them at the port: 150 x 159 - (2 - pi / 2) x 75 x 18
     * = 23270.575 mm. With 212.132 of way to the port, 2000 of tails and 2 %: 25992.4, so 25993.
     */
    @Test
    void theWayToThePortIsCut() throws IOException {
        KitPlan plan = plan("at: [0, 750]", "leftOutPrice: 10");
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(20, loop.turns());
        assertEquals(75, hole(plan, 0).at().x(), 1e-6);
        assertEquals(75, Math.abs(hole(plan, 0).at().y() - 750), 1e-6);
        assertEquals(75, Math.abs(hole(plan, 1).at().y() - 750), 1e-6);
        assertEquals(25_993, loop.cutLength());
        assertTrue(plan.holes().stream().noneMatch(PortHole::given), "proposed");
    }

    /**
     * Radius 55, as 80 mm by hand is over half the spacing; half the pipe, a plate of 0.5 and 30 mm of foam make a travel of
     * 38.5: sqrt(2 x 55 x 38.5 - 38.5^2) + 8 = 60.467 mm. Up through 12 mm of cover the travel is 20: sqrt(1800) + 8 = 50.426.
     * A wall needs half the pipe alone. Without a build-up the pipe may need all of its radius: 63 mm.
     */
    @ParameterizedTest
    @CsvSource({
        "down, 'build: {insulation: 30}', 60.467",
        "up, 'build: {insulation: 30}', 50.426",
        "level, '', 8",
        "down, '', 63"
    })
    void lengthOfTheSlot(String turn, String build, double length) throws IOException {
        KitPlan plan =
                plan(job("  outline: " + ROOM + "\n  port: {at: [0, 750], turn: " + turn + "}\n", "", build + "\n"));
        for (PortHole hole : plan.holes()) {
            assertEquals(length, hole.slot().length(), 0.001);
            assertEquals(20, hole.slot().width(), 1e-9);
        }
    }

    /** A pipe that bends at 60 mm by hand turns so into its holes too, and needs no bending aid for them. */
    @Test
    void noAidForHolesAlone() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        String text =
                "job: Holes\norder: H-1\ncatalog: workshop.yaml\nfloor: {outline: " + ROOM + ", port: {at: [0, 750]}}\n"
                        + "pipe: {product: PX-12, tails: [900, 1100]}\nplates: {product: [SP-12]}\n";
        KitPlan plan = plan(JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty()));
        assertTrue(plan.items().stream().noneMatch(i -> i.sku().equals("BA-12")));
        assertEquals(60 + 6, hole(plan, 0).slot().length(), 0.001);
    }

    /** Plates may cover the first run from the end of the slot on, 63 mm and half of 20 from the hole, and no earlier. */
    @Test
    void noPlateOnASlot() throws IOException {
        KitPlan plan = plan("at: [0, 750]", "");
        List<Element> pipe = plan.loops().get(0).breakdown().elements();
        plan.plates().pieces().stream().flatMap(p -> p.places().stream()).forEach(place -> {
            if (place.element() == 0) {
                assertTrue(place.from() >= 73 - 0.1, () -> "a plate begins at " + place.from());
            }
        });
        assertTrue(pipe.get(0).length() > 73, "a first run longer than the slot, else this shows nothing");
    }

    /** Holes a spacing apart are nodes of the lattice, however it would have lain otherwise. */
    @Test
    void holesASpacingApartMoveTheLattice() throws IOException {
        KitPlan plan = plan("at: [0, 750], holes: [{flow: [90, 860], return: [90, 710]}]", "");
        Breakdown pipe = plan.loops().get(0).breakdown();
        assertEquals(0, pipe.leadIn() + pipe.leadOut());
        assertEquals(new Point(90, 860), pipe.elements().get(0).from());
        assertEquals(90, pipe.elements().get(pipe.elements().size() - 1).to().x(), 1e-6);
        assertEquals(710, pipe.elements().get(pipe.elements().size() - 1).to().y(), 1e-6);
        assertTrue(plan.holes().stream().allMatch(PortHole::given));
    }

    /** Others are joined by lead-ins: pipe that is cut and routed, in no run that takes plates. */
    @ParameterizedTest
    @CsvSource({
        "'[0, 750]', '[40, 720]', '[40, 780]'",
        "'[0, 750]', '[150, 720]', '[150, 780]'",
        "'[0, 750]', '[60, 650]', '[60, 850]'",
        "'[1200, 750]', '[1170, 750]', '[1230, 750]'",
        "'[0, 0]', '[60, 60]', '[60, 120]'"
    })
    void leadIns(String port, String flow, String back) throws IOException {
        KitPlan plan = plan("at: " + port + ", holes: [{flow: " + flow + ", return: " + back + "}]", "");
        Breakdown pipe = plan.loops().get(0).breakdown();
        assertTrue(pipe.leadIn() > 0 && pipe.leadOut() > 0);
        assertEquals(flow, text(pipe.elements().get(0).from()));
        assertEquals(back, text(pipe.elements().get(pipe.elements().size() - 1).to()));
        double runs = pipe.elements().stream()
                .filter(Element.Run.class::isInstance)
                .mapToDouble(Element::length)
                .sum();
        assertTrue(pipe.straightLength() < runs - 1, "the straights of lead-ins are not counted");
        assertEquals(
                pipe.floorLength(),
                pipe.elements().stream().mapToDouble(Element::length).sum(),
                1e-9);
        assertTrue(pipe.pipe().get(0).length() >= 63 - 1e-6, "no bend on the slot");
        assertTrue(
                plan.plates().pieces().stream()
                        .flatMap(p -> p.places().stream())
                        .noneMatch(p -> pipe.isLead(p.element())),
                "no plate on a lead-in");
    }

    private static String text(Point p) {
        return "[" + Math.round(p.x()) + ", " + Math.round(p.y()) + "]";
    }

    /** Through the wall the pipe goes straight on: its last run on the floor ends on the wall, at right angles to it. */
    @Test
    void straightThroughTheWall() throws IOException {
        KitPlan plan = plan("at: [-100, 750], turn: level", "");
        List<Element> pipe = plan.loops().get(0).breakdown().elements();
        for (Element end : List.of(pipe.get(0), pipe.get(pipe.size() - 1))) {
            assertTrue(end instanceof Element.Run);
            assertEquals(end.from().y(), end.to().y(), 1e-6);
            assertEquals(0, Math.min(end.from().x(), end.to().x()), 1e-6);
        }
        assertEquals(0, plan.channel().orElseThrow().size().pad(), "no pocket is cut into the wall");
    }

    /** Two loops come from the holes that the job gives them, in its order. */
    @Test
    void aPairForEachLoop() throws IOException {
        String holes = "holes: [{flow: [60, 500], return: [60, 600]}, {flow: [60, 1000], return: [60, 900]}]";
        KitPlan plan = plan("at: [0, 750], reach: 600, " + holes, "loops: auto");
        assertEquals(2, plan.loops().size());
        assertEquals(new Point(60, 500), hole(plan, 0).at());
        assertEquals(new Point(60, 600), hole(plan, 1).at());
        assertEquals(new Point(60, 1000), hole(plan, 2).at());
        assertEquals(new Point(60, 900), hole(plan, 3).at());
    }

    /** No hole is drilled into what lies under the floor; up through the cover it is in nobody's way. */
    @Test
    void somethingBelow() throws IOException {
        String floor = "  outline: " + ROOM
                + "\n  below: [{name: tank, polygon: [[0, 600], [300, 600], [300, 900], [0, 900]]}]\n";
        KitPlan beside = plan(job(floor + "  port: {at: [0, 750], reach: 500}\n", "", ""));
        for (PortHole hole : beside.holes()) {
            double x = Math.max(0, hole.at().x() - 300);
            double y = Math.max(0, Math.max(600 - hole.at().y(), hole.at().y() - 900));
            assertTrue(Math.hypot(x, y) >= 16 - 0.01, () -> "a hole at " + hole.at());
        }
        Files.delete(folder.resolve("workshop.yaml"));
        KitPlan up = plan(job(floor + "  port: {at: [0, 750], turn: up}\n", "", ""));
        assertEquals(75, Math.abs(hole(up, 0).at().y() - 750), 1e-6);
    }

    /**
     * What is left out has a default by kind: half the groove of 20 mm and air, 20 mm round a drain, 10 round a bolt of 15 mm
     * radius, 25 round an anchor of 40. The plan's own check finds at least that air.
     */
    @ParameterizedTest
    @CsvSource({
        "'kind: drain, circle: {centre: [1200, 700], radius: 50}', 80, 20",
        "'kind: vent, point: [1200, 700]', 35, 20",
        "'kind: bolt, point: [1200, 700]', 35, 10",
        "'kind: anchor, point: [1200, 700]', 75, 25",
        "'kind: hatch, circle: {centre: [1200, 700], radius: 50}', 75, 15",
        "'kind: pillar, circle: {centre: [1200, 700], radius: 50}', 70, 10"
    })
    void clearanceLeftOut(String thing, double fromMiddle, double air) throws IOException {
        String floor = "  outline: " + ROOM + "\n  keepOut: [{name: it, " + thing + "}]\n  port: {at: [0, 750]}\n";
        KitPlan plan = plan(job(floor, "", ""));
        Point middle = new Point(1200, 700);
        for (Element e : plan.loops().get(0).breakdown().elements()) {
            if (e instanceof Element.Run run) {
                for (double at = 0; at <= run.length(); at += 5) {
                    assertTrue(run.along(at).distance(middle) >= fromMiddle - 0.01);
                }
            }
        }
        PlanCheck check = plan.checks().stream()
                .filter(c -> c.name().equals("least air between groove and things"))
                .findFirst()
                .orElseThrow();
        assertTrue(check.value() >= air - 0.01, () -> "air " + check.value());
        assertEquals(PlanCheck.Verdict.OK, check.verdict());
    }

    /** A clearance that would let the groove cut into a thing is enlarged until it just does not, and a person is told. */
    @Test
    void clearanceTooSmall() throws IOException {
        String floor = "  outline: " + ROOM
                + "\n  keepOut: [{name: pillar, kind: pillar, circle: {centre: [1200, 700], radius: 50}, clearance: 2}]\n"
                + "  port: {at: [0, 750]}\n";
        Job job = job(floor, "", "");
        KeepOut pillar = job.floor().keepOuts().get(0);
        assertEquals(10, pillar.clearance(), 1e-9);
        assertEquals(0, pillar.air(job.groove()), 1e-9);
        assertTrue(job.warnings().stream().anyMatch(w -> w.contains("would let the groove cut into it")));
    }

    /** A loop of pipe of 7 mm bore over 4.8 m2 at 100 mm takes over 40 m, more than a fitter would lay in one piece. */
    @Test
    void loopsTooLongForTheirBore() throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        String text = """
                job: Holes
                order: H-1
                catalog: workshop.yaml
                floor: {outline: [[0, 0], [4800, 0], [4800, 1000], [0, 1000]], port: {at: [0, 500]}}
                layout: {spacing: 100, edge: 50}
                pipe: {product: PX-10, tails: [900, 1100]}
                plates: {product: [SP-10]}
                """;
        KitPlan plan = plan(JobReader.read(Files.writeString(folder.resolve("job.yaml"), text), Optional.empty()));
        PlanCheck check = plan.checks().stream()
                .filter(c -> c.name().startsWith("longest loop"))
                .findFirst()
                .orElseThrow();
        assertTrue(check.value() > 40, check::toString);
        assertEquals(40, check.limit());
        assertEquals(PlanCheck.Verdict.WARN, check.verdict());
    }

    /** Water at 25 degrees of frost bursts pipe; 70 degrees of flow are for none of it. */
    @ParameterizedTest
    @CsvSource({
        "'coolant: water, coldest: -25', freezing, FAIL",
        "'coolant: propylene-glycol-30, coldest: -25', freezing, FAIL",
        "'coolant: propylene-glycol-50, coldest: -25', freezing, OK",
        "'coolant: propylene-glycol-50', freezing, WARN",
        "'flow: 80', pipe, FAIL"
    })
    void whatAFitterKnows(String heating, String check, PlanCheck.Verdict verdict) throws IOException {
        String floor = "  outline: [[0, 0], [1200, 0], [1200, 600], [0, 600]]\n  port: {at: [0, 300]}\n";
        KitPlan plan = plan(job(floor, "", "build: {insulation: 30}\nheating: {" + heating + "}\n"));
        PlanCheck found = plan.checks().stream()
                .filter(c -> c.name().contains(check) && c.unit().equals("degrees C"))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, found.verdict(), found::toString);
    }

    /** A loop that somebody drew begins in the hole of the flow; another place is told with both. */
    @Test
    void aDrawnLoopEndsInItsHoles() throws IOException {
        String drawn = "loop: [[80, 225], [1120, 225], [1120, 375], [80, 375]]";
        String floor = "  outline: [[0, 0], [1200, 0], [1200, 600], [0, 600]]\n";
        Job job = job(floor + "  port: {at: [0, 300], holes: [{flow: [80, 240], return: [80, 375]}]}\n", drawn, "");
        Unbuildable fault = assertThrows(Unbuildable.class, () -> plan(job));
        assertTrue(fault.getMessage().contains("begins at [80, 225], the hole of the flow is given at [80, 240]"));
    }

    /** Holes that no loop can be joined to: one line that names places which were tried and would do. */
    @Test
    void holesBehindAWall() throws IOException {
        String floor = "  outline: " + ROOM
                + "\n  keepOut: [{name: wall, polygon: [[1200, 0], [1240, 0], [1240, 1500], [1200, 1500]]}]\n";
        Job job = job(floor + "  port: {at: [0, 750], holes: [{flow: [2300, 720], return: [2300, 780]}]}\n", "", "");
        Unbuildable fault = assertThrows(Unbuildable.class, () -> plan(job));
        assertEquals("floor.port.holes", fault.key());
        assertTrue(fault.getMessage().contains("would do"), fault::getMessage);
    }
}
