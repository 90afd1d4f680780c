package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFile;
import org.runbend.export.pdf.Paper;
import org.runbend.optimizer.job.Job;
import picocli.CommandLine.Command;
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

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            converter = PaperWord.class,
            description = "Size of the paper: a4 (default) or letter.")
    private Paper size = Paper.A4;

    @Override
    public Integer call() {
        OutputFile paper = OutputFile.pdf(out);
        paper.check(replace);
        Job job = read();
        paper.write(KitFiles.confirm(job, size));
        if (!isQuiet()) {
            job.written().assumptions().forEach(a -> out().println(Terminal.plain("Assumed: " + a)));
            job.warnings().forEach(w -> out().println(Terminal.plain("Note: " + w)));
            out().println(Terminal.plain("Written to " + out));
        }
        return 0;
    }
}
