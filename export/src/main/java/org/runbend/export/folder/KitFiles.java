package org.runbend.export.folder;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.runbend.export.data.AlternativesJson;
import org.runbend.export.data.BoardFiles;
import org.runbend.export.data.CutsCsv;
import org.runbend.export.data.KitJson;
import org.runbend.export.data.Stamp;
import org.runbend.export.drafting.BoardsDrafting;
import org.runbend.export.drafting.ChangesDrafting;
import org.runbend.export.drafting.ConfirmDrafting;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.export.drafting.GuideDrafting;
import org.runbend.export.drafting.LinesDrafting;
import org.runbend.export.drafting.MachineLayers;
import org.runbend.export.drafting.MiniatureDrafting;
import org.runbend.export.drafting.OrientationSign;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drafting.SectionDrafting;
import org.runbend.export.drafting.TemperatureDrafting;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.ShadedFloor;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfLayer;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.papers.AlternativesPaper;
import org.runbend.export.papers.ChangesPaper;
import org.runbend.export.papers.ConfirmPaper;
import org.runbend.export.papers.CutSheetPaper;
import org.runbend.export.papers.FittingSheet;
import org.runbend.export.papers.FullSizePaper;
import org.runbend.export.papers.GuidePaper;
import org.runbend.export.papers.HeatPaper;
import org.runbend.export.papers.InternalPaper;
import org.runbend.export.papers.LabelsPaper;
import org.runbend.export.papers.Letterhead;
import org.runbend.export.papers.PaperForm;
import org.runbend.export.papers.PickList;
import org.runbend.export.papers.QuotePaper;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.ShadedPdf;
import org.runbend.export.svg.ShadedSvg;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.heat.field.ConductionField;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitHeat;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.TemperaturePart;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.setout.SetOut;
import org.runbend.optimizer.tape.TapeMeasuring;
import org.runbend.optimizer.tape.TapeSheet;

/** The files of a kit, by name, in memory. */
public final class KitFiles {
    /** Name of the file that tells a folder of ours. */
    static final String KIT = "kit.json";

    private static final String FULL_SIZE = "full-size.pdf";
    /** Letters on the floor in actual size, by those on a sheet of paper. */
    private static final double FULL_LETTERS = 2;

    private KitFiles() {}

    /**
     * How {@code drawing.dxf} and the drawings of boards are written.
     *
     * @param version form of the file
     * @param withChannel whether layer CHANNEL holds the edge of the groove, else lines beside the pipe
     * @param inParts whether lines are single lines and arcs
     */
    public record DrawingForm(DxfVersion version, boolean withChannel, boolean inParts) {}

    /**
     * What is wanted beside drawings and data.
     *
     * @param papers how papers are printed
     * @param fullSize on what the floor is printed in actual size, if at all
     */
    public record PaperWish(PaperForm papers, Optional<FullSizePaper.Page> fullSize) {
        /** A4, nothing in actual size. */
        public static final PaperWish USUAL = new PaperWish(PaperForm.USUAL, Optional.empty());
    }

    /** The files of a kit by their names. */
    public static Map<String, byte[]> of(KitPlan plan, DxfVersion version, boolean withChannel) {
        return of(plan, new DrawingForm(version, withChannel, false), Map.of());
    }

    /** The files of a kit and others that lie beside them, which {@code kit.json} lists too. */
    public static Map<String, byte[]> of(KitPlan plan, DrawingForm form, Map<String, byte[]> more) {
        return of(plan, Optional.empty(), Optional.empty(), form, PaperWish.USUAL, more);
    }

    /** The same where a kit was cut before and what becomes of it, and with what a customer is asked for it. */
    public static Map<String, byte[]> of(
            KitPlan plan,
            Optional<KitChange> change,
            Optional<Offer> offer,
            DrawingForm form,
            PaperWish wish,
            Map<String, byte[]> more) {
        Paper size = wish.papers().paper();
        GrooveForm groove = form.withChannel() ? GrooveForm.EDGE : GrooveForm.CENTRE;
        Sheet sheet = new FloorDrafting(groove).draw(plan);
        Optional<PaperSheet> paper = Optional.of(new PaperDrafting().draw(plan, sheet, groove));
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("drawing.dxf", DxfBackend.bytes(sheet, paper, form.version(), form.inParts()));
        files.put("floor.svg", SvgBackend.bytes(sheet));
        SetOut marks = plan.setOut();
        files.putAll(papers(plan, marks, wish.papers()));
        wish.fullSize().ifPresent(page -> files.put(FULL_SIZE, FullSizePaper.bytes(plan, fullSize(plan, marks), page)));
        files.put("confirm.pdf", confirm(plan, size));
        plan.heat().ifPresent(h -> files.put("heat.pdf", heat(plan, h, size)));
        change.ifPresent(c -> files.put(
                "changes.pdf",
                new ChangesPaper().bytes(plan, c, unit -> ChangesDrafting.draw(plan, unit), warning(plan), size)));
        offer.ifPresent(o -> files.put("quote.pdf", quote(plan, o, size)));
        files.put("cuts.csv", new CutsCsv().bytes(plan));
        if (plan.boards().isPresent()) {
            files.put("boards.svg", SvgBackend.bytes(BoardsDrafting.overview(plan)));
            BoardsDrafting.boards(plan)
                    .forEach((name, board) ->
                            files.put(BoardFiles.path(name), machine(board.sheet(), board.layers(), form)));
        }
        new TreeMap<>(more).forEach(files::put);
        List<String> names = new ArrayList<>(files.keySet());
        names.add(KIT);
        files.put(KIT, new KitJson().bytes(plan, change, offer, names));
        return files;
    }

    private static Map<String, byte[]> papers(KitPlan plan, SetOut marks, PaperForm form) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("pick-list.pdf", PickList.bytes(plan, form));
        files.put("cut-sheet.pdf", CutSheetPaper.bytes(plan, form));
        files.put("labels.pdf", LabelsPaper.bytes(plan, form));
        files.put(
                "fitting-sheet.pdf",
                FittingSheet.bytes(
                        plan,
                        marks,
                        new FittingSheet.Drawings(
                                unit -> new FloorDrafting(GrooveForm.NONE).drawToMarkOut(plan, marks, unit),
                                unit -> LinesDrafting.draw(plan, marks, unit),
                                sections(plan)),
                        form));
        return files;
    }

    private static Optional<FittingSheet.Sections> sections(KitPlan plan) {
        return plan.job().build().isPresent() && plan.channel().isPresent()
                ? Optional.of(new FittingSheet.Sections(
                        unit -> SectionDrafting.draw(plan, unit),
                        unit -> SectionDrafting.drawBendAndHole(plan, unit),
                        SectionDrafting.layers(plan)))
                : Optional.empty();
    }

    private static byte[] heat(KitPlan plan, KitHeat heat, Paper size) {
        return HeatPaper.bytes(plan.job(), heat.problem(), heat.solution(), warning(plan), size);
    }

    /** The paper that a customer decides by. */
    public static byte[] quote(KitPlan plan, Offer offer, Paper size) {
        return new QuotePaper(plan, offer).bytes(unit -> MiniatureDrafting.draw(plan, unit), warning(plan), size);
    }

    private static String warning(KitPlan plan) {
        return plan.isSound() ? "" : Stamp.DO_NOT_CUT;
    }

    /** The temperatures of the floor on A4. */
    public static Map<String, byte[]> temperatures(KitPlan plan) {
        return temperatures(plan, Paper.A4);
    }

    /** The temperatures of the floor, shaded, as picture and as paper; nothing where heat was not reckoned. */
    public static Map<String, byte[]> temperatures(KitPlan plan, Paper size) {
        if (plan.heat().isEmpty()) {
            return Map.of();
        }
        KitHeat heat = plan.heat().get();
        ShadedFloor floor = TemperatureDrafting.draw(
                plan, new ConductionField().solve(TemperaturePart.problem(plan, heat.problem(), heat.solution())));
        Job job = plan.job();
        return Map.of(
                "temperatures.svg",
                ShadedSvg.bytes(floor),
                "temperatures.pdf",
                ShadedPdf.bytes(floor, Letterhead.footer(job), warning(plan), size));
    }

    /** What stays in the house: costs and wages. */
    public static Map<String, byte[]> internal(KitPlan plan, Paper size) {
        return Map.of("internal.pdf", new InternalPaper().bytes(plan, size));
    }

    /** The table of alternatives, as paper and as data. */
    public static Map<String, byte[]> of(Choice choice, Paper size) {
        return Map.of(
                "alternatives.pdf", new AlternativesPaper().bytes(choice, MiniatureDrafting::draw, size),
                "alternatives.json", new AlternativesJson().bytes(choice));
    }

    /** A guide for hand routing as a drawing for a machine. */
    public static byte[] guideDrawing(Job job, GuidePlate plate) {
        return machine(
                GuideDrafting.forMachine(job, plate),
                GuideDrafting.layers(job, plate),
                new DrawingForm(DxfVersion.R2000, true, false));
    }

    /** A guide for hand routing in tiles to print. */
    public static byte[] guidePaper(Job job, GuidePlate plate, Paper size) {
        return new GuidePaper(job, plate).bytes(GuideDrafting.plate(job, plate), size);
    }

    /** A drawing that is cut from, with the shop's own layers. */
    private static byte[] machine(Sheet sheet, MachineLayers layers, DrawingForm form) {
        Map<Layer, DxfLayer> named = new LinkedHashMap<>();
        layers.named()
                .forEach((layer, n) ->
                        named.put(layer, new DxfLayer(n.name(), n.colour(), DxfBackend.name(n.style()), (int)
                                Math.round(layer.pen() * 100))));
        return DxfBackend.bytes(sheet, named, form.version(), form.inParts());
    }

    /** The paper that a customer confirms the floor of a job by; holes only where the job gives them. */
    public static byte[] confirm(Job job, Paper size) {
        TapeSheet tape = new TapeMeasuring().measure(job);
        return new ConfirmPaper(job, tape, "", size)
                .bytes(scale -> ConfirmDrafting.draw(job, tape, scale), OrientationSign.sheet());
    }

    /** The same, with holes and pipe of the plan. */
    private static byte[] confirm(KitPlan plan, Paper size) {
        return new ConfirmPaper(plan.job(), plan.tape(), warning(plan), size)
                .bytes(scale -> ConfirmDrafting.draw(plan, plan.tape(), scale), OrientationSign.sheet());
    }

    /** How many tiles the floor takes in actual size, if they are more than anybody glues; else nothing. */
    public static OptionalInt tooManyTiles(KitPlan plan, FullSizePaper.Page page) {
        int pages = FullSizePaper.pages(fullSize(plan, plan.setOut()), page);
        return pages > FullSizePaper.MOST ? OptionalInt.of(pages) : OptionalInt.empty();
    }

    /** Whether the floor in actual size goes on one page. */
    public static boolean fitsPlotter(KitPlan plan) {
        return FullSizePaper.fitsPlotter(fullSize(plan, plan.setOut()));
    }

    private static Sheet fullSize(KitPlan plan, SetOut marks) {
        return new FloorDrafting(GrooveForm.EDGE).drawToMarkOut(plan, marks, FULL_LETTERS);
    }
}
