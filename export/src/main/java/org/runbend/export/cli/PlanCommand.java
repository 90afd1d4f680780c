package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.runbend.export.data.OldKit;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.choice.ChoicePlanner;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LoopChange;
import org.runbend.optimizer.plan.LoopComparison;
import org.runbend.optimizer.plan.PlateComparing;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** {@code runbend plan JOB.yaml}: plans the kit and writes its folder. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Plans the kit of a job and writes drawings, papers and data into a folder.",
        footer = {"", "Example:", "  runbend plan examples/camper.yaml --out kit"})
final class PlanCommand extends JobCommand implements Callable<Integer> {
    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "The folder to write; default: named after the job file, beside it.")
    private Path out;

    @Option(
            names = "--dxf",
            paramLabel = "FORM",
            converter = DxfForm.class,
            description = "Form of drawing.dxf: r2000, which every reader takes (default), or r12 for old controllers.")
    private DxfVersion dxf = DxfVersion.R2000;

    @Option(
            names = "--channel",
            paramLabel = "HOW",
            converter = ChannelWord.class,
            description =
                    "Layer CHANNEL: contour, the finished edge of the groove (default), or centre, for cutters that"
                            + " follow layer PIPE.")
    private ChannelForm channel = ChannelForm.CONTOUR;

    @Option(
            names = "--improve",
            description =
                    "Of a job with its own loop: lay one of ours beside it, in DIR-improved, and say what it saves.")
    private boolean improve;

    @Option(
            names = "--was",
            paramLabel = "KIT.json",
            description = "The kit.json of an earlier plan: say what of its loop stays, what goes and what is new.")
    private Path was;

    @Option(
            names = "--alternatives",
            description = "Plan the floor in several ways too and write up to six good plans into alternatives.pdf and"
                    + " alternatives.json.")
    private boolean alternatives;

    @Option(
            names = "--take",
            paramLabel = "N",
            description =
                    "Write the kit of alternative N, as alternatives.pdf numbers them, in place of the job's own.")
    private Integer take;

    @Option(
            names = "--internal",
            description =
                    "Write what the kit costs the workshop, wages included, into internal.pdf, which does not travel.")
    private boolean internal;

    @Override
    public Integer call() {
        checkWords();
        OutputFolder folder = new OutputFolder(out != null ? out : besideJob(jobFile()));
        folder.checkOurs();
        Job job = read();
        if (improve && !job.hasOwnLoop()) {
            throw new Unbuildable("layout.loop", "is missing: --improve needs a loop that somebody drew");
        }
        OutputFolder beside = new OutputFolder(improved(folder.path()));
        if (improve) {
            beside.checkOurs();
        }
        List<Element> before = was == null ? List.of() : OldKit.elements(was);
        KitPlan plan = plan(job);
        Map<String, byte[]> more = Map.of();
        if (alternatives || take != null) {
            Choice choice = new ChoicePlanner(progress()).choose(plan);
            plan = take == null ? plan : taken(choice);
            more = alternatives ? KitFiles.of(choice) : more;
            if (alternatives && !isQuiet()) {
                new Summary(out()).printChoice(choice);
            }
        }
        if (internal) {
            progress().step("comparing plates");
            plan = new PlateComparing().compare(plan);
            more = new TreeMap<>(more);
            more.putAll(KitFiles.internal(plan));
        }
        progress().step("drawing and writing");
        folder.write(KitFiles.of(plan, dxf, channel == ChannelForm.CONTOUR, more));
        if (!isQuiet()) {
            new Summary(out()).print(plan, folder.path());
            if (was != null) {
                new Summary(out()).printChange(LoopChange.of(before, plan));
            }
        }
        if (improve) {
            improve(plan, beside);
        }
        return codeOf(plan);
    }

    private void checkWords() {
        if (take != null && (take < 1 || take > Choice.MOST)) {
            throw usage("--take " + take + ": alternatives are numbered from 1 to at most " + Choice.MOST);
        }
        if (improve && (alternatives || take != null)) {
            throw usage("--improve goes with neither --alternatives nor --take; run them one after the other");
        }
    }

    /** The plan of the alternative wanted; it says which one it is. */
    private KitPlan taken(Choice choice) {
        int count = choice.alternatives().size();
        if (take > count) {
            throw usage(
                    "--take " + take + ": this job has " + (count == 1 ? "1 alternative" : count + " alternatives"));
        }
        Alternative taken = choice.alternatives().get(take - 1);
        return taken.plan().withRemark(taken.remark(count));
    }

    private void improve(KitPlan own, OutputFolder beside) {
        Job job = own.job();
        KitPlan ours = plan(job.with(job.floor(), job.layout().withoutLoop()));
        beside.write(KitFiles.of(ours, dxf, channel == ChannelForm.CONTOUR));
        if (!isQuiet()) {
            new Summary(out()).printComparison(new LoopComparison(own, ours), beside.path());
        }
    }

    private static Path improved(Path folder) {
        return folder.resolveSibling((folder.getFileName() == null ? "kit" : folder.getFileName()) + "-improved");
    }

    /** Reads the form of a drawing. */
    static final class DxfForm implements ITypeConverter<DxfVersion> {
        @Override
        public DxfVersion convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "r2000" -> DxfVersion.R2000;
                case "r12" -> DxfVersion.R12;
                default -> throw new TypeConversionException("'" + word + "' is neither r2000 nor r12");
            };
        }
    }

    /** What layer CHANNEL holds. */
    enum ChannelForm {
        /** The finished edge of the groove. */
        CONTOUR,
        /** Nothing: the cutter follows the centreline. */
        CENTRE
    }

    /** Reads what layer CHANNEL holds. */
    static final class ChannelWord implements ITypeConverter<ChannelForm> {
        @Override
        public ChannelForm convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "contour" -> ChannelForm.CONTOUR;
                case "centre" -> ChannelForm.CENTRE;
                default -> throw new TypeConversionException("'" + word + "' is neither contour nor centre");
            };
        }
    }

    private static Path besideJob(Path job) {
        String name = job.getFileName() == null ? "kit" : job.getFileName().toString();
        String stem = name.replaceFirst("\\.ya?ml$", "");
        return job.resolveSibling(stem.equals(name) ? name + "-kit" : stem);
    }
}
