package org.runbend.export.svg;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.export.drawing.Vertex;

/** Writes a shaded floor as SVG: one path a step, one a line, the legend to the right. */
public final class ShadedSvg {
    private static final int DIGITS = 3;
    private static final String FONTS = "DejaVu Sans, Verdana, Arial, sans-serif";

    private final StringBuilder out = new StringBuilder();
    private final ShadedFloor floor;
    private final double pen;

    private ShadedSvg(ShadedFloor floor) {
        this.floor = floor;
        pen = floor.extent().mmPerPaperMm();
    }

    /** The file, UTF-8. */
    public static byte[] bytes(ShadedFloor floor) {
        return new ShadedSvg(floor).text().getBytes(StandardCharsets.UTF_8);
    }

    private String text() {
        Extent box = floor.extent();
        double legend = 42 * pen;
        double head = (8 + 5 * floor.captions().size()) * pen;
        double width = box.width() + legend + 10 * pen;
        double height = Math.max(box.height(), 6 * pen * (floor.steps().size() + 2)) + head + 5 * pen;
        line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
        line("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\"" + n(width) + "mm\" height=\"" + n(height)
                + "mm\" viewBox=\"" + n(box.minX() - 5 * pen) + " " + n(-box.maxY() - head) + " " + n(width) + " "
                + n(height) + "\" style=\"max-width:100%;max-height:100vh\">");
        line("<title>" + Xml.escape(floor.title()) + "</title>");
        line("<rect x=\"" + n(box.minX() - 5 * pen) + "\" y=\"" + n(-box.maxY() - head) + "\" width=\"" + n(width)
                + "\" height=\"" + n(height) + "\" fill=\"#ffffff\"/>");
        steps();
        lines();
        outline();
        words(box, head);
        legend(box);
        line("</svg>");
        return out.toString();
    }

    private void steps() {
        for (int i = 0; i < floor.steps().size(); i++) {
            StringBuilder d = new StringBuilder();
            for (ShadedFloor.ShadedBox b : floor.boxes()) {
                if (b.step() == i) {
                    d.append("M")
                            .append(n(b.box().minX()))
                            .append(" ")
                            .append(n(-b.box().maxY()));
                    d.append("h")
                            .append(n(b.box().width()))
                            .append("v")
                            .append(n(b.box().height()));
                    d.append("h").append(n(-b.box().width())).append("z");
                }
            }
            if (!d.isEmpty()) {
                line("<path shape-rendering=\"crispEdges\" fill=\""
                        + colour(floor.steps().get(i).colour()) + "\" d=\"" + d + "\"/>");
            }
        }
    }

    private void lines() {
        for (ShadedFloor.LevelLine l : floor.lines()) {
            StringBuilder d = new StringBuilder();
            for (Path p : l.lines()) {
                d.append(way(p));
            }
            line("<path fill=\"none\" stroke=\"#333333\" stroke-width=\"" + n(0.13 * pen) + "\" d=\"" + d + "\"/>");
        }
        for (ShadedFloor.LevelLine l : floor.lines()) {
            for (Point at : l.labels()) {
                label(at.x(), -at.y() + 0.8 * pen, 2.2, "middle", l.words(), true);
            }
        }
    }

    private void outline() {
        for (Path p : floor.outline()) {
            line("<path fill=\"none\" stroke=\"#1a1a1a\" stroke-width=\"" + n(0.5 * pen) + "\" d=\"" + way(p) + "\"/>");
        }
    }

    private static String way(Path p) {
        List<String> corners =
                p.vertices().stream().map(Vertex::point).map(ShadedSvg::xy).toList();
        return "M" + String.join("L", corners) + (p.closed() ? "Z" : "");
    }

    private void words(Extent box, double head) {
        double y = -box.maxY() - head + 6 * pen;
        label(box.minX(), y, 4, "start", floor.title(), false);
        for (String caption : floor.captions()) {
            y += 5 * pen;
            label(box.minX(), y, 2.6, "start", caption, false);
        }
    }

    private void legend(Extent box) {
        double x = box.maxX() + 5 * pen;
        double y = -box.maxY();
        label(x, y + 3 * pen, 2.6, "start", "degrees C", false);
        for (int i = floor.steps().size() - 1; i >= 0; i--) {
            y += 6 * pen;
            line("<rect x=\"" + n(x) + "\" y=\"" + n(y) + "\" width=\"" + n(9 * pen) + "\" height=\"" + n(5 * pen)
                    + "\" fill=\"" + colour(floor.steps().get(i).colour()) + "\" stroke=\"#333333\" stroke-width=\""
                    + n(0.13 * pen) + "\"/>");
            label(
                    x + 11 * pen,
                    y + 3.6 * pen,
                    2.8,
                    "start",
                    floor.steps().get(i).words(),
                    false);
        }
    }

    private void label(double x, double y, double size, String anchor, String words, boolean halo) {
        String edge = halo ? " paint-order=\"stroke\" stroke=\"#ffffff\" stroke-width=\"" + n(0.6 * pen) + "\"" : "";
        line("<text x=\"" + n(x) + "\" y=\"" + n(y) + "\" font-family=\"" + FONTS + "\" font-size=\"" + n(size * pen)
                + "\" text-anchor=\"" + anchor + "\" fill=\"#1a1a1a\"" + edge + ">" + Xml.escape(words) + "</text>");
    }

    private static String xy(Point p) {
        return n(p.x()) + " " + n(-p.y());
    }

    private static String colour(int rgb) {
        return String.format(Locale.ROOT, "#%06x", rgb);
    }

    private static String n(double value) {
        return Decimals.of(value, DIGITS);
    }

    private void line(String text) {
        out.append(text).append('\n');
    }
}
