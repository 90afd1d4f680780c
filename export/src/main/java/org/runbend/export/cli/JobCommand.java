package org.runbend.export.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.runbend.export.stock.LedgerPlace;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.service.PlanService;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What commands on a job have in common: the job file, the shelf, and progress on a terminal. */
abstract sealed class JobCommand
        permits PlanCommand, CheckCommand, LoopCommand, ConfirmCommand, GuideCommand, QuoteCommand {
    private final PlanService service = new PlanService(1);
    private Work work;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "JOB.yaml", description = "The job file.")
    private Path job;

    @Option(names = "--shelf", paramLabel = "FILE", description = "Opened coils and offcuts at hand.")
    private Path shelf;

    @Mixin
    private LedgerPlace stock;

    @Option(names = "--quiet", description = "No progress and no summary.")
    private boolean quiet;

    final Path jobFile() {
        return job;
    }

    final boolean hasShelf() {
        return shelf != null;
    }

    /** A fault in how the command was called. */
    final ParameterException usage(String text) {
        return new ParameterException(spec.commandLine(), text);
    }

    final boolean isQuiet() {
        return quiet;
    }

    final PrintWriter out() {
        return spec.commandLine().getOut();
    }

    final PrintWriter err() {
        return spec.commandLine().getErr();
    }

    /** Reads the job, its catalog, the shelf and a drawing that the job names. */
    final Job read() {
        if (stock.isNamed()) {
            if (shelf != null) {
                throw usage("--shelf and --stock both say what is at hand: give one of them");
            }
            return stock.read(kept -> JobReader.read(job, kept, new DrawnLoops()), err()::println);
        }
        return JobReader.read(job, Optional.ofNullable(shelf), new DrawnLoops());
    }

    /** Reads and plans the job, with progress on the error stream when a person watches. */
    final KitPlan plan() {
        return plan(read());
    }

    /** Plans a job, with progress on the error stream when a person watches. */
    final KitPlan plan(Job job) {
        return service().plan(job, work()).get();
    }

    final PlanService service() {
        return service;
    }

    /** Work whose progress goes to the error stream when a person watches. */
    final Work work() {
        if (work == null) {
            work = Work.told(progress());
        }
        return work;
    }

    private Progress progress() {
        PrintWriter err = spec.commandLine().getErr();
        return isWatched() ? new TimedProgress(err, System::nanoTime) : Progress.SILENT;
    }

    /** 0 for a sound plan, 1 if a check failed. */
    static int codeOf(KitPlan plan) {
        return plan.isSound() ? 0 : 1;
    }

    /** On later JDKs a console exists without a terminal, so both are asked. */
    private boolean isWatched() {
        return !quiet && System.getenv("TERM") != null && hasConsole();
    }

    @SuppressWarnings(
            "SystemConsoleNull") // the release is 17; on JDK 22 and later progress may show in a log, which harms
    // nobody
    static boolean hasConsole() {
        return System.console() != null;
    }
}
