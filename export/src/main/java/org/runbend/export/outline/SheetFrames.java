package org.runbend.export.outline;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Vertex;

/**
 * Tells the frame of a sheet of paper from a floor: a rectangle with a larger part of the drawing in it that has the
 * proportions of a sheet (ISO 216, ANSI Y14.1: from memory), words of a title block, or a layer with such a name.
 */
final class SheetFrames {
    /** What lies in a frame takes at least this share of it, and this much, mm2. */
    private static final double LEAST_SHARE = 0.08;

    private static final double MOST_SHARE = 0.97;
    private static final double LEAST_AREA = 0.5e6;
    private static final double RIGHT = 0.002;
    /** Long to short side: A sizes, and letter and ledger sizes. */
    private static final double[] PROPORTIONS = {Math.sqrt(2), 11 / 8.5, 17 / 11.0};

    /** A border is a little slimmer than its sheet: 10 mm at three sides and 20 mm at one (ISO 5457, from memory). */
    private static final double SLIMMER = 0.012;

    private static final double[] SHEETS = {1189, 841, 594, 420, 297, 210};
    private static final int[] SCALES = {1, 2, 5, 10, 20, 50, 100};
    private static final Pattern LAYER =
            Pattern.compile("(?i).*(frame|border|title|sheet|rahmen|blatt|cadre|kader|bordo).*");
    private static final Pattern TITLE = Pattern.compile(
            "(?i).*(\\b(scale|sheet|date|drawn|drawing|title|revision|rev|checked|approved|project|format|datum|blatt"
                    + "|gezeichnet|echelle|schaal|escala|scala|a[0-4])\\b|\u00e9chelle|ma\u00dfstab|massstab|\\b1 ?: ?\\d+).*");

    private final List<Contour> all;
    private final List<Figures.Words> words;

    SheetFrames(List<Contour> all, List<Figures.Words> words) {
        this.all = all;
        this.words = words;
    }

    boolean isFrame(Contour c) {
        if (!isRectangle(c)) {
            return false;
        }
        List<Contour> within = all.stream()
                .filter(o -> o.area() < MOST_SHARE * c.area() && c.boxCovers(o) && isLeaf(o))
                .toList();
        if (within.isEmpty()) {
            return false;
        }
        Contour largest = within.get(0);
        boolean holdsMuch = largest.area() >= LEAST_SHARE * c.area() && largest.area() >= LEAST_AREA;
        return holdsMuch && score(c, largest) >= 2;
    }

    /** Whether no larger closed line lies in it. */
    private boolean isLeaf(Contour c) {
        return all.stream()
                .noneMatch(o -> o.area() < MOST_SHARE * c.area()
                        && o.area() >= LEAST_SHARE * c.area()
                        && o.area() >= LEAST_AREA
                        && c.boxCovers(o));
    }

    private int score(Contour frame, Contour floor) {
        int score = LAYER.matcher(frame.layer()).matches() ? 2 : 0;
        score += hasProportions(frame) ? 1 : 0;
        score += isSheet(frame) ? 1 : 0;
        return score + (int) Math.min(2, titles(frame, floor));
    }

    private static boolean hasProportions(Contour c) {
        double ratio = longer(c) / shorter(c);
        for (double p : PROPORTIONS) {
            if (Math.abs(ratio / p - 1) < SLIMMER) {
                return true;
            }
        }
        return false;
    }

    /** Whether it is as large as a sheet at a scale of ISO 5455, to the millimetre on paper. */
    private static boolean isSheet(Contour c) {
        for (int scale : SCALES) {
            for (int i = 0; i + 1 < SHEETS.length; i++) {
                if (Math.abs(longer(c) / scale - SHEETS[i]) < 0.6
                        && Math.abs(shorter(c) / scale - SHEETS[i + 1]) < 0.6) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double longer(Contour c) {
        return Math.max(c.box().width(), c.box().height());
    }

    private static double shorter(Contour c) {
        return Math.min(c.box().width(), c.box().height());
    }

    /** Words of a title block within the frame and not on the floor. */
    private long titles(Contour frame, Contour floor) {
        Polygon inner = floor.polygon();
        return words.stream()
                .filter(w -> TITLE.matcher(w.text().toLowerCase(Locale.ROOT)).matches())
                .filter(w -> isIn(frame, w.middle()))
                .filter(w -> !inner.covers(inner.getFactory()
                        .createPoint(new Coordinate(w.middle().x(), w.middle().y()))))
                .limit(2)
                .count();
    }

    private static boolean isIn(Contour c, Point p) {
        return p.x() >= c.box().minX()
                && p.x() <= c.box().maxX()
                && p.y() >= c.box().minY()
                && p.y() <= c.box().maxY();
    }

    /** Whether it fills its box: four straight sides along the axes. */
    private static boolean isRectangle(Contour c) {
        List<Vertex> v = c.path().vertices();
        double around = c.box().width() * c.box().height();
        return v.size() >= 4
                && v.size() <= 8
                && v.stream().allMatch(p -> p.bulge() == 0)
                && c.area() >= (1 - RIGHT) * around;
    }
}
