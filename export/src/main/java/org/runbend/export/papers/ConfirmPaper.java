package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.Paper;
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
    /** A floor of 20 m on a page; nothing needs a smaller scale. */
    private static final double SMALLEST = 500;
    /** What words may take beside a floor in full size, mm. */
    private static final double LEAST_WORDS = 150;

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
        static Division upright(Paper paper) {
            Box in = paper.upright().inside();
            return new Division(paper.upright(), top(in, in.width(), 132), 2, false);
        }

        static Division lying(Paper paper) {
            Box in = paper.wide().inside();
            return new Division(paper.wide(), top(in, in.width() - 101, in.height() - HEAD - FOOT), 1, true);
        }

        static Division uprightTall(Paper paper) {
            Box in = paper.upright().inside();
            return new Division(paper.upright(), top(in, 88, in.height() - HEAD - FOOT), 1, true);
        }

        static Division lyingLong(Paper paper) {
            Box in = paper.wide().inside();
            return new Division(paper.wide(), top(in, in.width(), 84), 3, false);
        }

        private static Box top(Box in, double width, double height) {
            return new Box(in.x(), in.y() + in.height() - HEAD - height, width, height);
        }
    }

    /** A drawing that fits its place. */
    private record Fitted(Division division, Sheet sheet, double scale) {}

    private final Job job;
    private final TapeSheet tape;
    private final String warning;
    private final Paper paper;

    /** A paper for a job and its measures. */
    public ConfirmPaper(Job job, TapeSheet tape) {
        this(job, tape, "", Paper.A4);
    }

    /** A paper of a size for a job and its measures, with words over every page. */
    public ConfirmPaper(Job job, TapeSheet tape, String warning, Paper paper) {
        this.job = job;
        this.tape = tape;
        this.warning = warning;
        this.paper = paper;
    }

    /**
     * The paper as PDF.
     *
     * @param drawing the floor's drawing for a number of floor mm to a mm of paper
     * @param sign the sign that tells it from its mirror image, in mm of paper
     */
    public byte[] bytes(DoubleFunction<Sheet> drawing, Sheet sign) {
        Map<Double, Sheet> drawn = new HashMap<>();
        Fitted fitted = fitted(scale -> drawn.computeIfAbsent(scale, drawing::apply));
        Division division = fitted.division();
        try (PdfDocument document = new PdfDocument("Floor to confirm " + job.order(), "en", division.format())) {
            document.footer(footer());
            document.warning(warning);
            PdfPage page = document.addPage();
            head(document, page, sign);
            Box place = place(page, fitted);
            foot(document, page);
            PdfFlow flow = new PdfFlow(document, page, frames(division, place)).compact();
            new ConfirmLists(job, tape).write(flow, division.columns());
            return document.toBytes();
        }
    }

    /** The division that shows the floor largest, the first of equals. */
    private Fitted fitted(DoubleFunction<Sheet> drawing) {
        Optional<Fitted> best = Optional.empty();
        for (Division d : List.of(
                Division.upright(paper),
                Division.lying(paper),
                Division.uprightTall(paper),
                Division.lyingLong(paper))) {
            double beaten = best.map(Fitted::scale).orElse(Math.nextUp(SMALLEST));
            Optional<Fitted> larger = fit(d, drawing, beaten);
            best = larger.isPresent() ? larger : best;
        }
        return best.orElseThrow();
    }

    /** The largest round scale that fits, below one; none where words alone are wider than the place. */
    private static Optional<Fitted> fit(Division division, DoubleFunction<Sheet> drawing, double below) {
        Box box = division.drawing();
        double scale = Placement.roundFigure(least(drawing.apply(1), box));
        while (scale < below) {
            Sheet sheet = drawing.apply(scale);
            Extent e = sheet.extent();
            if (e.width() <= box.width() * scale && e.height() <= box.height() * scale) {
                return Optional.of(new Fitted(division, sheet, scale));
            }
            scale = Placement.roundFigure(scale * 1.01);
        }
        return Optional.empty();
    }

    /** No scale larger than this can fit: that of the floor without most of its words. */
    private static double least(Sheet fullSize, Box box) {
        Extent e = fullSize.extent();
        return Math.max(
                1, Math.max((e.width() - LEAST_WORDS) / box.width(), (e.height() - LEAST_WORDS) / box.height()));
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

    private void head(PdfDocument document, PdfPage page, Sheet sign) {
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
        page.text(in.x(), top - 10, TextStyle.BODY.bold(), Align.LEFT, firstLine(document, room));
        double y = top - 13.6;
        for (String line : document.wrap(facts(), WORDS, room).stream().limit(2).toList()) {
            page.text(in.x(), y, WORDS, Align.LEFT, line);
            y -= WORDS.pitch();
        }
    }

    /** The title, with an ellipsis if it has no room; the footer has it too. */
    private String firstLine(PdfDocument document, double room) {
        List<String> lines = document.wrap(job.title(), TextStyle.BODY.bold(), room - 4);
        return lines.get(0) + (lines.size() > 1 ? "\u2026" : "");
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
