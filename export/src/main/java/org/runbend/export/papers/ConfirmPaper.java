package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * The paper that a customer checks with a tape and signs before anything is cut: one A4 page, more only where its lists are
 * long. The drawing has a round scale; of upright and lying pages the one that shows the floor larger is taken.
 */
public final class ConfirmPaper {
    private static final double HEAD = 19;
    private static final double FOOT = 31;
    private static final double GAP = 5;
    private static final int INK = 0x1A1A1A;
    private static final TextStyle WORDS = TextStyle.BODY.sized(7.5);

    /** The cautions of the pick list in a line, as far as they concern whoever measures a floor. */
    private static final String CAUTIONS = "Take care: look at what lies under the floor before anybody drills or cuts:"
            + " cables, fuel and gas lines, tanks. The floor gets hot coolant. Electrical work, gas and fuel appliances are"
            + " for licensed people; local codes and the makers' instructions go before this paper.";

    private static final String PROMISE =
            "I have checked the sizes, the things on the floor and the marks with a tape. The"
                    + " floor is shown as seen from above. What I changed I wrote on this sheet. The kit may be cut to it.";

    /** A way to divide a page. */
    private record Division(PageFormat format, Box drawing, int columns, boolean beside) {
        static Division upright() {
            Box in = PageFormat.A4.inside();
            return new Division(PageFormat.A4, top(in, in.width(), 132), 2, false);
        }

        static Division lying() {
            Box in = PageFormat.A4_WIDE.inside();
            return new Division(PageFormat.A4_WIDE, top(in, 172, in.height() - HEAD - FOOT), 1, true);
        }

        static Division lyingLong() {
            Box in = PageFormat.A4_WIDE.inside();
            return new Division(PageFormat.A4_WIDE, top(in, in.width(), 84), 3, false);
        }

        private static Box top(Box in, double width, double height) {
            return new Box(in.x(), in.y() + in.height() - HEAD - height, width, height);
        }
    }

    /** A drawing that fits its place. */
    private record Fitted(Division division, Sheet sheet, double scale) {}

    private final Job job;
    private final TapeSheet tape;

    /** A paper for a job and its measures. */
    public ConfirmPaper(Job job, TapeSheet tape) {
        this.job = job;
        this.tape = tape;
    }

    /**
     * The paper as PDF.
     *
     * @param drawing the floor's drawing for a number of floor mm to a mm of paper
     * @param sign the sign that tells it from its mirror image, in mm of paper
     */
    public byte[] bytes(DoubleFunction<Sheet> drawing, Sheet sign) {
        Fitted fitted = List.of(Division.upright(), Division.lying(), Division.lyingLong()).stream()
                .map(d -> fit(d, drawing))
                .reduce((a, b) -> b.scale() < a.scale() ? b : a)
                .orElseThrow();
        Division division = fitted.division();
        try (PdfDocument document = new PdfDocument("Floor to confirm " + job.order(), "en", division.format())) {
            document.footer(footer());
            PdfPage page = document.addPage();
            head(document, page, sign, fitted.scale());
            Box drawn = place(page, fitted);
            foot(document, page);
            PdfFlow flow = new PdfFlow(document, page, frames(division, drawn)).compact();
            new ConfirmLists(job, tape).write(flow);
            return document.toBytes();
        }
    }

    private static Fitted fit(Division division, DoubleFunction<Sheet> drawing) {
        Box box = division.drawing();
        double scale = 1;
        Sheet sheet = drawing.apply(scale);
        for (double least = least(sheet, box, scale); ; least = Math.max(scale * 1.01, least(sheet, box, scale))) {
            scale = Placement.roundFigure(least);
            sheet = drawing.apply(scale);
            Extent e = sheet.extent();
            if (e.width() <= box.width() * scale && e.height() <= box.height() * scale) {
                return new Fitted(division, sheet, scale);
            }
        }
    }

    /** Words keep their size on paper, so this is too large a scale or just right, never too small. */
    private static double least(Sheet sheet, Box box, double scale) {
        double words = 2 * 10 * scale;
        double wide = (sheet.extent().width() - words) / box.width();
        double high = (sheet.extent().height() - words) / box.height();
        return Math.max(1, Math.max(wide, high));
    }

    private static Box place(PdfPage page, Fitted fitted) {
        Division division = fitted.division();
        Box box = division.drawing();
        double high = fitted.sheet().extent().height() / fitted.scale() + 2;
        double used = division.beside() ? box.height() : Math.min(box.height(), high);
        Box drawn = new Box(box.x(), box.y() + box.height() - used, box.width(), used);
        page.sheet(fitted.sheet(), drawn, Placement.scaled(fitted.sheet().extent(), drawn, 1 / fitted.scale()));
        return drawn;
    }

    private static List<Box> frames(Division division, Box drawn) {
        Box in = division.format().inside();
        double low = in.y() + FOOT;
        List<Box> frames = new ArrayList<>();
        if (division.beside()) {
            double x = drawn.x() + drawn.width() + GAP;
            frames.add(new Box(x, low, in.x() + in.width() - x, in.height() - HEAD - FOOT));
            return frames;
        }
        double wide = (in.width() - (division.columns() - 1) * GAP) / division.columns();
        for (int i = 0; i < division.columns(); i++) {
            frames.add(new Box(in.x() + i * (wide + GAP), low, wide, drawn.y() - 2 - low));
        }
        return frames;
    }

    private void head(PdfDocument document, PdfPage page, Sheet sign, double scale) {
        Box in = page.format().inside();
        double top = in.y() + in.height();
        Extent size = sign.extent();
        Box right = new Box(
                in.x() + in.width() - size.width() - 1,
                top - size.height() - 0.5,
                size.width() + 1,
                size.height() + 0.5);
        page.sheet(sign, right, Placement.scaled(size, right, 1));
        double room = in.width() - size.width() - 6;
        TextStyle title = TextStyle.TITLE.sized(13);
        page.text(in.x(), top - title.ascent(), title, Align.LEFT, "Please check and sign: your floor");
        String name = document.wrap(TapeText.shortName(job.title()), TextStyle.BODY.bold(), room)
                .get(0);
        page.text(in.x(), top - 10, TextStyle.BODY.bold(), Align.LEFT, name);
        page.text(
                in.x(),
                top - 13.8,
                WORDS,
                Align.LEFT,
                document.wrap(facts(), WORDS, room).get(0));
        String scaled = "Scale 1:" + Decimals.of(scale, 1) + " if printed at 100 %; lengths in "
                + new TapeText(job).unitWords();
        page.text(
                in.x(),
                top - 17.2,
                WORDS,
                Align.LEFT,
                document.wrap(scaled, WORDS, room).get(0));
    }

    private String facts() {
        List<String> facts = new ArrayList<>();
        facts.add("order " + job.order());
        job.customer().ifPresent(c -> facts.add("for " + c));
        job.date().ifPresent(d -> facts.add("date " + d));
        job.revision().ifPresent(r -> facts.add("revision " + r));
        facts.add("from " + job.catalog().workshop());
        return String.join(", ", facts);
    }

    private String footer() {
        return "floor " + job.floor().fingerprint().substring(0, 12) + ", order " + job.order() + ", " + job.title();
    }

    /** The line to sign stands on the first page, whatever the lists do. */
    private static void foot(PdfDocument document, PdfPage page) {
        Box in = page.format().inside();
        double y = in.y() + FOOT - 3;
        page.line(in.x(), y, in.x() + in.width(), y, 0.35, INK);
        y = lines(document, page, CAUTIONS, y - 1, TextStyle.SMALL.sized(6.8));
        lines(document, page, PROMISE, y - 1, WORDS.bold());
        String[] blanks = {"name", "date", "signature"};
        double[] shares = {0.4, 0.2, 0.4};
        double x = in.x();
        for (int i = 0; i < blanks.length; i++) {
            double wide = in.width() * shares[i] - 4;
            page.line(x, in.y() + 3.4, x + wide, in.y() + 3.4, 0.25, INK);
            page.text(x, in.y() + 0.4, WORDS, Align.LEFT, blanks[i]);
            x += in.width() * shares[i];
        }
    }

    private static double lines(PdfDocument document, PdfPage page, String text, double from, TextStyle style) {
        Box in = page.format().inside();
        double y = from;
        for (String line : document.wrap(text, style, in.width())) {
            page.text(in.x(), y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
        return y;
    }
}
