package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.runbend.export.drafting.LoopDrafting;
import org.runbend.export.folder.OutputFile;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.plan.LoopView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code runbend loop JOB.yaml --svg FILE}: shows lattice, loop, what was left out and why. */
@Command(
        name = "loop",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Lays the loop of a job and shows the places pipe could lie at, the loop, what it leaves out, and why.",
        footer = {"", "Example:", "  runbend loop examples/camper.yaml --svg loop.svg"})
final class LoopCommand extends JobCommand implements Callable<Integer> {
    @Option(names = "--svg", paramLabel = "FILE", required = true, description = "The picture to write.")
    private Path svg;

    @Option(names = "--replace", description = "Replace a picture that Runbend did not write or somebody changed, too.")
    private boolean replace;

    @Override
    public Integer call() {
        OutputFile picture = OutputFile.svg(svg);
        picture.check(replace);
        LoopView view = service().look(read(), work()).get();
        picture.write(SvgBackend.bytes(new LoopDrafting().draw(view)));
        if (!isQuiet()) {
            LoopDrafting.words(view).forEach(w -> out().println(Terminal.plain(w)));
        }
        return 0;
    }
}
