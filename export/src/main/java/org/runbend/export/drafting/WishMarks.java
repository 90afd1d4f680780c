package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.Support;

/** Draws what was met on site: supports as pairs of dashed lines, circles without bends and regions without pipe. */
final class WishMarks {
    private final SheetBuilder sheet;
    private final Labels labels;
    private final double unit;

    WishMarks(SheetBuilder sheet, Labels labels, double unit) {
        this.sheet = sheet;
        this.labels = labels;
        this.unit = unit;
    }

    void draw(Job job) {
        job.floor().supports().forEach(this::support);
        for (PipeRule veto : job.layout().pipeRules()) {
            if (veto instanceof PipeRule.NoBend circle) {
                Point at = Places.at(circle.at());
                sheet.add(Layer.NOTE, new Circle(at, circle.radius()));
                labels.put(Labels.around(Extent.at(at).grow(circle.radius()), 0.8 * unit, 2.2 * unit, "no bend"));
            } else if (veto instanceof PipeRule.NoPipe area) {
                Path region = Path.polygon(Places.all(area.region().corners()));
                sheet.add(Layer.KEEP_OUT, region);
                labels.putIn(Labels.around(region.extent(), 0.8 * unit, 2.2 * unit, "no pipe"), region.extent());
            } else if (veto instanceof PipeRule.Kept part) {
                kept(part);
            }
        }
    }

    /** A dash across each end of the part and the word beside its middle leg. */
    private void kept(PipeRule.Kept part) {
        List<Point> points = Places.all(part.points());
        int last = points.size() - 1;
        across(points.get(0), points.get(0).angleTo(points.get(1)));
        across(points.get(last), points.get(last).angleTo(points.get(last - 1)));
        Point a = points.get(last / 2);
        Point b = points.get(last / 2 + 1);
        beside(a, b, 1.5 * unit, "kept");
    }

    private void across(Point at, double angle) {
        sheet.add(Layer.NOTE, new Segment(at.polar(1.5 * unit, angle + 90), at.polar(1.5 * unit, angle - 90)));
    }

    private void support(Support support) {
        new FloorShapes(sheet, unit).support(support);
        sheet.annotate(ReadBack.support(support));
        name(Places.at(support.from()), Places.at(support.to()), support);
    }

    /** The name stands along the support, beside it. */
    private void name(Point a, Point b, Support support) {
        beside(a, b, support.width() / 2 + 0.5 * unit, support.name());
    }

    private void beside(Point a, Point b, double off, String word) {
        double angle = FloorMarks.readable(a.angleTo(b));
        List<Text> places = new ArrayList<>();
        for (double share : new double[] {0.5, 0.25, 0.75, 0.1, 0.9}) {
            Point foot = Places.between(a, b, share);
            places.add(new Text(foot.polar(off, angle + 90), 2.2 * unit, angle, Anchor.BOTTOM_CENTRE, word));
            places.add(new Text(foot.polar(off, angle - 90), 2.2 * unit, angle, Anchor.TOP_CENTRE, word));
        }
        labels.put(places);
    }
}
