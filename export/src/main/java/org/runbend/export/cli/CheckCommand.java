package org.runbend.export.cli;

import java.util.concurrent.Callable;
import org.runbend.optimizer.plan.KitPlan;
import picocli.CommandLine.Command;

/** {@code runbend check JOB.yaml}: plans in memory and prints the checks; writes nothing. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Plans a job in memory, prints its checks and writes nothing.",
        footer = {"", "Example:", "  runbend check examples/camper.yaml"})
final class CheckCommand extends JobCommand implements Callable<Integer> {
    @Override
    public Integer call() {
        KitPlan plan = plan();
        new Summary(out(), plan.job()).printChecks(plan);
        return codeOf(plan);
    }
}
