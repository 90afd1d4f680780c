package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.tape.TapeSheet;

/** The lists beside the drawing that a customer confirms. */
final class ConfirmLists {
    private static final String DIAMETER = "\u2300 ";
    private static final double SQUARE = 0.01;
    private static final int SHORT = 12;
    /** Nearer than this is what a person calls on a side, mm. */
    private static final double ON = 0.5;

    private final Job job;
    private final TapeSheet tape;
    private final TapeText words;

    ConfirmLists(Job job, TapeSheet tape) {
        this.job = job;
        this.tape = tape;
        this.words = new TapeText(job);
    }

    /** Writes the lists; of several columns the first has the lengths. */
    void write(PdfFlow flow, int columns) {
        tape(flow);
        if (columns == 2) {
            words(flow);
        }
        if (columns > 1) {
            flow.nextPlace();
        }
        flow.heading("Where things are").table(things());
        if (columns != 2) {
            words(flow);
        }
    }

    private void tape(PdfFlow flow) {
        flow.heading("Check with a tape (" + words.unitWords() + ")").paragraph(corners());
        flow.paragraph(
                "Over all " + words.full(tape.width()) + " across and " + words.full(tape.height()) + " up the sheet.");
        if (job.measured().isEmpty()) {
            lengths(flow, "side", sides());
            lengths(flow, "diagonal", diagonals());
        } else {
            measured(flow);
        }
    }

    private void words(PdfFlow flow) {
        if (!given() && !tape.holes().isEmpty()) {
            list(
                    flow,
                    "Before a hole is drilled",
                    List.of(
                            "The holes for flow and return are PROPOSED: look underneath, from below, whether nothing lies"
                                    + " there. If a hole must go elsewhere, write its two distances here."));
        }
        list(flow, "We took for granted", job.written().assumptions());
        list(flow, "Please look at this", job.warnings());
    }

    private String corners() {
        return tape.named()
                ? "Corners have your names; " + first() + " is followed anticlockwise by " + second()
                        + ", seen from above."
                : "Corners are lettered anticlockwise, seen from above, from A at the lower left.";
    }

    private String first() {
        return TapeText.shortName(tape.corners().get(0).name());
    }

    private String second() {
        return TapeText.shortName(tape.corners().get(1).name());
    }

    private List<List<String>> sides() {
        List<List<String>> cells = new ArrayList<>();
        for (TapeSheet.Side s : tape.sides()) {
            String curve = s.isCurved()
                    ? ", curve " + (s.rise() > 0 ? "out" : "in") + " by " + words.full(Math.abs(s.rise()))
                    : "";
            cells.add(List.of(TapeText.between(s.from(), s.to()), words.full(s.length()) + curve));
        }
        return cells;
    }

    private List<List<String>> diagonals() {
        return tape.diagonals().stream()
                .map(d -> List.of(TapeText.between(d.from(), d.to()), words.full(d.length())))
                .toList();
    }

    /** Pairs of a name and a length, two or three beside each other where they are short. */
    private static void lengths(PdfFlow flow, String head, List<List<String>> cells) {
        int longest = cells.stream()
                .flatMap(List::stream)
                .mapToInt(String::length)
                .max()
                .orElse(0);
        int across = longest <= SHORT ? 3 : longest <= 2 * SHORT ? 2 : 1;
        while (across > 1 && (across - 1) * ((cells.size() + across - 1) / across) >= cells.size()) {
            across--;
        }
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < across; i++) {
            columns.add(Column.left(head, 3));
            columns.add(Column.left("length", across == 3 ? 3 : 5));
        }
        PdfTable table = new PdfTable(columns);
        int rows = (cells.size() + across - 1) / across;
        for (int r = 0; r < rows; r++) {
            List<String> row = new ArrayList<>();
            for (int c = 0; c < across; c++) {
                int i = c * rows + r;
                row.addAll(i < cells.size() ? cells.get(i) : List.of("", ""));
            }
            table.row(row);
        }
        if (!table.isEmpty()) {
            flow.table(table);
        }
    }

    private void measured(PdfFlow flow) {
        PdfTable table = new PdfTable(
                Column.left("length", 4),
                Column.right("you measured", 4),
                Column.right("we draw", 4),
                Column.right("difference", 3));
        for (Job.MeasuredLength m : job.measured()) {
            table.row(
                    TapeText.between(m.from(), m.to()),
                    words.full(m.length()),
                    words.full(m.adjusted()),
                    String.format(Locale.ROOT, "%+.1f", m.residual() + 0.0));
        }
        flow.table(table);
    }

    private PdfTable things() {
        PdfTable table = new PdfTable(
                Column.left("what", 6),
                Column.left("size", 4),
                Column.left("air kept", 3),
                Column.left("distance from side or corner", 7));
        table.row("port: flow and return", "", "", ties(tape.port()));
        for (TapeSheet.Thing hole : tape.holes()) {
            table.row("hole, " + hole.name() + (given() ? "" : ": PROPOSED"), hole(), "", ties(hole));
        }
        List<KeepOut> keepOuts = job.floor().keepOuts();
        for (int i = 0; i < keepOuts.size(); i++) {
            KeepOut k = keepOuts.get(i);
            table.row(
                    (TapeText.number(job, i) + " " + name(k)).strip(),
                    size(k.bare()),
                    words.full(Math.max(0, k.air(job.groove()))),
                    ties(tape.keepOuts().get(i)));
        }
        List<Job.Unheated> cold = job.floor().unheated();
        for (int i = 0; i < cold.size(); i++) {
            table.row(
                    TapeText.shortName(cold.get(i).name()) + " (no heat)",
                    size(cold.get(i).region()),
                    "",
                    ties(tape.unheated().get(i)));
        }
        List<Job.Below> below = job.floor().below();
        for (int i = 0; i < below.size(); i++) {
            table.row(
                    "under the floor: " + TapeText.shortName(below.get(i).name()),
                    size(below.get(i).region()),
                    "",
                    ties(tape.below().get(i)));
        }
        List<Support> supports = job.floor().supports();
        for (int i = 0; i < supports.size(); i++) {
            table.row(
                    "support: " + TapeText.shortName(supports.get(i).name()),
                    words.full(supports.get(i).width()) + " wide",
                    "",
                    ties(tape.supports().get(i)));
        }
        for (TapeSheet.Thing mark : tape.marks()) {
            table.row("mark: " + TapeText.shortName(mark.name()), "", "", ties(mark));
        }
        return table.withoutEmptyColumns();
    }

    private static String name(KeepOut k) {
        String kind = k.kind().name().toLowerCase(Locale.ROOT);
        String name = TapeText.shortName(k.name());
        return k.kind() == KeepOut.Kind.OTHER || name.toLowerCase(Locale.ROOT).contains(kind)
                ? name
                : name + " (" + kind + ")";
    }

    private String size(Shape shape) {
        if (shape instanceof Shape.Circle c) {
            return DIAMETER + words.full(2 * c.radius());
        }
        return shape instanceof Shape.Polygon p
                ? size(p.corners())
                : "point, " + DIAMETER + words.full(2 * ((Shape.Spot) shape).radius());
    }

    private boolean given() {
        return !job.floor().port().holes().isEmpty();
    }

    private String hole() {
        return job.floor().port().turn() == Job.Turn.LEVEL || job.groove().pad() == 0
                ? ""
                : DIAMETER + words.full(job.groove().pad());
    }

    /** Two sides of a rectangle, however it is turned; else the size over all. */
    private String size(List<Point> corners) {
        if (corners.size() == 4) {
            double a = corners.get(0).distance(corners.get(1));
            double b = corners.get(1).distance(corners.get(2));
            double c = corners.get(2).distance(corners.get(3));
            double diagonal = corners.get(0).distance(corners.get(2));
            boolean square =
                    Math.abs(a * a + b * b - diagonal * diagonal) < SQUARE * diagonal * diagonal && Math.abs(a - c) < 1;
            if (square) {
                return words.full(a) + " \u00d7 " + words.full(b);
            }
        }
        double wide = spread(corners.stream().map(Point::x).toList());
        double high = spread(corners.stream().map(Point::y).toList());
        return words.full(wide) + " \u00d7 " + words.full(high) + " over all";
    }

    private static double spread(List<Double> values) {
        double least = values.stream().mapToDouble(v -> v).min().orElse(0);
        return values.stream().mapToDouble(v -> v).max().orElse(0) - least;
    }

    private String ties(TapeSheet.Thing thing) {
        List<String> parts = new ArrayList<>();
        for (TapeSheet.Tie t : thing.ties()) {
            String from = t.isFromSide() ? TapeText.between(t.from(), t.to()) : TapeText.shortName(t.from());
            String where = t.distance() < 0 ? " outside " : " from ";
            double away = Math.abs(t.distance());
            parts.add(
                    t.distance() > -TapeSheet.AT_WALL && t.distance() < ON
                            ? "on " + from
                            : words.full(away) + where + from);
        }
        return parts.isEmpty()
                ? "at x " + Decimals.of(thing.at().x(), 0) + ", y "
                        + Decimals.of(thing.at().y(), 0)
                : String.join(", ", parts);
    }

    private static void list(PdfFlow flow, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            flow.heading(heading);
            lines.forEach(line -> flow.item("\u2022", 3, line));
        }
    }
}
