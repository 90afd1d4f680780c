package org.runbend.export.svg;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Backend;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;

/**
 * Draws a sheet as SVG in true size (mm), one group a layer with the layer's name as its id, arcs as arcs. A browser
 * shrinks it to its window. All looks are attributes, so nothing reaches out of it when it is put into a page. Pens are
 * as thick as on an A4 page the sheet is fitted to.
 */
public final class SvgBackend implements Backend {
    private static final int DIGITS = 4;

    /** Capital height by em of the fonts named below (DejaVu Sans: 0.729). */
    private static final double CAPITAL = 0.729;

    private static final String FONTS = "DejaVu Sans, Verdana, Arial, sans-serif";

    private final StringBuilder out = new StringBuilder();
    private double pens = 1;
    private Layer open;

    private SvgBackend() {}

    /** The sheet as SVG text; UTF-8 when written. */
    public static String svg(Sheet sheet) {
        SvgBackend backend = new SvgBackend();
        try {
            sheet.drawOn(backend);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return backend.out.toString();
    }

    /** The sheet as an SVG file. */
    public static byte[] bytes(Sheet sheet) {
        return svg(sheet).getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public void begin(String title, Extent extent) {
        pens = extent.mmPerPaperMm();
        Extent box = extent.grow(5 * pens);
        String place = n(box.minX()) + " " + n(-box.maxY()) + " " + n(box.width()) + " " + n(box.height());
        line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
        line("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"" + n(box.width()) + "mm\" height=\""
                + n(box.height()) + "mm\" viewBox=\"" + place + "\" style=\"max-width:100%;max-height:100vh\">");
        line("<title>" + Xml.escape(title) + "</title>");
        line("<rect x=\"" + n(box.minX()) + "\" y=\"" + n(-box.maxY()) + "\" width=\"" + n(box.width()) + "\" height=\""
                + n(box.height()) + "\" fill=\"#ffffff\"/>");
    }

    @Override
    public void segment(Layer layer, Segment s) {
        shape(layer, "<path d=\"M" + xy(s.a()) + "L" + xy(s.b()) + "\"/>");
    }

    @Override
    public void arc(Layer layer, Arc arc) {
        if (Math.abs(arc.sweep()) == 360) {
            circle(layer, new Circle(arc.centre(), arc.radius()));
        } else {
            shape(layer, "<path d=\"M" + xy(arc.start()) + arcTo(arc, arc.end()) + "\"/>");
        }
    }

    @Override
    public void circle(Layer layer, Circle c) {
        shape(
                layer,
                "<circle cx=\"" + n(c.centre().x()) + "\" cy=\"" + n(-c.centre().y()) + "\" r=\"" + n(c.radius()) + "\""
                        + fill(layer) + "/>");
    }

    @Override
    public void path(Layer layer, Path path) {
        StringBuilder d = new StringBuilder("M" + xy(path.vertices().get(0).point()));
        List<Shape> parts = path.parts();
        for (int i = 0; i < parts.size(); i++) {
            Point end = path.end(i);
            d.append(parts.get(i) instanceof Arc arc ? arcTo(arc, end) : "L" + xy(end));
        }
        shape(layer, "<path d=\"" + d + (path.closed() ? "Z\"" + fill(layer) : "\"") + "/>");
    }

    @Override
    public void arrow(Layer layer, Arrow arrow) {
        String d = arrow.corners().stream().map(SvgBackend::xy).collect(Collectors.joining("L"));
        shape(layer, "<path d=\"M" + d + "Z\" stroke=\"none\" fill=\"" + colour(layer.colour()) + "\"/>");
    }

    @Override
    public void text(Layer layer, Text t) {
        Point at = t.at().polar(-t.height() * t.anchor().row() / 2, t.angle() + 90);
        String anchor = List.of("start", "middle", "end").get(t.anchor().column());
        String turned = t.angle() == 0 ? "" : " transform=\"rotate(" + n(-t.angle()) + " " + xy(at) + ")\"";
        shape(
                layer,
                "<text stroke=\"none\" fill=\"" + colour(layer.colour()) + "\" x=\"" + n(at.x()) + "\" y=\""
                        + n(-at.y()) + "\" font-size=\"" + n(t.height() / CAPITAL) + "\" text-anchor=\"" + anchor + "\""
                        + turned + ">" + Xml.escape(t.string()) + "</text>");
    }

    @Override
    public void end() {
        closeGroup();
        line("</svg>");
    }

    private void shape(Layer layer, String element) {
        if (layer != open) {
            closeGroup();
            line("<g id=\"" + layer.name() + "\"" + look(layer) + ">");
            open = layer;
        }
        line(element);
    }

    private String look(Layer layer) {
        String dashes = layer.style().dashes().stream().map(d -> n(d * pens)).collect(Collectors.joining(" "));
        return " stroke=\"" + colour(layer.colour()) + "\" stroke-width=\"" + n(layer.pen() * pens)
                + "\" fill=\"none\" stroke-linejoin=\"round\" stroke-linecap=\"round\" font-family=\"" + FONTS + "\""
                + (dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"");
    }

    private void closeGroup() {
        if (open != null) {
            line("</g>");
        }
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    /** An arc from where the pen is. Anticlockwise with y up is sweep flag 0 with y down. */
    private static String arcTo(Arc arc, Point end) {
        int large = Math.abs(arc.sweep()) > 180 ? 1 : 0;
        int sweep = arc.sweep() > 0 ? 0 : 1;
        String r = n(arc.radius());
        return "A" + r + " " + r + " 0 " + large + " " + sweep + " " + xy(end);
    }

    private static String fill(Layer layer) {
        return layer.fill().isPresent() ? " fill=\"" + colour(layer.fill().getAsInt()) + "\"" : "";
    }

    private static String colour(int rgb) {
        return String.format(Locale.ROOT, "#%06x", rgb);
    }

    private static String xy(Point p) {
        return n(p.x()) + " " + n(-p.y());
    }

    private static String n(double value) {
        return Decimals.of(value, DIGITS);
    }
}
