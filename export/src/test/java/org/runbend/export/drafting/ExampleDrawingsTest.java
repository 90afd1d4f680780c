package org.runbend.export.drafting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.runbend.export.PlannedExamples;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.setout.SetOut;

/** The drawings of all examples can be read: what is written is held against what is drawn by an independent geometry library (JTS). */
class ExampleDrawingsTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();
    /** Floor mm to a mm of paper, about as on the pages. */
    private static final double UNIT = 20;

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    private static List<Sheet> sheets(Path job) {
        KitPlan plan = PlannedExamples.plan(job);
        SetOut marks = plan.setOut();
        return List.of(
                new FloorDrafting().draw(plan),
                new FloorDrafting().drawToMarkOut(plan, marks, UNIT),
                LinesDrafting.draw(plan, marks, UNIT));
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void noLineRunsThroughTheDigitsOfAMeasure(Path job) {
        for (Sheet sheet : sheets(job)) {
            List<Dimension> measures = sheet.marks().stream()
                    .map(Mark::shape)
                    .filter(Dimension.class::isInstance)
                    .map(Dimension.class::cast)
                    .toList();
            for (Dimension read : measures) {
                Geometry digits = letters(read.label());
                for (Dimension other : measures) {
                    for (Shape part : other.parts()) {
                        assertFalse(
                                part instanceof Segment s && digits.crosses(line(s)),
                                job + ": a line of " + other.text() + " runs through " + read.text());
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void noTextCoversAnother(Path job) {
        for (Sheet sheet : sheets(job)) {
            List<Text> texts = new ArrayList<>();
            for (Mark mark : sheet.marks()) {
                if (mark.layer() == Layer.NOTE && mark.shape() instanceof Text t) {
                    texts.add(t);
                } else if (mark.shape() instanceof Dimension d) {
                    texts.add(d.label());
                }
            }
            for (int i = 0; i < texts.size(); i++) {
                for (int j = 0; j < i; j++) {
                    Text a = texts.get(i);
                    Text b = texts.get(j);
                    double common = letters(a).intersection(letters(b)).getArea();
                    assertEquals(0, common, 1e-6, job + ": " + a.string() + " and " + b.string());
                }
            }
        }
    }

    private static Geometry line(Segment s) {
        return SHAPES.createLineString(new Coordinate[] {at(s.a()), at(s.b())});
    }

    private static Geometry letters(Text text) {
        double width = Text.roughWidth(text.string(), text.height());
        Point start = text.baselineStart(width);
        Point end = start.polar(width, text.angle());
        Coordinate first = at(start);
        return SHAPES.createPolygon(new Coordinate[] {
            first,
            at(end),
            at(end.polar(text.height(), text.angle() + 90)),
            at(start.polar(text.height(), text.angle() + 90)),
            first
        });
    }

    private static Coordinate at(Point p) {
        return new Coordinate(p.x(), p.y());
    }
}
