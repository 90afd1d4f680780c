package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.export.PlannedExamples;
import org.runbend.export.drafting.ConfirmDrafting;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.dxf.read.DxfDrawing;
import org.runbend.export.dxf.read.DxfEntity;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.tape.TapeMeasuring;

/** What a person sees of the drawing of each example: boxes of words against lines, worked out with JTS. */
class DrawingLooksTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** 7 point letters have capitals of 0.73 x 7 x 25.4 / 72 mm (DejaVu Sans: 0.729 of the size). */
    private static final double SEVEN_POINTS = 0.729 * 7 * 25.4 / 72;

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void wordsAreLargeEnoughAndClear(Path job) {
        Sheet sheet = new FloorDrafting().draw(PlannedExamples.plan(job));
        double unit = sheet.extent().mmPerPaperMm();
        List<Text> words = new ArrayList<>();
        List<Geometry> lines = new ArrayList<>();
        List<Geometry> pipes = new ArrayList<>();
        for (Mark mark : sheet.marks()) {
            if (mark.layer() == Layer.NOTE && mark.shape() instanceof Text t) {
                words.add(t);
            } else if ((mark.layer() == Layer.PIPE || mark.layer() == Layer.PLATE)
                    && mark.shape() instanceof org.runbend.export.drawing.Path path) {
                lines.add(line(path));
                if (mark.layer() == Layer.PIPE) {
                    pipes.add(line(path));
                }
            }
        }
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Geometry box = box(words.get(i));
            String text = words.get(i).string();
            if (words.get(i).height() < SEVEN_POINTS * unit * 0.99) {
                wrong.add(text + " is " + words.get(i).height() / unit + " mm high");
            }
            // the number of a plate stands on it, and on no pipe
            boolean plate = text.matches("[A-Z]+[0-9]+[a-z]?");
            if ((plate ? pipes : lines).stream().anyMatch(box::intersects)) {
                wrong.add(text + " lies on pipe or a plate");
            }
            for (int j = 0; j < i; j++) {
                if (box.intersects(box(words.get(j)))) {
                    wrong.add(text + " lies on " + words.get(j).string());
                }
            }
        }
        for (Mark mark : sheet.marks()) {
            if (mark.layer() == Layer.NOTE && mark.shape() instanceof org.runbend.export.drawing.Segment s) {
                Geometry leader = GEOMETRY.createLineString(
                        new Coordinate[] {new Coordinate(s.a().x(), s.a().y()), new Coordinate(s.b().x(), s.b().y())});
                words.stream()
                        .filter(t -> box(t).intersects(leader))
                        .forEach(t -> wrong.add("a line crosses " + t.string()));
            }
        }
        assertEquals(List.of(), wrong);
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void paperShowsAllOfItLargeEnough(Path job) {
        KitPlan plan = PlannedExamples.plan(job);
        Sheet sheet = new FloorDrafting().draw(plan);
        PaperSheet paper = new PaperDrafting().draw(plan, sheet);
        double least = sheet.marks().stream()
                .filter(m -> m.layer() == Layer.NOTE && m.shape() instanceof Text)
                .mapToDouble(m -> ((Text) m.shape()).height())
                .min()
                .orElseThrow();
        assertTrue(least / paper.scale() >= 2.5, () -> "run numbers of " + least / paper.scale() + " mm");
        assertTrue(List.of(1.0, 2.0, 5.0, 10.0, 20.0, 50.0).contains(paper.scale()));
        Extent page = new Extent(0, 0, paper.width(), paper.height());
        assertEquals(page, page.union(paper.marks().extent()).union(paper.window()));
    }

    /** A form without paper says once what is cut: its words stand in the drawing already. */
    @ParameterizedTest
    @ValueSource(strings = {"polylines", "lines"})
    void r12SaysItOnce(String contours) {
        KitPlan plan = PlannedExamples.plan(PlannedExamples.FOLDER.resolve("camper.yaml"));
        Sheet sheet = new FloorDrafting().draw(plan);
        PaperSheet paper = new PaperDrafting().draw(plan, sheet);
        byte[] file = DxfBackend.bytes(sheet, Optional.of(paper), DxfVersion.R12, contours.equals("lines"));
        assertEquals(2, new String(file, StandardCharsets.ISO_8859_1).split("cut 1: ", -1).length);
    }

    /** Round corners of the floor have their radius, by its sagitta of 480 and half chord of 750 mm. */
    @Test
    void radiiAreSaid() {
        Sheet bow = new FloorDrafting()
                .draw(PlannedExamples.plan(PlannedExamples.FOLDER.resolve("ways-in/caravan-bow.yaml")));
        List<String> radii = bow.marks().stream()
                .filter(m -> m.shape() instanceof Text t && t.string().contains("R "))
                .map(m -> ((Text) m.shape()).string())
                .toList();
        assertEquals(List.of("R 825.9"), radii, "(480^2 + 750^2) / (2 x 480)");
    }

    /** What the customer signs shows the pipe of the plan where it lies, as a line that nobody takes for a measure. */
    @Test
    void theCustomerSeesTheLoop() {
        KitPlan plan = PlannedExamples.plan(PlannedExamples.FOLDER.resolve("camper.yaml"));
        Sheet sheet = ConfirmDrafting.draw(plan, new TapeMeasuring().measure(plan.job()), 20);
        Sheet full = new FloorDrafting().draw(plan);
        Geometry pipe =
                line((org.runbend.export.drawing.Path) shapes(full, Layer.PIPE).get(0));
        double seen = 0;
        for (org.runbend.export.drawing.Shape part : shapes(sheet, Layer.CHANNEL)) {
            org.runbend.export.drawing.Segment s = (org.runbend.export.drawing.Segment) part;
            for (org.runbend.export.drawing.Point end : List.of(s.a(), s.b())) {
                assertEquals(0, pipe.distance(GEOMETRY.createPoint(new Coordinate(end.x(), end.y()))), 1.5);
            }
            seen += s.a().distance(s.b());
        }
        assertTrue(seen > 0.93 * pipe.getLength(), "it is broken only where words stand: " + seen);
        assertTrue(seen < pipe.getLength());
    }

    private static List<org.runbend.export.drawing.Shape> shapes(Sheet sheet, Layer layer) {
        return sheet.marks().stream()
                .filter(m -> m.layer() == layer)
                .map(Mark::shape)
                .toList();
    }

    /** Lines and arcs take the place of polylines, as long as these and at the same places. */
    @ParameterizedTest
    @ValueSource(strings = {"R12", "R2000"})
    void linesAndArcsOnly(String version) throws IOException {
        KitPlan plan = PlannedExamples.plan(PlannedExamples.FOLDER.resolve("camper.yaml"));
        Sheet sheet = new FloorDrafting().draw(plan);
        DxfVersion form = DxfVersion.valueOf(version);
        DxfDrawing whole =
                new DxfReader().read(DxfBackend.bytes(sheet, Optional.empty(), form, false), Optional.empty());
        DxfDrawing parts =
                new DxfReader().read(DxfBackend.bytes(sheet, Optional.empty(), form, true), Optional.empty());
        assertTrue(parts.entities().stream().noneMatch(DxfEntity.Polyline.class::isInstance));
        assertTrue(whole.entities().stream().anyMatch(DxfEntity.Polyline.class::isInstance));
        for (String layer : List.of("FLOOR", "PIPE", "CHANNEL", "PLATE", "KEEP_OUT")) {
            assertEquals(length(whole, layer), length(parts, layer), 1e-3, layer);
        }
    }

    private static double length(DxfDrawing drawing, String layer) {
        double sum = 0;
        for (DxfEntity e : drawing.entities()) {
            if (!e.layer().equals(layer)) {
                continue;
            }
            if (e instanceof DxfEntity.Line l) {
                sum += Math.hypot(l.x2() - l.x1(), l.y2() - l.y1());
            } else if (e instanceof DxfEntity.Arc a) {
                sum += a.radius() * Math.toRadians(a.sweep());
            } else if (e instanceof DxfEntity.Polyline p) {
                for (int i = 0; i < p.vertices().size() - (p.closed() ? 0 : 1); i++) {
                    Point from = new Point(
                            p.vertices().get(i).x(), p.vertices().get(i).y());
                    int j = (i + 1) % p.vertices().size();
                    Point to = new Point(
                            p.vertices().get(j).x(), p.vertices().get(j).y());
                    double bulge = p.vertices().get(i).bulge();
                    sum += bulge == 0
                            ? from.distance(to)
                            : Arc.between(from, to, bulge).length();
                }
            }
        }
        return sum;
    }

    private static Geometry line(org.runbend.export.drawing.Path path) {
        List<Coordinate> points = new ArrayList<>();
        for (org.runbend.export.drawing.Shape part : path.parts()) {
            if (part instanceof Arc arc) {
                for (int i = 0; i <= 8; i++) {
                    Point p = arc.centre().polar(arc.radius(), arc.startAngle() + arc.sweep() * i / 8);
                    points.add(new Coordinate(p.x(), p.y()));
                }
            } else if (part instanceof org.runbend.export.drawing.Segment s) {
                points.add(new Coordinate(s.a().x(), s.a().y()));
                points.add(new Coordinate(s.b().x(), s.b().y()));
            }
        }
        Coordinate[] all = points.toArray(Coordinate[]::new);
        return path.closed() ? GEOMETRY.createPolygon(all) : GEOMETRY.createLineString(all);
    }

    private static Geometry box(Text t) {
        double width = Text.roughWidth(t.string(), t.height());
        Point a = t.baselineStart(width);
        Point b = a.polar(width, t.angle());
        Point c = b.polar(t.height(), t.angle() + 90);
        Point d = a.polar(t.height(), t.angle() + 90);
        return GEOMETRY.createPolygon(new Coordinate[] {
            new Coordinate(a.x(), a.y()),
            new Coordinate(b.x(), b.y()),
            new Coordinate(c.x(), c.y()),
            new Coordinate(d.x(), d.y()),
            new Coordinate(a.x(), a.y())
        });
    }
}
