package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.export.CommandRun;
import org.runbend.export.PlannedExamples;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;

/** A drawing of ours goes out and in again: the job is the same within a tenth of a millimetre but for its wishes. */
class OwnDrawingTest {
    private static final double SAME = 0.1;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    @TempDir
    Path folder;

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void outAndInAgain(Path file) throws IOException {
        KitPlan plan = PlannedExamples.plan(file);
        for (DxfVersion version : DxfVersion.values()) {
            for (boolean inParts : new boolean[] {false, true}) {
                inAgain(catalog(file), plan, version, inParts);
            }
        }
    }

    /** The catalog that a job names; one that names none itself has its base's, the workshop's. */
    private static Path catalog(Path job) throws IOException {
        return Files.readAllLines(job).stream()
                .filter(l -> l.startsWith("catalog: "))
                .map(l -> job.resolveSibling(l.substring("catalog: ".length()).replaceFirst("\\s*#.*", "")))
                .findFirst()
                .orElse(PlannedExamples.FOLDER.resolve("workshop.yaml"));
    }

    private void inAgain(Path catalog, KitPlan plan, DxfVersion version, boolean inParts) throws IOException {
        Path drawing = folder.resolve(version + ".dxf");
        byte[] bytes = DxfBackend.bytes(new FloorDrafting().draw(plan), Optional.empty(), version, inParts);
        Files.write(drawing, bytes);
        CommandRun run = CommandRun.of("outline", drawing.toString(), "--replace");
        assertEquals(0, run.code(), run::err);
        Path draft = folder.resolve(version + ".yaml");
        String text = Files.readString(draft);
        assertEquals(1, text.split("fill in:", -1).length - 1, text);
        Files.copy(catalog, folder.resolve("workshop.yaml"), StandardCopyOption.REPLACE_EXISTING);
        Files.writeString(draft, text.replaceFirst("catalog:.*", "catalog: workshop.yaml"));
        same(plan.job(), JobReader.read(draft, Optional.empty()));
    }

    /** Programs that drop extended data leave the shapes: keep-outs with clearances, and no run number is a mark. */
    @Test
    void withoutExtendedData() throws IOException {
        KitPlan plan = PlannedExamples.plan(PlannedExamples.FOLDER.resolve("cabin-boat.yaml"));
        String all = new String(DxfBackend.bytes(new FloorDrafting().draw(plan)), StandardCharsets.US_ASCII);
        Path drawing = folder.resolve("dropped.dxf");
        Files.writeString(drawing, all.replaceAll("(?m)^100[01]\n[^\n]*\n", ""));
        CommandRun run = CommandRun.of("outline", drawing.toString());
        assertEquals(0, run.code(), run::err);
        String text = Files.readString(folder.resolve("dropped.yaml"));
        for (KeepOut k : plan.job().floor().keepOuts()) {
            assertTrue(text.contains("name: \"" + k.name() + "\""), text);
            assertTrue(text.contains("clearance: " + Math.round(k.clearance()) + ","), text);
        }
        assertFalse(text.contains("A flow"), text);
        for (Job.FloorMark mark : plan.job().floor().marks()) {
            assertTrue(text.contains("text: \"" + mark.text() + "\""), text);
        }
        assertEquals(plan.job().floor().marks().size(), text.split("\\{edge:", -1).length - 1, text);
    }

    private static void same(Job a, Job b) {
        assertEquals(a.title(), b.title());
        assertEquals(a.order(), b.order());
        assertEquals(a.customer(), b.customer());
        assertEquals(a.pipe().product(), b.pipe().product());
        assertEquals(a.plates().products(), b.plates().products());
        near(ring(a.floor().outline()), ring(b.floor().outline()));
        assertEquals(0, a.floor().port().at().distance(b.floor().port().at()), SAME);
        assertEquals(a.floor().port().reach(), b.floor().port().reach(), SAME);
        assertEquals(a.floor().port().turn(), b.floor().port().turn());
        assertEquals(a.floor().port().holes(), b.floor().port().holes());
        assertEquals(a.floor().below(), b.floor().below());
        assertEquals(a.floor().marks().size(), b.floor().marks().size());
        for (int i = 0; i < a.floor().marks().size(); i++) {
            assertEquals(
                    a.floor().marks().get(i).text(), b.floor().marks().get(i).text());
            assertEquals(
                    0,
                    a.floor()
                            .marks()
                            .get(i)
                            .at()
                            .distance(b.floor().marks().get(i).at()),
                    SAME);
        }
        assertEquals(a.floor().keepOuts().size(), b.floor().keepOuts().size());
        for (int i = 0; i < a.floor().keepOuts().size(); i++) {
            same(a.floor().keepOuts().get(i), b.floor().keepOuts().get(i));
        }
        assertEquals(a.floor().unheated().size(), b.floor().unheated().size());
        for (int i = 0; i < a.floor().unheated().size(); i++) {
            assertEquals(
                    a.floor().unheated().get(i).name(),
                    b.floor().unheated().get(i).name());
            near(
                    ring(a.floor().unheated().get(i).region().corners()),
                    ring(b.floor().unheated().get(i).region().corners()));
        }
        assertEquals(a.floor().supports(), b.floor().supports());
    }

    private static void same(KeepOut a, KeepOut b) {
        assertEquals(a.name(), b.name());
        assertEquals(a.kind(), b.kind());
        assertEquals(a.clearance(), b.clearance(), SAME);
        assertEquals(a.bare().getClass(), b.bare().getClass());
        near(region(a.bare()), region(b.bare()));
    }

    private static Geometry region(Shape shape) {
        if (shape instanceof Shape.Circle c) {
            return point(c.centre()).buffer(c.radius(), 64);
        }
        return shape instanceof Shape.Polygon p ? ring(p.corners()) : point(((Shape.Spot) shape).at());
    }

    private static Geometry point(Point p) {
        return GEOMETRY.createPoint(new Coordinate(p.x(), p.y()));
    }

    private static Geometry ring(List<Point> corners) {
        Coordinate[] all = Stream.concat(corners.stream(), Stream.of(corners.get(0)))
                .map(p -> new Coordinate(p.x(), p.y()))
                .toArray(Coordinate[]::new);
        return GEOMETRY.createLinearRing(all);
    }

    /** Vertices of each lie near the other: a discrete Hausdorff distance of JTS, made denser. */
    private static void near(Geometry a, Geometry b) {
        double off = DiscreteHausdorffDistance.distance(a, b, 0.1);
        assertTrue(off <= SAME, () -> off + " mm between " + a + " and " + b);
    }
}
