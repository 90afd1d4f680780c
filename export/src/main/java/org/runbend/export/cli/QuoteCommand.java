package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SizeText;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFile;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.estimate.RangeAsked;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.Offer;
import picocli.CommandLine.Command;
import picocli.CommandLine.IModelTransformer;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Option;

/** {@code runbend quote JOB.yaml}: what a customer is asked for a kit. */
@Command(
        name = "quote",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        modelTransformer = QuoteCommand.JobOrSize.class,
        description = "Prices the kit of a job by the terms of its catalog, or says the range of a floor of two sizes.",
        footer = {
            "",
            "Examples:",
            "  runbend quote examples/camper.yaml --out quote.pdf",
            "  runbend quote --size 2600x1500 --catalog examples/workshop.yaml"
        })
final class QuoteCommand extends JobCommand implements Callable<Integer> {
    @Option(
            names = "--out",
            paramLabel = "FILE.pdf",
            description = "The paper to write; without it prices are printed alone.")
    private Path out;

    @Option(names = "--replace", description = "Replace a paper that Runbend did not write or somebody changed, too.")
    private boolean replace;

    @Option(
            names = "--discount",
            paramLabel = "SHARE",
            converter = DiscountWord.class,
            description = "A discount for this order, such as 5%%, in place of the catalog's.")
    private Rate discount;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            converter = PaperWord.class,
            description = "Size of the paper: a4 (default) or letter.")
    private Paper paperSize = Paper.A4;

    @Option(
            names = "--size",
            arity = "1..5",
            paramLabel = "SIZE",
            description = "In place of a job: two sides of a floor, such as 2600x1500, 2.6m x 1.5m or 8ft 6in x 5ft.")
    private List<String> size;

    @Option(names = "--catalog", paramLabel = "FILE", description = "With --size: the catalog.")
    private Path catalog;

    @Option(
            names = "--pipe",
            paramLabel = "SKU",
            description = "With --size: the pipe; default: the first one of the catalog that plates are sold for.")
    private String pipe;

    @Option(
            names = "--spacing",
            paramLabel = "MM",
            description = "With --size: centre to centre of neighbouring runs; default: 150.")
    private String spacing;

    @Override
    public Integer call() {
        return size == null ? ofJob() : ofSize();
    }

    private int ofJob() {
        if (jobFile() == null) {
            throw usage("a job file is missing, or --size with --catalog");
        }
        if (catalog != null || pipe != null || spacing != null) {
            throw usage("--catalog, --pipe and --spacing go with --size; a job names its own");
        }
        Optional<OutputFile> paper = Optional.ofNullable(out).map(OutputFile::pdf);
        paper.ifPresent(p -> p.check(replace));
        KitPlan plan = plan();
        Offer offer =
                service().offer(plan, Optional.ofNullable(discount), work()).get();
        paper.ifPresent(p -> p.write(KitFiles.quote(plan, offer, paperSize)));
        if (!isQuiet()) {
            new OfferSummary(out(), plan).print(offer);
            paper.ifPresent(p -> out().println(Terminal.plain("Written to " + p.path())));
        }
        return codeOf(plan);
    }

    private int ofSize() {
        String written = String.join(" ", size);
        if (jobFile() != null || out != null || hasShelf()) {
            throw usage("--size " + Plain.quoted(written) + " is no job: it goes with no job file, --shelf or --out");
        }
        if (catalog == null) {
            throw usage("--size " + Plain.quoted(written) + ": --catalog FILE is missing, which says what is sold");
        }
        SizeText sides = SizeText.parse(written)
                .orElseThrow(() -> usage("--size " + Plain.quoted(written)
                        + ": two lengths are wanted, such as 2600x1500, 2.6m x 1.5m or 8ft 6in x 5ft"));
        RangeAsked asked = new RangeAsked(
                catalog,
                sides.first(),
                sides.second(),
                Optional.ofNullable(pipe),
                apart(),
                Optional.ofNullable(discount));
        try {
            service().range(asked, work()).get().words().forEach(w -> out().println(Terminal.plain(w)));
            return 0;
        } catch (Unbuildable e) {
            throw usage("--" + (e.key().equals("pipe") ? "pipe: " : "size: ") + e.getMessage());
        }
    }

    private OptionalDouble apart() {
        if (spacing == null) {
            return OptionalDouble.empty();
        }
        OptionalDouble mm = SizeText.length(spacing);
        if (mm.isEmpty() || mm.getAsDouble() < RangeAsked.LEAST_SPACING || mm.getAsDouble() > RangeAsked.MOST_SPACING) {
            throw usage(
                    "--spacing " + Plain.quoted(spacing) + ": a length from " + Plain.number(RangeAsked.LEAST_SPACING)
                            + " to " + Plain.number(RangeAsked.MOST_SPACING) + " mm is wanted");
        }
        return mm;
    }

    /** A size may stand in the job's place. */
    static final class JobOrSize implements IModelTransformer {
        @Override
        public CommandSpec transform(CommandSpec spec) {
            PositionalParamSpec job = spec.positionalParameters().get(0);
            spec.remove(job);
            return spec.addPositional(PositionalParamSpec.builder(job)
                    .arity("0..1")
                    .required(false)
                    .paramLabel("[JOB.yaml]")
                    .build());
        }
    }
}
