package org.runbend.export.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.runbend.optimizer.plan.KitPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

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

    @Override
    public Integer call() {
        OutputFolder folder = new OutputFolder(out != null ? out : besideJob(jobFile()));
        folder.checkOurs();
        KitPlan plan = plan();
        progress().step("drawing and writing");
        folder.write(KitFiles.of(plan));
        if (!isQuiet()) {
            new Summary(out()).print(plan, folder.path());
        }
        return codeOf(plan);
    }

    private static Path besideJob(Path job) {
        String name = job.getFileName() == null ? "kit" : job.getFileName().toString();
        String stem = name.replaceFirst("\\.ya?ml$", "");
        return job.resolveSibling(stem.equals(name) ? name + "-kit" : stem);
    }
}
