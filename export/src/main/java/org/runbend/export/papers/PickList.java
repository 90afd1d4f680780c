package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Packing;
import org.runbend.export.data.CutList;
import org.runbend.export.data.CutSheet;
import org.runbend.export.data.TapeText;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.packing.PackedLine;
import org.runbend.optimizer.packing.Parcel;
import org.runbend.optimizer.plan.KitPlan;

/** The paper from which a kit is packed: box by box, in the order of the shelves. */
public final class PickList {
    private static final String TICK = "\u2610";
    private static final double TENTHS = 10;
    /** What is missing and the signatures, so that nobody signs a page with nothing on it, mm. */
    private static final double ENDING = 62;

    private final KitPlan plan;
    private final PaperForm form;
    private final TapeText tape;
    private double running;

    private PickList(KitPlan plan, PaperForm form) {
        this.plan = plan;
        this.form = form;
        tape = new TapeText(plan.job());
    }

    /** The paper of a plan. */
    public static byte[] bytes(KitPlan plan, PaperForm form) {
        return new PickList(plan, form).write();
    }

    private byte[] write() {
        Job job = plan.job();
        String name = "Pick list " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, form.paper().upright(), plan.isSound())) {
            PdfFlow flow = Letterhead.begin(document, job, name);
            List<Parcel> parcels = plan.parcels();
            flow.paragraph(summary(parcels));
            for (int i = 0; i < parcels.size(); i++) {
                Parcel parcel = parcels.get(i);
                flow.heading(name(parcel, i, parcels.size())).table(lines(parcel));
                remark(parcel).forEach(r -> flow.paragraph(r, TextStyle.BODY.bold()));
            }
            if (form.prices()) {
                flow.paragraph(
                        "Price of all: " + job.catalog().money(plan.total()) + ", net of tax.", TextStyle.BODY.bold());
            }
            unknown(flow, parcels);
            flow.heading("Pipe in the box");
            form.cutWithDay().ifPresent(flow::caution);
            flow.table(pipe());
            if (!plan.plates().stock().isEmpty()) {
                flow.heading("Plates in the box").table(plates());
                rests().ifPresent(flow::paragraph);
            }
            flow.keep(ENDING);
            if (!plan.notSupplied().isEmpty()) {
                flow.heading("Not in the box").paragraph(String.join("; ", plan.notSupplied()) + ".");
            }
            signatures(flow);
            return document.toBytes();
        }
    }

    private String summary(List<Parcel> parcels) {
        long all = parcels.stream().mapToLong(p -> tenths(p.weight())).sum(); // what is printed adds up
        String boxes = parcels.size() == 1 ? "1 box" : parcels.size() + " boxes";
        int least = plan.parcelsAtLeast();
        String fewer = parcels.size() == 1
                ? ""
                : least == parcels.size() ? " (fewer do not hold it)" : " (proved: not under " + least + ")";
        return boxes + fewer + ", " + fixed(all / TENTHS, 1) + " kg " + packing(parcels)
                + ". Pieces are cut from the cut sheet; names of plates are those on"
                + " the floor's drawing.";
    }

    /** What packing is in the weight: where no carton is known, its weight is not either. */
    private static String packing(List<Parcel> parcels) {
        long known = parcels.stream().filter(p -> p.carton().isPresent()).count();
        return known == parcels.size()
                ? "with packing"
                : known == 0 ? "without packing" : "with the cartons named below";
    }

    private static String name(Parcel parcel, int index, int count) {
        String box = count == 1 ? "Box" : "Box " + (index + 1) + " of " + count;
        return box
                + parcel.carton()
                        .map(c -> ": " + c.name() + " (" + c.sku() + ")")
                        .orElse("")
                + ", " + fixed(tenths(parcel.weight()) / TENTHS, 1) + " kg";
    }

    private PdfTable lines(Parcel parcel) {
        List<Column> columns = new ArrayList<>(List.of(
                Column.centre("", 0.9),
                Column.left("shelf", 1.6),
                Column.left("part", 2.9),
                Column.left("what it is", 9.4),
                Column.right("quantity", 2.6),
                Column.left("unit", 2.7),
                Column.right("kg", 1.9),
                Column.right(parcel.carton().isPresent() ? "so far, kg with box" : "so far, kg", 2.4)));
        if (form.prices()) {
            columns.add(Column.right("price " + plan.job().catalog().currency(), 3));
        }
        PdfTable table = new PdfTable(columns);
        running = parcel.carton().map(Packing.Carton::weight).orElse(0.0);
        for (PackedLine line : parcel.lines()) {
            running += line.sum();
            List<String> cells = new ArrayList<>(List.of(
                    TICK,
                    line.place().orElse(""),
                    line.sku(),
                    line.name() + inPieces(line) + instead(line),
                    Long.toString(line.quantity()),
                    line.unit(),
                    fixed(line.sum(), 3),
                    fixed(running, 3)));
            if (form.prices()) {
                cells.add(price(line));
            }
            table.row(cells);
        }
        return form.prices() ? table : table.withoutEmptyColumns();
    }

    /** Plates are counted as they are charged and lie in the box as they are cut. */
    private String inPieces(PackedLine line) {
        boolean cut = plan.job().catalog().findPlate(line.sku()).isPresent()
                && plan.plates().pieces().stream().anyMatch(p -> p.product().equals(line.sku()));
        return cut ? ", in pieces" : "";
    }

    /** What may be packed in its place, by its name. */
    private String instead(PackedLine line) {
        return line.instead().stream()
                .map(sku -> "\nor " + sku
                        + plan.job().catalog().nameOf(sku).map(n -> ": " + n).orElse(""))
                .collect(Collectors.joining());
    }

    private String price(PackedLine line) {
        Catalog prices = plan.job().catalog();
        return plan.items().stream()
                .filter(i -> i.sku().equals(line.sku()) && i.name().equals(line.name()))
                .findFirst()
                .map(i -> prices.money(i.sum()).bare())
                .orElse("");
    }

    /** What whoever sends the box must know. */
    private List<String> remark(Parcel parcel) {
        List<String> remarks = new ArrayList<>();
        if (parcel.carton().isEmpty()
                && !plan.job().catalog().packing().cartons().isEmpty()) {
            remarks.add("No carton of the catalog holds this: it travels by itself.");
        }
        parcel.sendable()
                .filter(s -> !s)
                .ifPresent(s -> remarks.add("The carrier does not take this as a parcel: it is"
                        + " over the limit of the catalog in weight, length or girth."));
        parcel.lines().stream()
                .filter(l -> !l.instead().isEmpty()
                        && plan.job().catalog().findCoolant(l.sku()).isPresent())
                .forEach(l -> remarks.add("Mixing, frost and heat on the other papers are those of " + l.sku()
                        + ": for what is packed in its place its own data hold."));
        return remarks;
    }

    private PdfTable pipe() {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("coil", 3),
                Column.left("pipe", 4),
                Column.left("cut", 9),
                Column.left("the rest of the coil goes", 6));
        List<CutList.StockPiece> coils = CutList.pipe(plan);
        for (int i = 0; i < coils.size(); i++) {
            CutList.StockPiece coil = coils.get(i);
            table.row(
                    TICK,
                    coil.fromShelf() ? coil.id() + " (shelf)" : coil.id(),
                    coil.product() + " of " + tape.beside(coil.length()),
                    coil.cuts().stream()
                            .map(c -> c.goesTo() + ": " + tape.beside(c.length()))
                            .collect(Collectors.joining("\n")),
                    plan.restGoesTo(plan.coils().coils().get(i)).equals("shelf")
                            ? "back on the shelf"
                            : "into the box: it is supplied whole");
        }
        return table;
    }

    /** Pieces by product and length, longest first. */
    private PdfTable plates() {
        Map<List<Object>, List<String>> pieces = new LinkedHashMap<>();
        CutList.plates(plan).stream()
                .flatMap(p -> p.cuts().stream().map(c -> new Sized(p.product(), c.length(), c.name())))
                .sorted((a, b) -> a.product.equals(b.product)
                        ? Double.compare(b.length, a.length)
                        : a.product.compareTo(b.product))
                .forEach(s -> pieces.computeIfAbsent(List.of(s.product, s.length), k -> new ArrayList<>())
                        .add(s.name));
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("plate", 3),
                Column.right("length", 3.4),
                Column.right("pieces", 2),
                Column.left("names", 13));
        pieces.forEach((size, names) -> table.row(
                TICK,
                (String) size.get(0),
                tape.beside((Double) size.get(1)),
                Integer.toString(names.size()),
                String.join(", ", names)));
        int all = pieces.values().stream().mapToInt(List::size).sum();
        return table.strongRow("", "all", "", Integer.toString(all), "");
    }

    /** What is left of plates and kept stays in the workshop. */
    private Optional<String> rests() {
        List<String> rests = CutList.plates(plan).stream()
                .filter(p -> CutSheet.isKept(plan, p))
                .map(p -> p.id() + "r, " + tape.beside(p.leftover()))
                .toList();
        return rests.isEmpty()
                ? Optional.empty()
                : Optional.of("Back on the shelf, not into the box: " + String.join("; ", rests) + ".");
    }

    private record Sized(String product, double length, String name) {}

    private void unknown(PdfFlow flow, List<Parcel> parcels) {
        if (plan.job().catalog().packing().cartons().isEmpty()) {
            return;
        }
        String names = parcels.stream()
                .flatMap(p -> p.lines().stream())
                .filter(l -> l.size().isEmpty()
                        && plan.job().catalog().findPlate(l.sku()).isEmpty())
                .map(PackedLine::sku)
                .distinct()
                .collect(Collectors.joining(", "));
        if (!names.isEmpty()) {
            flow.paragraph(
                    "The catalog gives no size of " + names + ": their room in the boxes is not reckoned.",
                    TextStyle.SMALL);
        }
    }

    private static void signatures(PdfFlow flow) {
        flow.heading("Packed")
                .table(new PdfTable(
                                Column.left("packed by", 6),
                                Column.left("date", 3),
                                Column.left("checked by", 6),
                                Column.left("date", 3))
                        .row("\n ", "", "", ""));
    }

    private static long tenths(double kilograms) {
        return Math.round(kilograms * TENTHS);
    }

    private static String fixed(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
