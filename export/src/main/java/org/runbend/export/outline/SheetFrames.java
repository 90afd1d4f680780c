package org.runbend.export.outline;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
    /** A closed line of so much of a rectangle may be the floor in a frame, or a keep-out of a floor, mm2. */
    private static final double DOUBTFUL_SHARE = 0.25;

    private static final double DOUBTFUL_AREA = 1.2e6;
    private static final Pattern FLOOR = Pattern.compile("(?i).*(floor|boden|plancher|vloer|pavimento|suelo).*");
    private static final Pattern KEEP_OUT =
            Pattern.compile("(?i).*(keep.?out|unheated|hatch|furnitur|cupboard|locker|seat|bed|kitchen|hole).*");
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
    private final List<DrawnShapes.Words> words;
    private final List<Point> things;

    /** Frames among closed lines, the largest first; {@code things} are the middles of holes, bolts and points. */
    SheetFrames(List<Contour> all, List<DrawnShapes.Words> words, List<Point> things) {
        this.all = all;
        this.words = words;
        this.things = things;
    }

    /** Whether a closed line is the frame of a sheet. */
    boolean isFrame(Contour c) {
        return likeness(c) >= 2;
    }

    /** Whether it could be a frame as well as a floor: a large closed line lies in it, and nothing speaks for the one or the other. */
    boolean isDoubtful(Contour c) {
        return likeness(c) >= 0 && likeness(c) < 2 && !FLOOR.matcher(c.layer()).matches();
    }

    /** What the likeness rests on: the largest closed line within. */
    private Optional<Contour> within(Contour c) {
        return all.stream()
                .filter(o -> o.area() < MOST_SHARE * c.area() && c.boxCovers(o) && isLeaf(o))
                .findFirst()
                .filter(o -> o.area() >= LEAST_SHARE * c.area() && o.area() >= LEAST_AREA);
    }

    /** What speaks for a frame; under 0 where nothing large enough lies in a rectangle, so that it is none. */
    private int likeness(Contour c) {
        if (!isRectangle(c)) {
            return -1;
        }
        Optional<Contour> largest = within(c);
        if (largest.isEmpty()) {
            return -1;
        }
        int score = score(c, largest.get());
        boolean large = largest.get().area() >= DOUBTFUL_SHARE * c.area()
                && largest.get().area() >= DOUBTFUL_AREA;
        boolean hole = KEEP_OUT.matcher(largest.get().layer()).matches();
        return score > 0 || (large && !hole) ? score : -1;
    }

    /** Things lie on the floor within a frame, and none between both. */
    private boolean holdsAllThings(Contour frame, Contour floor) {
        Polygon inner = floor.polygon();
        boolean any = false;
        for (Point p : things) {
            if (isIn(frame, p) && !isIn(floor, p)) {
                return false;
            }
            any |= isIn(floor, p) && inner.covers(inner.getFactory().createPoint(new Coordinate(p.x(), p.y())));
        }
        return any;
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
        score += holdsAllThings(frame, floor) ? 1 : 0;
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
