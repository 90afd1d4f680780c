package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.BoardsChange;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitPlan;

/** What becomes of a kit that was cut before its floor changed: old and new in one picture, then pieces. A4, PDF. */
public final class ChangesPaper {
    private static final double MOST_HIGH = 120;
    private static final double WORDS_ROOM = 24;
    private static final double SWATCH = 12;
    private static final double INDENT = 15;

    private static final TextStyle WORDS = TextStyle.BODY.sized(7.5);

    private static final String CAUTIONS =
            "Take care: fill and cut nothing before the floor was measured again, and look"
                    + " at what lies under it. The floor gets hot coolant: test its pressure before it is covered. Pipe in a floor"
                    + " is never joined. Electrical work, gas and fuel appliances are for licensed people; local codes and the"
                    + " makers' instructions go before this paper.";

    /** How a part of the pipe is drawn: pen in mm, colour, length of dashes in mm or 0. */
    private enum Look {
        STAYS(0.45, 0x4D4D4D, 0, "stays: groove and pipe lie where they lay"),
        GOES(0.45, 0xA8123E, 1.6, "goes: groove to be filled"),
        ADDED(0.9, 0xD94800, 0, "added: groove to be routed");

        private final double pen;
        private final int colour;
        private final double dash;
        private final String words;

        Look(double pen, int colour, double dash, String words) {
            this.pen = pen;
            this.colour = colour;
            this.dash = dash;
            this.words = words;
        }
    }

    /** Draws the floor. */
    @FunctionalInterface
    public interface Floor {
        /** The drawing at so many mm of floor to a mm of paper. */
        Sheet draw(double unit);
    }

    /** The paper; the floor is drawn without pipe and plates. */
    public byte[] bytes(KitPlan plan, KitChange change, Floor floor, String warning, Paper paper) {
        Job job = plan.job();
        TapeText tape = new TapeText(job);
        String name = "Changes " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, paper.upright(), warning.isEmpty())) {
            PdfFlow flow = new PdfFlow(document);
            flow.title(name)
                    .paragraph(job.title() + ", from " + job.catalog().workshop()
                            + ". Old and new in one picture, seen from above.");
            picture(flow, change, floor);
            flow.heading("In short");
            change.sentences().forEach(s -> flow.paragraph(tape.note(s)));
            flow.paragraph(change.how(), WORDS);
            pieces(flow, tape, change);
            change.boards().ifPresent(b -> boards(flow, b));
            flow.space(2).paragraph(CAUTIONS, WORDS);
            return document.toBytes();
        }
    }

    private static void picture(PdfFlow flow, KitChange change, Floor floor) {
        Extent full = floor.draw(1).extent();
        double natural = (flow.width() - WORDS_ROOM) * full.height() / Math.max(1, full.width()) + WORDS_ROOM;
        double high = Math.min(MOST_HIGH, natural);
        flow.keep(high);
        PdfPage page = flow.page();
        Box box = new Box(flow.left(), flow.y() - high, flow.width(), high);
        double unit = TrueLetters.unit(box, floor::draw);
        Sheet sheet = floor.draw(unit);
        Placement placement = Placement.scaled(sheet.extent(), box, 1 / unit);
        page.sheet(sheet, box, placement);
        draw(page, placement, change.staying(), Look.STAYS);
        draw(page, placement, change.gone(), Look.GOES);
        draw(page, placement, change.added(), Look.ADDED);
        flow.space(high + 2);
        for (Look look : Look.values()) {
            flow.keep(WORDS.pitch());
            double y = flow.y() - WORDS.ascent() / 2;
            way(flow.page(), List.of(new double[] {flow.left(), y}, new double[] {flow.left() + SWATCH, y}), look);
            flow.page().text(flow.left() + INDENT, flow.y() - WORDS.ascent(), WORDS, Align.LEFT, look.words);
            flow.space(WORDS.pitch());
        }
    }

    private static void draw(PdfPage page, Placement placement, List<KitChange.Part> parts, Look look) {
        for (KitChange.Part part : parts) {
            way(
                    page,
                    points(part.pipe()).stream()
                            .map(p -> placement.toPage(p))
                            .map(p -> new double[] {p.x(), p.y()})
                            .toList(),
                    look);
        }
    }

    /** Points along pipe, a bend in steps of 6 degrees at most. */
    private static List<Point> points(Element e) {
        List<Point> points = new ArrayList<>();
        points.add(new Point(e.from().x(), e.from().y()));
        if (e instanceof Element.Bend bend) {
            int steps = (int) Math.ceil(Math.abs(bend.turn()) / 6);
            double x = bend.from().x() - bend.centre().x();
            double y = bend.from().y() - bend.centre().y();
            for (int i = 1; i <= steps; i++) {
                double a = Math.toRadians(bend.turn() * i / steps);
                points.add(new Point(
                        bend.centre().x() + x * Math.cos(a) - y * Math.sin(a),
                        bend.centre().y() + x * Math.sin(a) + y * Math.cos(a)));
            }
        } else {
            points.add(new Point(e.to().x(), e.to().y()));
        }
        return points;
    }

    /** A line, in dashes where the look has some. */
    private static void way(PdfPage page, List<double[]> points, Look look) {
        if (look.dash == 0) {
            page.way(points, false, look.pen, look.colour);
            return;
        }
        double done = 0;
        for (int i = 1; i < points.size(); i++) {
            double[] a = points.get(i - 1);
            double[] b = points.get(i);
            double length = Math.hypot(b[0] - a[0], b[1] - a[1]);
            double at = 0;
            while (at < length) {
                double inPeriod = (done + at) % (2 * look.dash);
                boolean on = inPeriod < look.dash;
                double next = Math.min(length, at + Math.max(1e-3, (on ? look.dash : 2 * look.dash) - inPeriod));
                if (on) {
                    page.line(
                            a[0] + (b[0] - a[0]) * at / length,
                            a[1] + (b[1] - a[1]) * at / length,
                            a[0] + (b[0] - a[0]) * next / length,
                            a[1] + (b[1] - a[1]) * next / length,
                            look.pen,
                            look.colour);
                }
                at = next;
            }
            done += length;
        }
    }

    private static void pieces(PdfFlow flow, TapeText tape, KitChange change) {
        PdfTable table = new PdfTable(
                Column.left("piece", 2),
                Column.left("product", 2.4),
                Column.right("length", 2.4),
                Column.left("what is done with it", 7),
                Column.right("left over", 2.4));
        List<KitChange.Fate> all = new ArrayList<>(change.plates());
        all.addAll(change.pipes());
        for (KitChange.Fate fate : all) {
            if (fate.use() != KitChange.Use.STAYS) {
                table.row(
                        fate.id(),
                        fate.product(),
                        tape.of(fate.length()),
                        words(tape, fate),
                        fate.left() > 0 && fate.use() != KitChange.Use.BACK ? tape.of(fate.left()) : "");
            }
        }
        if (!table.isEmpty()) {
            flow.heading("Pieces that do not stay");
            flow.paragraph(
                    "They stand in cuts.csv and on the pick list under these names, as offcuts that lie on the shelf.",
                    WORDS);
            flow.table(table);
        }
    }

    private static void boards(PdfFlow flow, BoardsChange boards) {
        PdfTable table = new PdfTable(
                Column.left("part", 1.2),
                Column.left("layer", 5),
                Column.right("m2", 1.4),
                Column.left("what is done with it", 5));
        for (BoardsChange.Fate part : boards.parts()) {
            String was = part.was()
                    .filter(w -> !w.equals(part.label()))
                    .map(w -> ", marked " + w)
                    .orElse("");
            table.row(
                    part.label(),
                    layer(part.of()),
                    area(part.area()),
                    part.stays() ? "stays" + was : boards.wasCut() ? "cut again" : "cut");
        }
        for (BoardsChange.Gone part : boards.gone()) {
            table.row(part.label(), layer(part.of()), area(part.area()), "cut before, thrown away");
        }
        flow.heading("Boards");
        flow.paragraph(
                "A part stays where its edge, its openings and its grooves are as they were, to 0.05 mm. The drawings of"
                        + " boards are those of a new kit: of them cut what is named here and no more. A part that only gets a"
                        + " new hole need not be cut again if the hole is drilled into the one that lies there.",
                WORDS);
        flow.table(table);
    }

    private static String layer(BoardsChange.Of of) {
        String role =
                switch (of.role()) {
                    case INSULATION -> "insulation";
                    case ROUTED -> "with the grooves";
                    case COVER -> "cover";
                };
        return role + ", " + of.name() + " " + Plain.number(of.thickness()) + " mm";
    }

    private static String area(double squareMetres) {
        return String.format(Locale.ROOT, "%.2f", squareMetres);
    }

    private static String words(TapeText tape, KitChange.Fate fate) {
        return switch (fate.use()) {
            case STAYS -> "stays";
            case MOVES -> "lies elsewhere, as it is";
            case CUT_AGAIN ->
                "is cut to "
                        + String.join(", ", fate.cuts().stream().map(tape::of).toList());
            case BACK -> "comes back as stock";
        };
    }
}
