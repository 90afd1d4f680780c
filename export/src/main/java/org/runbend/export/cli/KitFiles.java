package org.runbend.export.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.runbend.export.data.AlternativesJson;
import org.runbend.export.data.CutsCsv;
import org.runbend.export.data.KitJson;
import org.runbend.export.drafting.ConfirmDrafting;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.MiniatureDrafting;
import org.runbend.export.drafting.OrientationSign;
import org.runbend.export.drafting.PaperDrafting;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.papers.AlternativesPaper;
import org.runbend.export.papers.ConfirmPaper;
import org.runbend.export.papers.InternalPaper;
import org.runbend.export.papers.PickList;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.tape.TapeMeasuring;
import org.runbend.optimizer.tape.TapeSheet;

/** The files of a kit, by name, in memory. */
final class KitFiles {
    /** Name of the file that tells a folder of ours. */
    static final String KIT = "kit.json";

    private KitFiles() {}

    static Map<String, byte[]> of(KitPlan plan, DxfVersion version, boolean withChannel) {
        return of(plan, version, withChannel, Map.of());
    }

    /** The files of a kit and others that lie beside them, which {@code kit.json} lists too. */
    static Map<String, byte[]> of(KitPlan plan, DxfVersion version, boolean withChannel, Map<String, byte[]> more) {
        Sheet sheet = new FloorDrafting(withChannel).draw(plan);
        Optional<PaperSheet> paper = Optional.of(new PaperDrafting().draw(plan, sheet));
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("drawing.dxf", DxfBackend.bytes(sheet, paper, version));
        files.put("floor.svg", SvgBackend.bytes(sheet));
        files.put(
                "pick-list.pdf",
                new PickList()
                        .bytes(plan, new FloorDrafting(false).drawWithoutWords(plan), FloorDrafting.caption(plan)));
        files.put("confirm.pdf", confirm(plan.job()));
        files.put("cuts.csv", new CutsCsv().bytes(plan));
        new TreeMap<>(more).forEach(files::put);
        List<String> names = new ArrayList<>(files.keySet());
        names.add(KIT);
        files.put(KIT, new KitJson().bytes(plan, names));
        return files;
    }

    /** What stays in the house: costs and wages. */
    static Map<String, byte[]> internal(KitPlan plan) {
        return Map.of("internal.pdf", new InternalPaper().bytes(plan));
    }

    /** The table of alternatives, as paper and as data. */
    static Map<String, byte[]> of(Choice choice) {
        return Map.of(
                "alternatives.pdf", new AlternativesPaper().bytes(choice, MiniatureDrafting::draw),
                "alternatives.json", new AlternativesJson().bytes(choice));
    }

    /** The paper that a customer confirms the floor of a job by. */
    static byte[] confirm(Job job) {
        TapeSheet tape = new TapeMeasuring().measure(job);
        return new ConfirmPaper(job, tape)
                .bytes(scale -> ConfirmDrafting.draw(job, tape, scale), OrientationSign.sheet());
    }
}
