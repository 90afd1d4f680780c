package org.runbend.export.folder;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import org.runbend.export.data.AlternativesJson;
import org.runbend.export.data.BoardFiles;
import org.runbend.export.data.CutsCsv;
import org.runbend.export.data.KitJson;
import org.runbend.export.drafting.BoardsDrafting;
import org.runbend.export.drafting.ChangesDrafting;
import org.runbend.export.drafting.ConfirmDrafting;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.export.drafting.GuideDrafting;
import org.runbend.export.drafting.MachineLayers;
import org.runbend.export.drafting.MiniatureDrafting;
import org.runbend.export.drafting.OrientationSign;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drafting.TemperatureDrafting;
import org.runbend.export.drafting.TitleBlock;
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
import org.runbend.export.papers.GuidePaper;
import org.runbend.export.papers.HeatPaper;
import org.runbend.export.papers.InternalPaper;
import org.runbend.export.papers.PickList;
import org.runbend.export.papers.QuotePaper;
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
import org.runbend.optimizer.tape.TapeMeasuring;
import org.runbend.optimizer.tape.TapeSheet;

/** The files of a kit, by name, in memory. */
public final class KitFiles {
    /** Name of the file that tells a folder of ours. */
    static final String KIT = "kit.json";

    private KitFiles() {}

    /**
     * How {@code drawing.dxf} and the drawings of boards are written.
     *
     * @param version form of the file
     * @param withChannel whether layer CHANNEL holds the edge of the groove, else lines beside the pipe
     * @param inParts whether lines are single lines and arcs
     */
    public record DrawingForm(DxfVersion version, boolean withChannel, boolean inParts) {}

    /** The files of a kit by their names. */
    public static Map<String, byte[]> of(KitPlan plan, DxfVersion version, boolean withChannel) {
        return of(plan, new DrawingForm(version, withChannel, false), Map.of());
    }

    /** The files of a kit and others that lie beside them, which {@code kit.json} lists too. */
    public static Map<String, byte[]> of(KitPlan plan, DrawingForm form, Map<String, byte[]> more) {
        return of(plan, Optional.empty(), form, more);
    }

    /** The same where a kit was cut before: what becomes of it too. */
    public static Map<String, byte[]> of(
            KitPlan plan, Optional<KitChange> change, DrawingForm form, Map<String, byte[]> more) {
        return of(plan, change, Optional.empty(), form, more);
    }

    /** The same with what a customer is asked for it. */
    public static Map<String, byte[]> of(
            KitPlan plan,
            Optional<KitChange> change,
            Optional<Offer> offer,
            DrawingForm form,
            Map<String, byte[]> more) {
        GrooveForm groove = form.withChannel() ? GrooveForm.EDGE : GrooveForm.CENTRE;
        Sheet sheet = new FloorDrafting(groove).draw(plan);
        Optional<PaperSheet> paper = Optional.of(new PaperDrafting().draw(plan, sheet, groove));
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("drawing.dxf", DxfBackend.bytes(sheet, paper, form.version(), form.inParts()));
        files.put("floor.svg", SvgBackend.bytes(sheet));
        files.put(
                "pick-list.pdf",
                new PickList()
                        .bytes(
                                plan,
                                new FloorDrafting(GrooveForm.NONE).drawWithoutWords(plan),
                                FloorDrafting.caption(plan)));
        files.put("confirm.pdf", confirm(plan));
        plan.heat().ifPresent(h -> files.put("heat.pdf", heat(plan, h)));
        change.ifPresent(c -> files.put(
                "changes.pdf",
                new ChangesPaper().bytes(plan, c, unit -> ChangesDrafting.draw(plan, unit), warning(plan))));
        offer.ifPresent(o -> files.put("quote.pdf", quote(plan, o)));
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

    private static byte[] heat(KitPlan plan, KitHeat heat) {
        return HeatPaper.bytes(plan.job(), heat.problem(), heat.solution(), warning(plan));
    }

    /** The paper that a customer decides by. */
    public static byte[] quote(KitPlan plan, Offer offer) {
        return new QuotePaper(plan, offer)
                .bytes(new FloorDrafting(GrooveForm.NONE).drawWithoutWords(plan), warning(plan));
    }

    private static String warning(KitPlan plan) {
        return plan.isSound() ? "" : TitleBlock.DO_NOT_CUT;
    }

    /** The temperatures of the floor, shaded, as picture and as paper; nothing where heat was not reckoned. */
    public static Map<String, byte[]> temperatures(KitPlan plan) {
        if (plan.heat().isEmpty()) {
            return Map.of();
        }
        KitHeat heat = plan.heat().get();
        ShadedFloor floor = TemperatureDrafting.draw(
                plan, new ConductionField().solve(TemperaturePart.problem(plan, heat.problem(), heat.solution())));
        Job job = plan.job();
        String footer = "order " + job.order() + ", " + job.title()
                + job.revision().map(r -> ", revision " + r).orElse("");
        return Map.of(
                "temperatures.svg",
                ShadedSvg.bytes(floor),
                "temperatures.pdf",
                ShadedPdf.bytes(floor, footer, warning(plan)));
    }

    /** What stays in the house: costs and wages. */
    public static Map<String, byte[]> internal(KitPlan plan) {
        return Map.of("internal.pdf", new InternalPaper().bytes(plan));
    }

    /** The table of alternatives, as paper and as data. */
    public static Map<String, byte[]> of(Choice choice) {
        return Map.of(
                "alternatives.pdf", new AlternativesPaper().bytes(choice, MiniatureDrafting::draw),
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
    public static byte[] guidePaper(Job job, GuidePlate plate) {
        return new GuidePaper(job, plate).bytes(GuideDrafting.plate(job, plate));
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
    public static byte[] confirm(Job job) {
        TapeSheet tape = new TapeMeasuring().measure(job);
        return confirm(job, tape, "", scale -> ConfirmDrafting.draw(job, tape, scale));
    }

    /** The same, with holes and pipe of the plan. */
    private static byte[] confirm(KitPlan plan) {
        return confirm(plan.job(), plan.tape(), warning(plan), scale -> ConfirmDrafting.draw(plan, plan.tape(), scale));
    }

    private static byte[] confirm(Job job, TapeSheet tape, String warning, DoubleFunction<Sheet> drawing) {
        return new ConfirmPaper(job, tape, warning).bytes(drawing, OrientationSign.sheet());
    }
}
