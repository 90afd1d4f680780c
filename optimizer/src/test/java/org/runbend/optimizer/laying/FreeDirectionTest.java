package org.runbend.optimizer.laying;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** Where the direction is free, the lattice follows the wall that serves the floor best. */
class FreeDirectionTest {
    private static final String RECTANGLE = "[[0, 0], [2400, 0], [2400, 1500], [0, 1500]]";

    @TempDir
    Path folder;

    /**
     * 2400 x 1500 mm at 150/75 is 16 x 10 places, all served with 2 x min(16, 10) = 20 turns (reckoned for rectangles by
     * hand), however the rectangle lies; corners are written to 1/1000 mm.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 17, 73, 107, -30.5})
    void aTurnedRectangleIsLaidLikeTheUnturned(double degrees) throws IOException, URISyntaxException {
        KitPlan plan = plan(turned(degrees));
        KitPlan.LoopPlan loop = plan.loops().get(0);
        assertEquals(160, plan.lattice().reachable());
        assertEquals(20, loop.turns());
        assertEquals(0, loop.leftOut());
        assertEquals(20, loop.objectiveBound().orElse(0));
        double along =
                Math.toDegrees(Math.atan2(longest(loop).y(), longest(loop).x()));
        assertEquals(0, Math.IEEEremainder(along - degrees, 180), 0.01, "runs lie along the longer side");
        // straight pipe is 150 x (160 - 20) mm but for half a link at either port node, as in a plan that is not turned
        assertEquals(plan(turned(0)).loops().get(0).floorLength(), loop.floorLength(), 0.01);
        assertEquals(List.of(), KitVerifier.verify(plan));
        assertTrue(plan.isSound());
    }

    private static Point longest(KitPlan.LoopPlan loop) {
        Element.Run longest = null;
        for (Element e : loop.breakdown().elements()) {
            if (e instanceof Element.Run run && (longest == null || run.length() > longest.length())) {
                longest = run;
            }
        }
        return new Point(
                longest.to().x() - longest.from().x(),
                longest.to().y() - longest.from().y());
    }

    private Job turned(double degrees) throws IOException, URISyntaxException {
        Path job = Path.of(
                FreeDirectionTest.class.getResource("/floors/f01-rect.yaml").toURI());
        String text = Files.readString(job);
        assertTrue(text.contains(RECTANGLE) && text.contains("at: [0, 75]"));
        String walls = "[" + at(0, 0, degrees) + ", " + at(2400, 0, degrees) + ", " + at(2400, 1500, degrees) + ", "
                + at(0, 1500, degrees) + "]";
        Path into = Files.createTempDirectory(folder, "job");
        Files.copy(job.resolveSibling("workshop.yaml"), into.resolve("workshop.yaml"));
        Path file = into.resolve("turned.yaml");
        Files.writeString(file, text.replace(RECTANGLE, walls).replace("at: [0, 75]", "at: " + at(0, 75, degrees)));
        return JobReader.read(file, Optional.empty());
    }

    private static String at(double x, double y, double degrees) {
        double a = Math.toRadians(degrees);
        return String.format(
                Locale.ROOT, "[%.3f, %.3f]", x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a));
    }

    private static KitPlan plan(Job job) {
        return new KitPlanner(Work.silent()).plan(job);
    }

    /** A wall counts by its length and that of all walls along and across it: 3-4-5 corners, angle atan(3/4). */
    @Test
    void longWalls() {
        List<Point> cut = List.of(
                new Point(0, 0), new Point(4000, 0), new Point(4000, 1000), new Point(2000, 2500), new Point(0, 2500));
        assertEquals(List.of(), LongWalls.angles(cut.subList(0, 1)), "nothing of a point");
        List<Double> angles = LongWalls.angles(cut);
        assertEquals(1, angles.size());
        assertEquals(90 - Math.toDegrees(Math.atan2(1500, 2000)), angles.get(0), 1e-9);
        assertTrue(LongWalls.alongAxes(cut));
        List<Point> nook = List.of(
                new Point(0, 0), new Point(4000, 0), new Point(4000, 2200), new Point(3600, 2500), new Point(0, 2500));
        assertEquals(List.of(), LongWalls.angles(nook), "500 mm are no long wall beside 4000");
    }
}
