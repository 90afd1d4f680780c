package org.runbend.optimizer.verify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.boards.FixingPlan.Screw;
import org.runbend.optimizer.boards.FixingProblem;
import org.runbend.optimizer.boards.ScrewPlacing;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.SensorPlacing;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Point;

/**
 * 500 floors from their numbers: no screw within 30 mm of pipe, in a slot or over what lies below; no conduit crosses pipe. Held
 * by the verifiers, and by distances and crossings of the JDK's own geometry (java.awt.geom).
 */
class SeededFloorsTest {
    private static final int FLOORS = 500;

    @Test
    void screwsAndConduitsKeepOff() {
        int screws = 0;
        int sensors = 0;
        int supported = 0;
        for (int number = 0; number < FLOORS; number++) {
            SeededFloor floor = new SeededFloor(number);
            SensorPlan sensor = SensorPlacing.solve(floor.sensor());
            int at = number;
            assertEquals(List.of(), SensorVerifier.verify(sensor), () -> "floor " + at);
            crossNoPipe(number, floor, sensor.conduit());
            sensors += sensor.at().isPresent() ? 1 : 0;
            FixingPlan fixing = ScrewPlacing.solve(floor.fixing(sensor.conduit()), CoverFixing.SCREW);
            assertEquals(List.of(), FixingVerifier.verify(fixing), () -> "floor " + at);
            keepOff(number, floor, fixing);
            screws += fixing.screws().size();
            supported += fixing.problem().base().isEmpty() ? fixing.screws().size() : 0;
        }
        // guards: most floors have a sensor, and screws by the thousand, also in battens
        assertTrue(sensors > FLOORS / 2, "sensors: " + sensors);
        assertTrue(screws > 10 * FLOORS && supported > FLOORS / 2, screws + " screws, in battens " + supported);
    }

    private static void crossNoPipe(int number, SeededFloor floor, List<Point> conduit) {
        for (int i = 1; i < conduit.size(); i++) {
            Point a = conduit.get(i - 1);
            Point b = conduit.get(i);
            for (Element.Run r : floor.runs()) {
                boolean crosses = Line2D.linesIntersect(
                        a.x(), a.y(), b.x(), b.y(), r.from().x(), r.from().y(), r.to().x(), r.to().y());
                assertFalse(crosses, "floor " + number);
            }
        }
    }

    private static void keepOff(int number, SeededFloor floor, FixingPlan fixing) {
        for (Screw s : fixing.screws()) {
            for (Element.Run r : floor.runs()) {
                double away =
                        Line2D.ptSegDist(r.from().x(), r.from().y(), r.to().x(), r.to().y(), s.at().x(), s.at().y());
                assertTrue(away >= 30 - 1e-6, "floor " + number + ": " + away);
            }
            for (List<Point> region : fixing.problem().below()) {
                Path2D path = new Path2D.Double();
                path.moveTo(region.get(0).x(), region.get(0).y());
                region.forEach(p -> path.lineTo(p.x(), p.y()));
                path.closePath();
                assertFalse(path.contains(s.at().x(), s.at().y()), "floor " + number);
            }
        }
    }

    /** Screws too near, too long, in foam or of another board; a conduit that crosses; each is found. */
    @Test
    void spoiltOnesAreFound() {
        SeededFloor floor = new SeededFloor(3);
        SensorPlan sensor = SensorPlacing.solve(floor.sensor());
        FixingPlan good = ScrewPlacing.solve(floor.fixing(sensor.conduit()), CoverFixing.SCREW);
        Screw first = good.screws().get(0);
        Element.Run run = floor.runs().get(1);
        Point beside = new Point(run.from().x() + 20, run.from().y() + 20);
        assertFound(with(good, new Screw(first.board(), beside)), "mm from the pipe");
        assertFound(
                with(
                        good,
                        new Screw(first.board(), good.problem().below().get(0).get(0))),
                "under the floor");
        assertFound(with(good, new Screw("C9", first.at())), "of board C9");
        assertFound(
                with(
                        good,
                        new Screw(
                                first.board(),
                                new Point(first.at().x() + 20, first.at().y()))),
                "20.00 mm apart");
        FixingPlan deep = new FixingPlan(
                good.problem(), good.fixing(), OptionalDouble.of(70), good.screws(), good.farthest(), good.noScrew());
        assertFound(deep, "screws of 70.0 mm");
        FixingPlan boast =
                new FixingPlan(good.problem(), good.fixing(), good.length(), good.screws(), 40, good.noScrew());
        assertFound(boast, "from its next screw");
        FixingPlan open =
                new FixingPlan(good.problem(), good.fixing(), good.length(), good.screws(), good.farthest(), List.of());
        assertFound(open, "of it open");
    }

    private static FixingPlan with(FixingPlan plan, Screw more) {
        List<Screw> screws = new ArrayList<>(plan.screws());
        screws.add(more);
        return new FixingPlan(plan.problem(), plan.fixing(), plan.length(), screws, plan.farthest(), plan.noScrew());
    }

    private static void assertFound(FixingPlan plan, String words) {
        String found = FixingVerifier.verify(plan).toString();
        assertTrue(found.contains(words), found);
    }

    /** Straight on to the sensor crosses the rows between; another place lies under no plate. */
    @Test
    void spoiltConduitsAreFound() {
        int found = 0;
        for (int n = 0; n < 40; n++) {
            SensorPlan plan = SensorPlacing.solve(new SeededFloor(n).sensor());
            if (plan.conduit().size() > 2) {
                Point from = plan.conduit().get(0);
                Point to = plan.at().orElseThrow();
                SensorPlan straight =
                        new SensorPlan(plan.problem(), plan.at(), List.of(from, to), plan.wanted(), plan.nearest());
                found += SensorVerifier.verify(straight).toString().contains("of the pipe") ? 1 : 0;
                SensorPlan elsewhere = new SensorPlan(
                        plan.problem(), Optional.of(from), plan.conduit(), plan.wanted(), plan.nearest());
                assertTrue(SensorVerifier.verify(elsewhere).toString().contains("under no plate"));
            }
        }
        assertTrue(found > 0, "no conduit had to go round pipe");
    }

    /** A cable a millimetre too short for the best place goes to another that it reaches; where there is none it is said. */
    @Test
    void sensorLiesWhereItsCableReaches() {
        int moved = 0;
        int said = 0;
        for (int n = 0; n < 40; n++) {
            SensorProblem p = new SeededFloor(n).sensor();
            SensorPlan free = SensorPlacing.solve(p);
            if (free.at().isEmpty()) {
                continue;
            }
            assertFalse(free.isCableShort());
            SensorPlan held = SensorPlacing.solve(with(p, free.cable() - 1));
            assertEquals(List.of(), SensorVerifier.verify(held));
            if (held.isCableShort()) {
                assertEquals(free.at(), held.at(), "the best place of all");
                said++;
            } else {
                assertTrue(held.cable() <= free.cable() - 1 + 1e-6);
                moved++;
            }
            SensorPlan none = SensorPlacing.solve(with(p, SensorProblem.LEFT));
            assertTrue(none.isCableShort() && none.at().equals(free.at()));
        }
        assertTrue(moved > 0, "no other place was ever taken, " + said + " times none was reached");
    }

    private static SensorProblem with(SensorProblem p, double cable) {
        SensorProblem.Size size = new SensorProblem.Size(
                p.size().spacing(), p.size().groove(), p.size().web(), cable);
        return new SensorProblem(p.outline(), p.keepOuts(), p.below(), p.loops(), p.plates(), p.port(), size);
    }

    /** Ply of 12 mm on 21: a screw holds 8 mm and ends 2 mm above the underside, so 20 to 31 mm. Of these the longest. */
    @Test
    void screwsAreAsLongAsGoes() {
        FixingProblem p = new SeededFloor(1).fixing(List.of());
        assertEquals(
                30,
                ScrewPlacing.solve(with(p, List.of(19.0, 20.0, 30.0, 32.0)), CoverFixing.SCREW)
                        .length()
                        .orElseThrow());
        FixingProblem without = with(p, List.of(19.0, 32.0));
        ScrewPlacing.NoScrew none =
                assertThrows(ScrewPlacing.NoScrew.class, () -> ScrewPlacing.solve(without, CoverFixing.SCREW));
        assertEquals(20, none.least());
        assertEquals(31, none.most());
        assertTrue(ScrewPlacing.solve(without, CoverFixing.GLUE).screws().isEmpty());
    }

    private static FixingProblem with(FixingProblem p, List<Double> screws) {
        return new FixingProblem(
                p.cover(),
                p.base(),
                p.supports(),
                p.cutouts(),
                p.loops(),
                p.below(),
                p.conduit(),
                new FixingProblem.Size(12, 21, 300, screws));
    }

    /** A tank under all of the port: no hole for the conduit, so no sensor, and the place that was wanted. */
    @Test
    void whereNoWayIsNoneIsDrawn() {
        SensorProblem p = new SeededFloor(0).sensor();
        SensorPlan plan = SensorPlacing.solve(new SensorProblem(
                p.outline(), p.keepOuts(), List.of(p.outline()), p.loops(), p.plates(), p.port(), p.size()));
        assertTrue(plan.at().isEmpty() && plan.conduit().isEmpty());
        assertEquals(List.of(), SensorVerifier.verify(plan));
    }
}
