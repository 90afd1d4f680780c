package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.runbend.catalog.source.Plain;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFile;
import org.runbend.optimizer.guide.GuidePlate;
import org.runbend.optimizer.guide.GuideProblem;
import org.runbend.optimizer.guide.RouterGuide;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.GuideVerifier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code runbend guide JOB.yaml}: one plate to rout the channels along by hand, in full size. */
@Command(
        name = "guide",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Draws the plate that leads a hand router along runs and bends, 1:1; lays no loop.",
        footer = {"", "Example:", "  runbend guide examples/camper.yaml --out guide.dxf"})
final class GuideCommand extends JobCommand implements Callable<Integer> {
    @Option(
            names = "--out",
            paramLabel = "FILE.dxf",
            required = true,
            description = "The drawing to write; the same in tiles to print goes beside it, as FILE.pdf.")
    private Path out;

    @Option(names = "--replace", description = "Replace files that Runbend did not write or somebody changed, too.")
    private boolean replace;

    @Mixin
    private SheetOptions papers = new SheetOptions();

    @Override
    public Integer call() {
        String name = String.valueOf(out.getFileName());
        if (!name.endsWith(".dxf")) {
            throw usage("--out " + Plain.quoted(name) + ": a name that ends in .dxf is wanted");
        }
        OutputFile drawing = OutputFile.dxf(out);
        OutputFile paper =
                OutputFile.pdf(out.resolveSibling(name.substring(0, name.length() - ".dxf".length()) + ".pdf"));
        drawing.check(replace);
        paper.check(replace);
        Job job = read();
        GuidePlate plate = new RouterGuide().lay(GuideProblem.of(job));
        List<Finding> findings = GuideVerifier.verify(plate);
        if (!findings.isEmpty()) {
            throw new IllegalStateException("the guide is not as it should be: " + findings.get(0));
        }
        drawing.write(KitFiles.guideDrawing(job, plate));
        paper.write(KitFiles.guidePaper(papers.told(job), plate, papers.paper()));
        if (!isQuiet()) {
            out().println(Terminal.plain("Guide " + Plain.number(plate.width()) + " x " + Plain.number(plate.height())
                    + " mm, " + Plain.number(plate.problem().thickness()) + " mm thick; bush "
                    + Plain.number(plate.bush().outer()) + " mm, cutter " + Plain.number(plate.cutter())
                    + " mm, spacing " + Plain.number(plate.problem().spacing()) + " mm."));
            job.warnings().forEach(w -> out().println(Terminal.plain("Note: " + w)));
            out().println(Terminal.plain("Written to " + drawing.path() + " and " + paper.path()));
        }
        return 0;
    }
}
