package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.runbend.catalog.product.LabelSheet;
import org.runbend.export.data.CutList;
import org.runbend.export.data.CutSheet;
import org.runbend.export.data.RunNames;
import org.runbend.export.data.Stamp;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfPage;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.packing.Parcel;
import org.runbend.optimizer.plan.KitPlan;

/** Labels for pieces, coils, what is left of them, and boxes, on the sheets that the catalog names. */
public final class LabelsPaper {
    private static final double PAD = 2.5;
    /** What many printers leave white at the edges of a sheet (common practice). */
    private static final double WHITE = 5;

    /** Least white under the last line. */
    private static final double UNDER = 1.5;

    private static final double CODE = 19;
    private static final TextStyle NAME = TextStyle.BODY.bold().sized(15);
    private static final TextStyle LINE = TextStyle.BODY.sized(7.5);

    /** A label: its name in large letters, what it says in small ones, what its code says. */
    private record Label(String name, List<String> lines, String code) {}

    private final KitPlan plan;
    private final TapeText tape;
    private final boolean ofDay;
    private final LabelSheet sheet;

    private LabelsPaper(KitPlan plan, boolean ofDay) {
        this.plan = plan;
        this.ofDay = ofDay;
        tape = new TapeText(plan.job());
        sheet = plan.job().catalog().packing().labels();
    }

    /** The sheets of a plan; of a kit that is cut with a day's others none names a coil or what is left of one. */
    public static byte[] bytes(KitPlan plan, PaperForm form) {
        return new LabelsPaper(plan, form.day().isPresent()).write();
    }

    private byte[] write() {
        Job job = plan.job();
        PageFormat format = new PageFormat(sheet.sheetWidth(), sheet.sheetHeight(), 0);
        try (PdfDocument document = new PdfDocument("Labels " + job.order() + ": " + job.title(), "en", format)) {
            List<Label> labels = labels();
            int onSheet = sheet.columns() * sheet.rows();
            PdfPage page = null;
            for (int i = 0; i < labels.size(); i++) {
                int at = i % onSheet;
                if (at == 0) {
                    page = document.addPage();
                }
                label(document, page, place(at), labels.get(i));
            }
            return document.toBytes();
        }
    }

    private Box place(int at) {
        int row = at / sheet.columns();
        int column = at % sheet.columns();
        double x = sheet.left() + column * sheet.stepAcross();
        double y = sheet.sheetHeight() - sheet.top() - row * sheet.stepDown() - sheet.height();
        return new Box(x, y, sheet.width(), sheet.height());
    }

    private void label(PdfDocument document, PdfPage page, Box box, Label label) {
        double left = Math.max(box.x() + PAD, WHITE);
        double right = Math.min(box.x() + box.width() - PAD, sheet.sheetWidth() - WHITE);
        double top = Math.min(box.y() + box.height() - PAD, sheet.sheetHeight() - WHITE);
        double bottom = Math.max(box.y() + UNDER, WHITE);
        double code = Math.min(CODE, box.height() - 2 * PAD);
        double low = Math.max(box.y() + (box.height() - code) / 2, WHITE);
        Box square = new Box(right - code, Math.min(low, sheet.sheetHeight() - WHITE - code), code, code);
        page.figure("Code of " + label.name, () -> QrMark.draw(page, square, label.code));
        double room = right - left - code - 1;
        double y = top;
        TextStyle name = NAME;
        while (name.size() > LINE.size() && document.width(label.name, name) > room) {
            name = name.sized(name.size() - 0.5);
        }
        y -= name.ascent();
        page.text(
                left, y, name, Align.LEFT, document.wrap(label.name, name, room).get(0));
        y -= 1.5;
        for (String line : label.lines) {
            for (String part : document.wrap(line, LINE, room)) {
                y -= LINE.pitch();
                if (y < bottom) {
                    return;
                }
                page.text(left, y, LINE, Align.LEFT, part);
            }
        }
    }

    private List<Label> labels() {
        List<Label> labels = new ArrayList<>();
        CutSheet cuts = CutSheet.of(plan);
        List<Parcel> parcels = plan.parcels();
        for (int i = 0; i < parcels.size(); i++) {
            String name = "Box " + (i + 1) + " of " + parcels.size();
            labels.add(label(
                    name,
                    String.format(Locale.ROOT, "%.1f kg", parcels.get(i).weight()),
                    plan.job().customer().orElse("")));
        }
        for (CutSheet.Group coil : cuts.coils()) {
            CutList.StockPiece stock = coil.stock().get(0);
            for (CutList.Cut cut : stock.cuts()) {
                labels.add(label(
                        "Loop " + cut.goesTo().replaceFirst("^loop ", ""),
                        stock.product() + ", " + tape.beside(cut.length()),
                        ofDay ? "" : "from coil " + stock.id()));
            }
            coil.restName()
                    .filter(n -> !ofDay)
                    .ifPresent(n -> labels.add(
                            label(n, stock.product() + ", " + tape.beside(coil.left()), "rest of coil " + stock.id())));
        }
        Map<String, String> places = new HashMap<>();
        CutList.plateNames(plan)
                .forEach((piece, name) -> places.put(name, unbroken(RunNames.words(plan, piece, tape))));
        for (CutList.StockPiece plate : CutList.plates(plan)) {
            for (CutList.Cut cut : plate.cuts()) {
                labels.add(
                        label(cut.name(), plate.product() + ", " + tape.beside(cut.length()), places.get(cut.name())));
            }
            if (!ofDay && CutSheet.isKept(plan, plate)) {
                labels.add(label(
                        plate.id() + "r",
                        plate.product() + ", " + tape.beside(plate.leftover()),
                        "rest of plate " + plate.id()));
            }
        }
        return labels;
    }

    /** A run stays on one line with the number that the plate lies at. */
    private static String unbroken(String places) {
        return places.replaceAll("run (\\S+) at (\\S+)", "run\u00a0$1\u00a0at\u00a0$2");
    }

    private Label label(String name, String what, String where) {
        Job job = plan.job();
        List<String> lines = new ArrayList<>(List.of(what));
        if (!where.isEmpty()) {
            lines.add(where);
        }
        lines.add("order " + job.order() + ", plan "
                + Letterhead.plan(job)
                        .substring(0, Math.min(6, Letterhead.plan(job).length())));
        if (!plan.isSound()) {
            lines.add(Stamp.DO_NOT_CUT);
        }
        return new Label(name, lines, Letterhead.code(job) + " piece " + name);
    }
}
