package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Lays the drawing out on a sheet of paper: A3 (ISO 216), whichever way shows the floor larger, at the largest scale of ISO
 * 5455 that fits; border and filing margin as in ISO 5457 (10 and 20 mm, from memory); a legend of the layers, what each is
 * cut with and on which side, and a title block in the lower right corner.
 */
public final class PaperDrafting {
    private static final double LONG = 420;
    private static final double SHORT = 297;
    private static final double BORDER = 10;
    private static final double FILING = 20;
    private static final double BAND = 46;
    private static final double BLOCK = 150;
    private static final double ROW = 5.6;
    private static final List<Integer> SCALES = List.of(1, 2, 5, 10, 20, 50, 100, 200);

    /** The paper for a plan's drawing. */
    public PaperSheet draw(KitPlan plan, Sheet drawing) {
        Extent shown = shown(plan, drawing);
        int upright = scale(shown, SHORT, LONG);
        int across = scale(shown, LONG, SHORT);
        boolean stands = upright < across;
        double width = stands ? SHORT : LONG;
        double height = stands ? LONG : SHORT;
        int scale = stands ? upright : across;
        SheetBuilder marks = new SheetBuilder(plan.job().title());
        frame(marks, width, height);
        block(marks, plan, width, scale);
        legend(marks, plan, drawing, width);
        Point middle = window(width, height).centre();
        double w = shown.width() / scale / 2;
        double h = shown.height() / scale / 2;
        Extent window = new Extent(middle.x() - w, middle.y() - h, middle.x() + w, middle.y() + h);
        return new PaperSheet("A3", width, height, marks.build(), window, shown.centre(), scale);
    }

    /** Floor and measures; title and notes of the drawing stand on the paper itself. */
    private static Extent shown(KitPlan plan, Sheet drawing) {
        Extent floor = Extent.around(Places.all(plan.job().floor().outline()));
        double room = (TitleBlock.BELOW - 1) * Places.unit(floor);
        Extent all = drawing.extent();
        double air = Places.unit(floor);
        return new Extent(
                Math.max(floor.minX() - room, all.minX() - air),
                floor.minY() - room,
                Math.min(floor.maxX() + room, all.maxX() + air),
                Math.min(floor.maxY() + room, all.maxY() + air));
    }

    private static int scale(Extent shown, double width, double height) {
        Extent window = window(width, height);
        return SCALES.stream()
                .filter(s -> shown.width() <= s * window.width() && shown.height() <= s * window.height())
                .findFirst()
                .orElse(SCALES.get(SCALES.size() - 1));
    }

    private static Extent window(double width, double height) {
        return new Extent(FILING, BORDER + BAND, width - BORDER, height - BORDER);
    }

    private static void frame(SheetBuilder marks, double width, double height) {
        marks.add(Layer.TITLE, Path.rectangle(new Extent(FILING, BORDER, width - BORDER, height - BORDER)));
        double top = BORDER + BAND;
        marks.add(Layer.TITLE, new Segment(new Point(FILING, top), new Point(width - BORDER, top)));
        double left = width - BORDER - BLOCK;
        marks.add(Layer.TITLE, new Segment(new Point(left, BORDER), new Point(left, top)));
    }

    private static void block(SheetBuilder marks, KitPlan plan, double width, int scale) {
        Job job = plan.job();
        double left = width - BORDER - BLOCK;
        double top = BORDER + BAND;
        line(marks, left, top - 10, BLOCK - 6, 4.5, job.title());
        List<String> rows = new ArrayList<>();
        if (!plan.isSound()) {
            rows.add(TitleBlock.DO_NOT_CUT);
        }
        rows.add("order " + job.order());
        rows.add(job.customer().map(c -> "customer " + c).orElse(""));
        rows.add(both(job.date().map(d -> "date " + d), job.revision().map(r -> "revision " + r)));
        rows.add("scale 1:" + scale + ", unit mm, A3, sheet 1 of 1");
        rows.add("SEEN FROM ABOVE, x to the right, y up");
        rows.add(job.catalog().workshop());
        double y = top - 10;
        for (String row : rows) {
            if (!row.isEmpty()) {
                y -= ROW;
                line(marks, left, y, BLOCK - 6, 2.8, row);
            }
        }
    }

    private static void legend(SheetBuilder marks, KitPlan plan, Sheet drawing, double width) {
        List<String> lines = new ArrayList<>();
        for (Layer layer : Layer.values()) {
            if (drawing.marks().stream().anyMatch(m -> m.layer() == layer)) {
                meaning(layer, plan).ifPresent(text -> lines.add(layer.name() + ": " + text));
            }
        }
        lines.add("Look under the floor before you drill or cut. Pressure-test the loop before it is covered.");
        double room = width - BORDER - BLOCK - FILING - 8;
        double height = 2.5;
        List<String> wrapped = lines.stream()
                .flatMap(l -> Wording.lines(l, room, height).stream())
                .toList();
        double fitting = Math.min(height, (BAND - 8) / (wrapped.size() * Paragraph.PITCH));
        marks.add(Layer.NOTE, new Paragraph(new Point(FILING + 4, BORDER + BAND - 4), fitting, wrapped));
    }

    /** What lies on a layer and how it is worked. The side of the cut has no standard, so it is said in words. */
    private static Optional<String> meaning(Layer layer, KitPlan plan) {
        return switch (layer) {
            case FLOOR -> Optional.of("outline of the floor; cut outside the line");
            case KEEP_OUT ->
                Optional.of("things; the outer line keeps the middle of the pipe off, the groove is "
                        + mm(plan.job().groove().half()) + " nearer");
            case SLOT -> Optional.of("groove deepened for the turn of the pipe into its hole");
            case HOLE -> Optional.of("holes through the floor, as the job gives them");
            case UNHEATED -> Optional.of("no heat wanted");
            case PLATE -> Optional.of("spreader plates");
            case PIPE -> Optional.of("centreline of the pipe, bend radius " + mm(plan.bendRadius()));
            case CHANNEL ->
                plan.channel().map(c -> "finished edge of the channel, tool inside; " + TitleBlock.channel(c.size()));
            case DIMENSION -> Optional.of("measures; not cut");
            case NOTE, TITLE -> Optional.of("words; not cut");
            default -> Optional.empty();
        };
    }

    private static String mm(double value) {
        return Decimals.of(value, 1);
    }

    private static String both(Optional<String> a, Optional<String> b) {
        return a.isPresent() && b.isPresent()
                ? a.get() + ", " + b.get()
                : a.or(() -> b).orElse("");
    }

    /** One line, smaller where it is long, cut short where it would get illegible. */
    private static void line(SheetBuilder marks, double x, double y, double room, double height, String text) {
        double fitting = Math.max(0.6 * height, Math.min(height, height * room / Text.roughWidth(text, height)));
        String shown = Wording.brief(text, room, fitting);
        marks.add(Layer.TITLE, Text.level(new Point(x + 3, y), fitting, Anchor.BOTTOM_LEFT, shown));
    }
}
