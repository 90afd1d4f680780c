package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletionException;
import java.util.function.UnaryOperator;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.Routing;
import org.runbend.catalog.source.Plain;
import org.runbend.export.data.OldKit;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFolder;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitChange;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.planning.ChangePlanner;
import org.runbend.optimizer.planning.LoopComparison;
import org.runbend.optimizer.quote.Offer;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
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
                    "Layer CHANNEL: contour, the finished edge of the groove (default), or centre, the passes beside"
                            + " layer PIPE for cutters that follow lines.")
    private ChannelForm channel = ChannelForm.CONTOUR;

    @Option(
            names = "--contours",
            paramLabel = "HOW",
            converter = ContoursWord.class,
            description = "Lines of drawing.dxf: polylines with arcs in them (default), or lines, single lines and arcs"
                    + " for programs that misread arcs in polylines.")
    private ContourForm contours = ContourForm.POLYLINES;

    @Option(
            names = "--improve",
            description =
                    "Of a job with its own loop: lay one of ours beside it, in DIR-improved, and say what it saves.")
    private boolean improve;

    @Option(
            names = "--was",
            paramLabel = "KIT.json",
            description =
                    "The kit.json of a kit that was cut before the job changed: keep its loop and plates where they"
                            + " still fit, take what was cut as stock, and say in changes.pdf what stays and what goes.")
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
            names = "--temperatures",
            description =
                    "Write the floor shaded by surface temperature into temperatures.svg and temperatures.pdf; the job"
                            + " needs build and heating.")
    private boolean temperatures;

    @Option(
            names = "--internal",
            description =
                    "Write what the kit costs the workshop, wages included, into internal.pdf, which does not travel.")
    private boolean internal;

    @Option(
            names = "--quote",
            description = "Write what the customer is asked for the kit, by the terms of the catalog, into quote.pdf.")
    private boolean quote;

    @Option(
            names = "--discount",
            paramLabel = "SHARE",
            converter = DiscountWord.class,
            description = "With --quote: a discount for this order, such as 5%%, in place of the catalog's.")
    private Rate discount;

    @Mixin
    private PaperOptions papers = new PaperOptions();

    @Override
    public Integer call() {
        checkWords();
        OutputFolder folder = new OutputFolder(out != null ? out : besideJob(jobFile()));
        Job job = papers.told(read());
        if (temperatures && (job.build().isEmpty() || job.heating().isEmpty())) {
            throw new Unbuildable(
                    job.build().isEmpty() ? "build" : "heating",
                    "is missing: --temperatures needs build and heating to reckon with");
        }
        if (improve && !job.hasOwnLoop()) {
            throw new Unbuildable("layout.loop", "is missing: --improve needs a loop that somebody drew");
        }
        checkCutter(job);
        checkTiles(papers.fault(job));
        OutputFolder beside = new OutputFolder(improved(folder.path()));
        Optional<EarlierKit> before = before(job);
        prepare(folder);
        if (improve) {
            prepare(beside);
        }
        Optional<KitChange> change = Optional.empty();
        KitPlan plan;
        if (before.isPresent()) {
            ChangePlanner.Changed changed =
                    service().planAfter(before.get(), job, work()).get();
            plan = changed.plan();
            change = Optional.of(changed.change());
        } else {
            plan = plan(job);
        }
        Map<String, byte[]> more = Map.of();
        if (take != null) {
            Choice choice = service().choose(plan, work()).get();
            plan = taken(choice);
            more = alternatives ? told(choice) : more;
        } else if (alternatives) {
            try {
                more = told(service().choose(plan, work()).get());
            } catch (RuntimeException e) {
                plan = plan.withRemark(lost(Remark.Beside.ALTERNATIVES, e));
            }
        }
        if (internal) {
            plan = compared(plan);
            more = new TreeMap<>(more);
            more.putAll(KitFiles.internal(plan, papers.paper()));
        }
        if (temperatures) {
            work().step("reckoning temperatures");
            more = new TreeMap<>(more);
            plan = withTemperatures(plan, more, papers.paper());
        }
        Optional<Offer> offer = offer(plan);
        checkTiles(papers.fault(plan));
        work().step("drawing and writing");
        folder.write(KitFiles.of(plan, change, offer, form(), papers.wish(), more));
        if (!isQuiet()) {
            new Summary(out(), plan.job()).print(plan, folder.path());
            if (offer.isPresent()) {
                out().println(Terminal.plain(OfferSummary.line(plan, offer.get().quote())));
            }
            Summary summary = new Summary(out(), plan.job());
            change.ifPresent(summary::printChange);
        }
        if (improve) {
            improve(plan, beside);
        }
        return codeOf(plan);
    }

    /** The kit that was cut before, if one is named. */
    private Optional<EarlierKit> before(Job job) {
        if (was == null) {
            return Optional.empty();
        }
        EarlierKit kit = OldKit.read(was);
        OldKit.check(was, kit, job);
        return Optional.of(kit);
    }

    /** Clears up what killed runs left; nothing is touched before job and earlier plan were read. */
    private void prepare(OutputFolder folder) {
        folder.checkOurs().forEach(remark -> err().println(Terminal.plain(remark)));
    }

    private KitFiles.DrawingForm form() {
        return new KitFiles.DrawingForm(dxf, channel == ChannelForm.CONTOUR, contours == ContourForm.LINES);
    }

    /** What the customer is asked for the kit, if somebody wants to know. */
    private Optional<Offer> offer(KitPlan plan) {
        return quote
                ? Optional.of(service()
                        .offer(plan, Optional.ofNullable(discount), work())
                        .get())
                : Optional.empty();
    }

    /** Nobody glues more pages than that; nothing was written yet. */
    private void checkTiles(Optional<String> fault) {
        fault.ifPresent(words -> {
            throw usage(words);
        });
    }

    private void checkWords() {
        if (discount != null && !quote) {
            throw usage("--discount " + discount + ": it is taken off a quotation: give --quote too");
        }
        if (take != null && (take < 1 || take > Choice.MOST)) {
            throw usage("--take " + take + ": alternatives are numbered from 1 to at most " + Choice.MOST);
        }
        if (improve && (alternatives || take != null)) {
            throw usage("--improve goes with neither --alternatives nor --take; run them one after the other");
        }
        if (was != null && (improve || alternatives || take != null)) {
            throw usage("--was goes with neither --improve nor --alternatives nor --take: it plans for what was cut");
        }
    }

    /** A cutter that follows lines needs one that goes into the groove; a contour would be left out and that said. */
    private void checkCutter(Job job) {
        double width = job.groove().width();
        Routing routing = job.catalog().routing();
        if (channel == ChannelForm.CENTRE && routing.cutterFor(width).isEmpty()) {
            throw usage("--channel centre: the groove is " + Plain.number(width)
                    + " mm wide and the thinnest cutter of the catalog "
                    + Plain.number(routing.cutters().get(0)) + " mm; give routing.cutters one of at most "
                    + Plain.number(width) + " mm");
        }
    }

    /** The files of the table of alternatives, which is printed too. */
    private Map<String, byte[]> told(Choice choice) {
        Map<String, byte[]> files = KitFiles.of(choice, papers.paper());
        if (!isQuiet()) {
            new Summary(out(), choice.alternatives().get(0).plan().job()).printChoice(choice);
        }
        return files;
    }

    /** The plan with plates compared; what is there to compare never costs the kit. */
    private KitPlan compared(KitPlan plan) {
        return compared(plan, p -> service().comparePlates(p, work()).get());
    }

    static KitPlan compared(KitPlan plan, UnaryOperator<KitPlan> comparing) {
        try {
            return comparing.apply(plan);
        } catch (RuntimeException e) {
            return plan.withRemark(lost(Remark.Beside.PLATES, e));
        }
    }

    /** The plan, its shaded floor put into the files; that never costs the kit. */
    private static KitPlan withTemperatures(KitPlan plan, Map<String, byte[]> files, Paper paper) {
        try {
            files.putAll(KitFiles.temperatures(plan, paper));
            return plan;
        } catch (RuntimeException e) {
            return plan.withRemark(lost(Remark.Beside.TEMPERATURES, e));
        }
    }

    private static Remark lost(Remark.Beside what, RuntimeException e) {
        Throwable reason = e instanceof CompletionException && e.getCause() != null ? e.getCause() : e;
        return new Remark.Lost(what, reason.getClass().getSimpleName());
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
        beside.write(KitFiles.of(ours, Optional.empty(), Optional.empty(), form(), papers.wish(), Map.of()));
        if (!isQuiet()) {
            new Summary(out(), job).printComparison(new LoopComparison(own, ours), beside.path());
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

    /** How lines of a drawing are written. */
    enum ContourForm {
        /** Each in one piece. */
        POLYLINES,
        /** In single lines and arcs. */
        LINES
    }

    /** Reads how lines of a drawing are written. */
    static final class ContoursWord implements ITypeConverter<ContourForm> {
        @Override
        public ContourForm convert(String word) {
            return switch (word.toLowerCase(Locale.ROOT)) {
                case "polylines" -> ContourForm.POLYLINES;
                case "lines" -> ContourForm.LINES;
                default -> throw new TypeConversionException("'" + word + "' is neither polylines nor lines");
            };
        }
    }

    /** What layer CHANNEL holds. */
    enum ChannelForm {
        /** The finished edge of the groove. */
        CONTOUR,
        /** The passes beside the centreline that give the groove its width. */
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
