package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.export.data.Stamp;
import org.runbend.export.drawing.Anchor;
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
 * Lays the drawing out on a sheet of paper: the smallest of A4 to A0 (ISO 216), lying or standing, on which the numbers of
 * runs are 2.5 mm high and the legend can be read, at the largest scale of ISO 5455 that fits it; border and filing margin as
 * in ISO 5457 (10 and 20 mm, from memory); a legend of the layers, what each is cut with and on which side, and a title
 * block in the lower right corner.
 */
public final class PaperDrafting {
    /** Sides of A4 to A0, mm (ISO 216). */
    private static final double[][] SIZES = {{297, 210}, {420, 297}, {594, 420}, {841, 594}, {1189, 841}};

    /** Letters of run numbers and of the legend on paper, mm. */
    private static final double LEAST_NUMBER = 2.5;

    private static final double LEGEND = 2.5;
    private static final double LEAST_LEGEND = 1.8;
    private static final double BORDER = 10;
    private static final double FILING = 20;
    private static final double BAND = 46;
    private static final double ROW = 5.6;
    private static final List<Integer> SCALES = List.of(1, 2, 5, 10, 20, 50, 100, 200);

    /** The paper for a plan's drawing with the edge of the groove. */
    public PaperSheet draw(KitPlan plan, Sheet drawing) {
        return draw(plan, drawing, GrooveForm.EDGE);
    }

    /** The paper for a plan's drawing, which shows a form of the groove. */
    public PaperSheet draw(KitPlan plan, Sheet drawing, GrooveForm form) {
        Extent shown = shown(plan, drawing);
        double letters = drawing.marks().stream()
                .filter(m -> m.layer() == Layer.NOTE && m.shape() instanceof Text)
                .mapToDouble(m -> ((Text) m.shape()).height())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        List<String> legend = legend(plan, drawing, form);
        Page best = null;
        for (int size = 0; size < SIZES.length; size++) {
            Page page = page(size, shown);
            boolean legible = letters / page.scale >= LEAST_NUMBER && page.legendHeight(legend) >= LEAST_LEGEND;
            best = best == null || page.scale < best.scale ? page : best;
            if (legible) {
                best = page;
                break;
            }
        }
        return draw(plan, legend, shown, best);
    }

    /** The way to lay a size of paper that shows more; A4 lies, as standing it has no room for the legend. */
    private static Page page(int size, Extent shown) {
        Page lying = Page.of(size, SIZES[size][0], SIZES[size][1], shown);
        Page standing = Page.of(size, SIZES[size][1], SIZES[size][0], shown);
        return size > 0 && standing.scale < lying.scale ? standing : lying;
    }

    /** A size of paper laid one way, and the largest scale at which it shows the floor. */
    private record Page(String name, double width, double height, int scale) {
        static Page of(int size, double width, double height, Extent shown) {
            return new Page("A" + (4 - size), width, height, PaperDrafting.scale(shown, width, height));
        }

        /** Width of the title block. */
        double block() {
            return width < 400 ? 110 : 150;
        }

        double legendHeight(List<String> lines) {
            int count = wrapped(lines).size();
            return Math.min(LEGEND, (BAND - 8) / (count * Paragraph.PITCH));
        }

        List<String> wrapped(List<String> lines) {
            double room = width - BORDER - block() - FILING - 8;
            return lines.stream()
                    .flatMap(l -> Wording.lines(l, room, LEGEND).stream())
                    .toList();
        }
    }

    private static PaperSheet draw(KitPlan plan, List<String> legend, Extent shown, Page page) {
        double width = page.width;
        double height = page.height;
        SheetBuilder marks = new SheetBuilder(plan.job().title());
        frame(marks, page);
        block(marks, plan, page);
        marks.add(
                Layer.NOTE,
                new Paragraph(
                        new Point(FILING + 4, BORDER + BAND - 4), page.legendHeight(legend), page.wrapped(legend)));
        Point middle = window(width, height).centre();
        double w = shown.width() / page.scale / 2;
        double h = shown.height() / page.scale / 2;
        Extent window = new Extent(middle.x() - w, middle.y() - h, middle.x() + w, middle.y() + h);
        return new PaperSheet(page.name, width, height, marks.build(), window, shown.centre(), page.scale);
    }

    /** Floor and measures; title and notes of the drawing stand on the paper itself. */
    private static Extent shown(KitPlan plan, Sheet drawing) {
        Extent floor = TrueArcs.of(Places.all(plan.job().floor().outline())).extent();
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

    private static void frame(SheetBuilder marks, Page page) {
        double width = page.width;
        double height = page.height;
        marks.add(Layer.TITLE, Path.rectangle(new Extent(FILING, BORDER, width - BORDER, height - BORDER)));
        double top = BORDER + BAND;
        marks.add(Layer.TITLE, new Segment(new Point(FILING, top), new Point(width - BORDER, top)));
        double left = width - BORDER - page.block();
        marks.add(Layer.TITLE, new Segment(new Point(left, BORDER), new Point(left, top)));
    }

    private static void block(SheetBuilder marks, KitPlan plan, Page page) {
        Job job = plan.job();
        double left = page.width - BORDER - page.block();
        double top = BORDER + BAND;
        line(marks, left, top - 10, page.block() - 6, 4.5, job.title());
        List<String> rows = new ArrayList<>();
        if (!plan.isSound()) {
            rows.add(Stamp.DO_NOT_CUT);
        }
        rows.add("order " + job.order());
        rows.add(job.customer().map(c -> "customer " + c).orElse(""));
        rows.add(both(job.date().map(d -> "date " + d), Optional.of(MachiningNotes.identity(job))));
        rows.add("scale 1:" + page.scale + ", unit mm, " + page.name + ", sheet 1 of 1");
        rows.add("SEEN FROM ABOVE, x to the right, y up");
        rows.add(job.catalog().workshop());
        double y = top - 10;
        for (String row : rows) {
            if (!row.isEmpty()) {
                y -= ROW;
                line(marks, left, y, page.block() - 6, 2.8, row);
            }
        }
    }

    private static List<String> legend(KitPlan plan, Sheet drawing, GrooveForm form) {
        List<String> lines = new ArrayList<>(new MachiningNotes(plan, form, drawing.marks()).lines());
        lines.add("Look under the floor before you drill or cut. Pressure-test the loop before it is covered.");
        return lines;
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
