package org.runbend.export.cli;

import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.runbend.export.batch.KnownAnswers;
import org.runbend.export.relay.FloorText;
import org.runbend.export.relay.Relay;
import org.runbend.export.stock.LedgerPlace;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.service.PlanService;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code runbend worker}: lays floors that a batch elsewhere handed over. */
@Command(
        name = "worker",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description =
                "Lays floors of a day for another machine that runs 'runbend batch --workers', until it is ended.",
        footer = {
            "",
            "Workers and batch are of the same version and name the same database. A worker that is ended, by Ctrl-C or by the",
            "mains, loses nothing: others take its floors half a minute later.",
            "Example:",
            "  runbend worker --stock jdbc:postgresql://bench/shop?user=saw --password-file pw.txt"
        })
final class WorkerCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Mixin
    private LedgerPlace stock;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many floors at once, 1 to 64; default: one for each core.")
    private Integer threads;

    @Option(
            names = "--idle",
            paramLabel = "SECONDS",
            description = "End after so long without a floor; default: go on waiting.")
    private Integer idle;

    @SuppressWarnings("try") // a worker is there to be closed
    @Override
    public Integer call() throws InterruptedException {
        check("--threads", threads, 64);
        check("--idle", idle, 1_000_000);
        int many = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        Idleness idleness = new Idleness();
        Relay.Laying laying = floor -> {
            idleness.begin();
            try {
                return lay(floor);
            } finally {
                idleness.end();
            }
        };
        try (Relay relay = Relay.open(stock.database(), stock.login(), Runbend.VERSION);
                Relay.Worker worker = relay.work(many, name(), laying, this::tell)) {
            tell("waiting for floors; Ctrl-C ends");
            while (idle == null || idleness.seconds() < idle) {
                Thread.sleep(100);
            }
        }
        return 0;
    }

    private void check(String option, Integer value, int most) {
        if (value != null && (value < 1 || value > most)) {
            throw new ParameterException(
                    spec.commandLine(), option + ": found " + value + ", a number from 1 to " + most + " is wanted");
        }
    }

    /** For how long nothing was to do. */
    private static final class Idleness {
        private int busy;
        private long since = System.nanoTime();

        synchronized void begin() {
            busy++;
        }

        synchronized void end() {
            busy--;
            since = System.nanoTime();
        }

        synchronized long seconds() {
            return busy > 0 ? 0 : TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - since);
        }
    }

    /** This worker's name: processes of all machines have different ones. */
    static String name() {
        return ProcessHandle.current().pid() + "-" + UUID.randomUUID();
    }

    /** Plans a floor and gives what was asked on the way; a job that cannot be built has its answers too. */
    static Map<String, String> lay(FloorText floor) throws Exception {
        Job job = floor.read(new DrawnLoops());
        KnownAnswers answers = KnownAnswers.passing(Runbend.VERSION);
        try (PlanService service = new PlanService(1)) {
            service.plan(job, new Work(Progress.SILENT, 1, answers)).get();
        } catch (Unbuildable e) {
            return answers.texts(); // the batch will find out the same, and say it of its order
        }
        return answers.texts();
    }

    private void tell(String word) {
        spec.commandLine().getOut().println(Terminal.oneLine(word));
    }
}
