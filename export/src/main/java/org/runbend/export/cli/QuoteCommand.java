package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.runbend.catalog.product.Rate;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFile;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.Offer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code runbend quote JOB.yaml}: what a customer is asked for a kit. */
@Command(
        name = "quote",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Prices the kit of a job by the terms of its catalog.",
        footer = {"", "Example:", "  runbend quote examples/camper.yaml --out quote.pdf"})
final class QuoteCommand extends JobCommand implements Callable<Integer> {
    @Option(names = "--out", paramLabel = "FILE.pdf", description = "The paper to write; without it prices are printed alone.")
    private Path out;

    @Option(names = "--replace", description = "Replace a paper that Runbend did not write or somebody changed, too.")
    private boolean replace;

    @Option(
            names = "--discount",
            paramLabel = "SHARE",
            converter = DiscountWord.class,
            description = "A discount for this order, such as 5%%, in place of the catalog's.")
    private Rate discount;

    @Override
    public Integer call() {
        Optional<OutputFile> paper = Optional.ofNullable(out).map(OutputFile::pdf);
        paper.ifPresent(p -> p.check(replace));
        KitPlan plan = plan();
        Offer offer = service().offer(plan, Optional.ofNullable(discount), work()).get();
        paper.ifPresent(p -> p.write(KitFiles.quote(plan, offer)));
        if (!isQuiet()) {
            new OfferSummary(out(), plan).print(offer);
            paper.ifPresent(p -> out().println(Terminal.plain("Written to " + p.path())));
        }
        return codeOf(plan);
    }
}
