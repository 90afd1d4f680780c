package org.runbend.export.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.runbend.export.drafting.LoopDrafting;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.plan.LoopInspector;
import org.runbend.optimizer.plan.LoopView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code runbend loop JOB.yaml --svg FILE}: shows lattice, loop, what was left out and why. */
@Command(
        name = "loop",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Lays the loop of a job and shows it on its lattice: what was left out, and why.",
        footer = {"", "Example:", "  runbend loop examples/camper.yaml --svg loop.svg"})
final class LoopCommand extends JobCommand implements Callable<Integer> {
    @Option(names = "--svg", paramLabel = "FILE", required = true, description = "The picture to write.")
    private Path svg;

    @Override
    public Integer call() {
        if (Disk.isTaken(svg) && (!svg.toString().endsWith(".svg") || !Files.isRegularFile(svg))) {
            throw new OutputRefused(svg + ": exists and is no .svg file; name a new file");
        }
        LoopView view = new LoopInspector(progress()).inspect(read());
        byte[] picture = SvgBackend.bytes(new LoopDrafting().draw(view));
        try {
            Disk.replace(svg, picture);
        } catch (IOException e) {
            throw new OutputRefused(svg + ": cannot be written");
        }
        if (!isQuiet()) {
            LoopDrafting.words(view).forEach(w -> out().println(Terminal.plain(w)));
        }
        return 0;
    }
}
