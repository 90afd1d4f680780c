package org.runbend.optimizer.setout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.SoundKit;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.work.Work;

/** Marks of the sound kit, whose loop was made by hand, and rooms beside runs found by moving them bit by bit. */
class SettingOutTest {
    private final KitPlan plan = SoundKit.plan();
    private final SetOut marks = plan.setOut();

    /** Every mark, turned back to the floor, is the end of the element it belongs to. */
    @Test
    void marksAreTheLoop() {
        Frame frame = marks.datum().frame();
        for (int l = 0; l < plan.loops().size(); l++) {
            List<Element> elements = plan.loops().get(l).breakdown().elements();
            SetOut.LoopMarks loop = marks.loops().get(l);
            assertEquals(elements.size(), loop.runs().size() + loop.bends().size());
            for (SetOut.RunMark r : loop.runs()) {
                assertAt(elements.get(r.element()).from(), frame, r.from());
                assertAt(elements.get(r.element()).to(), frame, r.to());
            }
            double metre = 0;
            for (SetOut.BendMark b : loop.bends()) {
                assertAt(((Element.Bend) elements.get(b.element())).centre(), frame, b.centre());
                metre = elements.subList(0, b.element()).stream()
                        .mapToDouble(Element::length)
                        .sum();
                assertEquals(metre, b.metre(), 1e-6);
                assertEquals(metre + elements.get(b.element()).length(), b.endMetre(), 1e-6);
            }
        }
    }

    private static void assertAt(Point floor, Frame frame, Point mark) {
        assertEquals(0, floor.distance(frame.onFloor(mark.x(), mark.y())), 1e-6);
    }

    /** Pythagoras: the legs and the diagonal of the check, and the way between the far ends. */
    @Test
    void checkIsARightAngle() {
        Datum.SquareCheck c = marks.datum().check();
        assertEquals(c.diagonal(), Math.hypot(c.along(), c.across()), 1e-9);
        assertTrue(Math.abs(c.along()) <= marks.datum().base().length());
        assertTrue(Math.abs(c.across()) <= marks.datum().square().length());
        assertEquals(0, Math.abs(c.along()) % 50, 1e-9);
    }

    /** The crossing lies on a line of the lattice, so offsets are whole spacings, and both lines begin and end at walls. */
    @Test
    void offsetsAreWholeSpacings() {
        double spacing = plan.lattice().spacing();
        for (SetOut.ChalkLine line : marks.lines()) {
            assertEquals(Math.rint(line.offset() / spacing) * spacing, line.offset(), 1e-6);
        }
    }

    /** Every run and no other stands once on its line. */
    @Test
    void everyRunStandsOnOneLine() {
        long runs = marks.loops().stream().mapToLong(l -> l.runs().size()).sum();
        long stops = marks.lines().stream()
                .flatMap(l -> l.stops().stream())
                .filter(s -> !s.bends())
                .count();
        assertEquals(runs, stops);
        for (SetOut.ChalkLine line : marks.lines()) {
            for (SetOut.Stop s : line.stops()) {
                assertEquals(line.offset(), line.lie().offset(s.from()), 0.02);
            }
        }
    }

    /** Axes by hand: 30 degrees, 100 along and 50 across from (10, 20). */
    @Test
    void frameTurnsAnticlockwise() {
        Frame frame = new Frame(new Point(10, 20), 30);
        Point p = frame.onFloor(100, 50);
        assertEquals(10 + 100 * Math.sqrt(3) / 2 - 25, p.x(), 1e-9);
        assertEquals(20 + 50 + 50 * Math.sqrt(3) / 2, p.y(), 1e-9);
        assertEquals(0, frame.from(p).distance(new Point(100, 50)), 1e-9);
    }

    /** By hand: along, across, and neither. */
    @Test
    void liesAreTold() {
        assertEquals(Lie.ALONG, Lie.of(new Point(0, 5), new Point(100, 5)));
        assertEquals(Lie.ACROSS, Lie.of(new Point(7, 0), new Point(7, -90)));
        assertEquals(Lie.ASLANT, Lie.of(new Point(0, 0), new Point(10, 10)));
    }

    /**
     * A run with its plates moved by a bit less than its room overlaps nothing, moved by a bit more it does: areas of JTS, at each
     * half millimetre. What lies in its plates and the bends at their ends move along.
     */
    @Test
    void roomIsFoundByMovingRuns() {
        assertTrue(roomsOf(plan) >= 6);
    }

    /** Plates over two runs, and a pillar beside one of them that the other one is not in the way of. */
    @Test
    void roomOfRunsThatShareAPlateIsFoundToo(@TempDir Path folder) throws IOException {
        Files.copy(Path.of("..", "examples", "workshop.yaml"), folder.resolve("workshop.yaml"));
        Path job = Files.writeString(folder.resolve("job.yaml"), """
                job: Shed with a console
                order: GS-8
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [2250, 0], [2250, 1500], [0, 1500]]
                  keepOut:
                    - {name: console, kind: pillar, polygon: [[1150, 1150], [1350, 1150], [1350, 1300], [1150, 1300]]}
                  port: {at: [0, 700]}
                layout: {spacing: 150}
                pipe: {product: PX-16}
                plates: {product: [SP-1, SP-2]}
                """);
        KitPlan shed = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty()));
        assertTrue(shed.plates().pieces().stream().anyMatch(p -> p.places().size() == 2), "a plate over two runs");
        assertTrue(roomsOf(shed) >= 20);
    }

    private static int roomsOf(KitPlan plan) {
        int told = 0;
        for (SetOut.LoopMarks loop : plan.setOut().loops()) {
            for (SetOut.RunMark r : loop.runs()) {
                for (int side : new int[] {1, -1}) {
                    SetOut.Room room = side > 0 ? r.left() : r.right();
                    assertEquals(moved(plan, r, side), room.distance(), 0.51, r + " to side " + side + ": " + room);
                    told++;
                }
            }
        }
        return told;
    }

    /** Steps of half a millimetre until a tenth of a square millimetre is overlapped. */
    private static double moved(KitPlan plan, SetOut.RunMark mark, int side) {
        List<Element> elements = plan.loops().get(0).breakdown().elements();
        Set<Integer> along = new TreeSet<>(Set.of(mark.element()));
        for (int i = 0; i < elements.size(); i++) {
            for (PlatePiece p : plan.plates().pieces()) {
                List<Integer> runs =
                        p.places().stream().map(PlatePiece.Place::element).toList();
                if (runs.stream().anyMatch(along::contains)) {
                    along.addAll(runs);
                }
            }
        }
        Element run = elements.get(mark.element());
        double dx = (run.to().x() - run.from().x()) / run.length();
        double dy = (run.to().y() - run.from().y()) / run.length();
        Geometry mine = null;
        Geometry others = null;
        double half = plan.job().groove().half();
        for (int i = 0; i < elements.size(); i++) {
            boolean moves = along.contains(i);
            boolean beside = along.contains(i - 1) || along.contains(i + 1);
            if (moves || !beside) {
                Geometry groove = strip(elements.get(i), half);
                mine = moves ? union(mine, groove) : mine;
                others = moves ? others : union(others, groove);
            }
        }
        for (PlatePiece p : plan.plates().pieces()) {
            Geometry body = FloorShapes.polygon(plan.body(p));
            if (p.places().stream().anyMatch(at -> along.contains(at.element()))) {
                mine = union(mine, body);
            } else {
                others = union(others, body);
            }
        }
        for (KeepOut k : plan.job().floor().keepOuts()) {
            others = union(others, FloorShapes.bare(k.bare()));
        }
        Geometry floor = FloorShapes.polygon(plan.job().floor().outline());
        others = union(others, floor.buffer(2000).difference(floor));
        for (double way = 0; way < 2000; way += 0.5) {
            Geometry there = AffineTransformation.translationInstance(
                            -dy * side * (way + 0.25), dx * side * (way + 0.25))
                    .transform(mine);
            if (there.intersection(others).getArea() - mine.intersection(others).getArea() > 0.1) {
                return way;
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private static Geometry union(Geometry a, Geometry b) {
        return a == null ? b : a.union(b);
    }

    private static Geometry strip(Element e, double half) {
        List<Point> way = new ArrayList<>(List.of(e.from()));
        way.addAll(e.onwards(2));
        return BufferOp.bufferOp(FloorShapes.line(way), half, new BufferParameters(8, BufferParameters.CAP_FLAT));
    }
}
