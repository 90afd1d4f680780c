package org.runbend.export.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Backend;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Text;

/**
 * Draws a sheet onto a page. PDF knows no arcs: each is drawn as cubic curves of at most 90 degrees with handles of
 * 4/3 tan(sweep/4) x radius, off the circle by less than 0.0003 radius (textbook value).
 */
final class PdfBackend implements Backend {
    private static final double POINTS = 72 / 25.4;

    /** Capital height by em of DejaVu Sans. */
    private static final double CAPITAL = 0.729;

    private final PDPageContentStream out;
    private final PdfFonts fonts;
    private final Placement placement;
    private Layer current;

    PdfBackend(PDPageContentStream out, PdfFonts fonts, Placement placement) {
        this.out = out;
        this.fonts = fonts;
        this.placement = placement;
    }

    @Override
    public void begin(String title, Extent extent) throws IOException {
        out.saveGraphicsState();
        out.setLineCapStyle(1);
        out.setLineJoinStyle(1);
    }

    @Override
    public void segment(Layer layer, Segment s) throws IOException {
        use(layer);
        moveTo(s.a());
        lineTo(s.b());
        out.stroke();
    }

    @Override
    public void arc(Layer layer, Arc arc) throws IOException {
        use(layer);
        moveTo(arc.start());
        curve(arc, arc.end());
        out.stroke();
    }

    @Override
    public void circle(Layer layer, Circle circle) throws IOException {
        use(layer);
        Arc whole = new Arc(circle.centre(), circle.radius(), 0, 360);
        moveTo(whole.start());
        curve(whole, whole.start());
        out.closePath();
        paint(layer);
    }

    @Override
    public void path(Layer layer, Path path) throws IOException {
        use(layer);
        moveTo(path.vertices().get(0).point());
        List<Shape> parts = path.parts();
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i) instanceof Arc arc) {
                curve(arc, path.end(i));
            } else {
                lineTo(path.end(i));
            }
        }
        if (path.closed()) {
            out.closePath();
            paint(layer);
        } else {
            out.stroke();
        }
    }

    @Override
    public void arrow(Layer layer, Arrow arrow) throws IOException {
        List<Point> corners = arrow.corners();
        moveTo(corners.get(0));
        lineTo(corners.get(1));
        lineTo(corners.get(2));
        out.setNonStrokingColor(Inks.colour(layer.colour()));
        out.fill();
    }

    @Override
    public void text(Layer layer, Text text) throws IOException {
        double size = text.height() / CAPITAL * placement.scale() * POINTS;
        TextStyle style = new TextStyle(layer == Layer.TITLE, size, layer.colour());
        double width = fonts.width(text.string(), style) / placement.scale();
        Point start = placement.toPage(text.baselineStart(width));
        out.beginText();
        out.setNonStrokingColor(Inks.colour(layer.colour()));
        out.setFont(fonts.font(style.strong()), (float) size);
        out.setTextMatrix(Matrix.getRotateInstance(
                Math.toRadians(text.angle()), (float) (start.x() * POINTS), (float) (start.y() * POINTS)));
        out.showText(fonts.showable(text.string(), style.strong()));
        out.endText();
    }

    @Override
    public void end() throws IOException {
        out.restoreGraphicsState();
    }

    private void use(Layer layer) throws IOException {
        if (layer == current) {
            return;
        }
        current = layer;
        out.setStrokingColor(Inks.colour(layer.colour()));
        out.setLineWidth((float) (layer.pen() * POINTS));
        List<Double> dashes = layer.style().dashes();
        float[] pattern = new float[dashes.size()];
        for (int i = 0; i < pattern.length; i++) {
            pattern[i] = (float) (dashes.get(i) * POINTS);
        }
        out.setLineDashPattern(pattern, 0);
    }

    private void paint(Layer layer) throws IOException {
        if (layer.fill().isPresent()) {
            out.setNonStrokingColor(Inks.colour(layer.fill().getAsInt()));
            out.fillAndStroke();
        } else {
            out.stroke();
        }
    }

    /** Draws the arc from where the pen is; the last curve ends in {@code end} exactly. */
    private void curve(Arc arc, Point end) throws IOException {
        int count = (int) Math.ceil(Math.abs(arc.sweep()) / 90 - 1e-9);
        double step = arc.sweep() / count;
        double handle = 4.0 / 3 * StrictMath.tan(Math.toRadians(step) / 4) * arc.radius();
        for (int i = 0; i < count; i++) {
            double from = arc.startAngle() + i * step;
            Point a = arc.centre().polar(arc.radius(), from);
            Point b = i == count - 1 ? end : arc.centre().polar(arc.radius(), from + step);
            curveTo(a.polar(handle, from + 90), b.polar(-handle, from + step + 90), b);
        }
    }

    private void moveTo(Point p) throws IOException {
        out.moveTo(x(p), y(p));
    }

    private void lineTo(Point p) throws IOException {
        out.lineTo(x(p), y(p));
    }

    private void curveTo(Point c, Point d, Point p) throws IOException {
        out.curveTo(x(c), y(c), x(d), y(d), x(p), y(p));
    }

    private float x(Point p) {
        return (float) (placement.toPage(p).x() * POINTS);
    }

    private float y(Point p) {
        return (float) (placement.toPage(p).y() * POINTS);
    }
}
