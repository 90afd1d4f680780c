package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFile;
import org.runbend.optimizer.job.Job;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code runbend confirm JOB.yaml}: the paper that a customer checks and signs, before any loop is laid. */
@Command(
        name = "confirm",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Writes the paper on which a customer checks and signs the floor; lays no loop.",
        footer = {"", "Example:", "  runbend confirm examples/camper.yaml --out confirm.pdf"})
final class ConfirmCommand extends JobCommand implements Callable<Integer> {
    @Option(names = "--out", paramLabel = "FILE.pdf", required = true, description = "The paper to write.")
    private Path out;

    @Option(names = "--replace", description = "Replace a paper that Runbend did not write or somebody changed, too.")
    private boolean replace;

    @Mixin
    private SheetOptions papers = new SheetOptions();

    @Override
    public Integer call() {
        OutputFile paper = OutputFile.pdf(out);
        paper.check(replace);
        Job job = read();
        paper.write(KitFiles.confirm(papers.told(job), papers.paper()));
        if (!isQuiet()) {
            job.written().assumptions().forEach(a -> out().println(Terminal.plain("Assumed: " + a)));
            job.warnings().forEach(w -> out().println(Terminal.plain("Note: " + w)));
            out().println(Terminal.plain("Written to " + out));
        }
        return 0;
    }
}
