package org.runbend.export.drafting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.runbend.export.DemoPlan;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.setout.Lie;
import org.runbend.optimizer.setout.SetOut;

/** Nine runs side by side on the demo floor. */
class LinesDraftingTest {
    private static final double UNIT = 18;
    private static final int RUNS = 9;
    private static final SetOut DEMO = DemoPlan.plan().setOut();

    /** Runs across, 150 apart, from 60 to 400; where {@code longer}, that one goes on to 460. */
    private static SetOut side(int longer) {
        List<SetOut.ChalkLine> lines = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            double x = 150.0 * (i + 1);
            Point from = new Point(x, 60);
            Point to = new Point(x, i == longer ? 460 : 400);
            lines.add(new SetOut.ChalkLine(
                    Lie.ACROSS,
                    x,
                    List.of(new SetOut.Stop("A", i + 11, false, i % 2 == 0 ? from : to, i % 2 == 0 ? to : from))));
        }
        return new SetOut(DEMO.datum(), lines, List.of());
    }

    private static List<Text> texts(Sheet sheet) {
        return sheet.marks().stream()
                .filter(m -> m.layer() == Layer.NOTE && m.shape() instanceof Text)
                .map(m -> (Text) m.shape())
                .toList();
    }

    private static List<Segment> lines(Sheet sheet, Layer layer) {
        return sheet.marks().stream()
                .filter(m -> m.layer() == layer && m.shape() instanceof Segment)
                .map(m -> (Segment) m.shape())
                .toList();
    }

    private static long count(Sheet sheet, String words) {
        return texts(sheet).stream().filter(t -> t.string().equals(words)).count();
    }

    @Test
    void measureOfARowStandsOnce() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), side(-1), UNIT);
        assertEquals(1, count(sheet, "60"));
        assertEquals(1, count(sheet, "400"));
    }

    /** A run that goes on through the row parts it: each half says its measure, and the long one its own. */
    @Test
    void runThatPassesPartsTheRow() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), side(RUNS / 2), UNIT);
        assertEquals(2, count(sheet, "400"));
        assertEquals(1, count(sheet, "460"));
        double x = 150.0 * (RUNS / 2 + 1);
        double y = DEMO.datum().frame().onFloor(x, 400).y();
        double across = DEMO.datum().frame().onFloor(x, 400).x();
        assertTrue(
                lines(sheet, Layer.NOTE).stream()
                        .filter(s -> Math.abs(s.a().y() - y) < 1 && Math.abs(s.b().y() - y) < 1)
                        .noneMatch(s -> Math.min(s.a().x(), s.b().x()) < across - 1
                                && across + 1 < Math.max(s.a().x(), s.b().x())),
                "a dash crosses the run that goes on");
    }

    /** No number lies on another or on a run, and the number of a run stands nearest to its own. */
    @Test
    void numbersAreApartAndBesideTheirRuns() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), side(RUNS / 2), UNIT);
        List<Text> texts = texts(sheet);
        List<Segment> runs = lines(sheet, Layer.PIPE);
        for (Text t : texts) {
            texts.stream()
                    .filter(u -> !u.equals(t))
                    .forEach(u -> assertTrue(apart(t.extent(), u.extent()), t + " " + u));
            runs.forEach(r -> assertTrue(apart(t.extent(), r.extent()), t + " lies on a run"));
        }
        List<Text> names =
                texts.stream().filter(t -> Pattern.matches("A\\d+", t.string())).toList();
        assertEquals(RUNS, names.size());
        for (Text name : names) {
            double x = name.extent().centre().x();
            Segment nearest = runs.stream()
                    .min(Comparator.comparingDouble(r -> Math.abs(r.a().x() - x)))
                    .orElseThrow();
            int run = Integer.parseInt(name.string().substring(1)) - 11;
            assertEquals(
                    DEMO.datum().frame().onFloor(150.0 * (run + 1), 60).x(),
                    nearest.a().x(),
                    1e-6,
                    name.string());
        }
    }

    private static SetOut one(double from, double to) {
        SetOut.Stop stop = new SetOut.Stop("A", 7, false, new Point(300, from), new Point(300, to));
        return new SetOut(DEMO.datum(), List.of(new SetOut.ChalkLine(Lie.ACROSS, 300, List.of(stop))), List.of());
    }

    /** The drawing says what the tables say: a tenth where there is one. */
    @Test
    void measuresHaveTheirTenth() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), one(60.5, 400), UNIT);
        assertEquals(1, count(sheet, "60.5"));
        assertEquals(1, count(sheet, "400"));
    }

    /** A run too short for two numbers has one text for both, so that none is taken for the other. */
    @Test
    void shortRunSaysBothEndsAtOnce() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), one(200, 198.8), UNIT);
        assertEquals(1, count(sheet, "A7 200 to 198.8"));
        assertEquals(0, count(sheet, "200") + count(sheet, "198.8") + count(sheet, "A7"));
    }

    /** Distances of lines stand in boxes, running measures do not. */
    @Test
    void distancesOfLinesStandInBoxes() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), one(60, 400), UNIT);
        List<Extent> boxes = sheet.marks().stream()
                .filter(m -> m.layer() == Layer.NOTE && m.shape() instanceof Path)
                .map(m -> m.shape().extent())
                .toList();
        for (Text t : texts(sheet)) {
            boolean boxed = boxes.stream().anyMatch(b -> b.union(t.extent()).equals(b));
            assertEquals(t.string().equals("300"), boxed, t.string());
        }
        assertEquals(2, count(sheet, "300"));
    }

    /** Where a text stands across a snapped line, that is interrupted. */
    @Test
    void snappedLinesLeaveTextsFree() {
        Sheet sheet = LinesDrafting.draw(DemoPlan.plan(), crowded(), UNIT);
        List<Segment> snapped = lines(sheet, Layer.DIMENSION);
        assertTrue(snapped.size() > 2 * RUNS + 2 * 2, "no line was parted: " + snapped.size());
        texts(sheet).forEach(t -> snapped.forEach(s -> assertTrue(apart(t.extent(), s.extent()), t + " " + s)));
    }

    /** Lines across so near to each other that the name of a run along must stand on one of them. */
    private static SetOut crowded() {
        List<SetOut.ChalkLine> lines = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            double x = 600 + 5.5 * UNIT * i;
            lines.add(new SetOut.ChalkLine(
                    Lie.ACROSS, x, List.of(new SetOut.Stop("A", i + 11, false, new Point(x, 500), new Point(x, 900)))));
        }
        SetOut.Stop along = new SetOut.Stop("A", 10, false, new Point(600, 300), new Point(1300, 300));
        lines.add(new SetOut.ChalkLine(Lie.ALONG, 300, List.of(along)));
        return new SetOut(DEMO.datum(), lines, List.of());
    }

    /** Distances too near to each other share the way apart, and stay in order. */
    @Test
    void crowdedNumbersRise() {
        assertArrayEquals(new double[] {1, 2.5, 2.5, 4}, Places.rising(new double[] {1, 3, 2, 4}), 1e-9);
        assertArrayEquals(new double[] {2, 2, 2}, Places.rising(new double[] {3, 2, 1}), 1e-9);
    }

    private static boolean apart(Extent a, Extent b) {
        return a.maxX() <= b.minX() || b.maxX() <= a.minX() || a.maxY() <= b.minY() || b.maxY() <= a.minY();
    }
}
