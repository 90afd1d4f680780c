package org.runbend.export.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.runbend.export.stock.StockCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command {@code runbend} with its subcommands. */
@Command(
        name = "runbend",
        version = "runbend " + Runbend.VERSION,
        mixinStandardHelpOptions = true,
        subcommands = {
            PlanCommand.class,
            CheckCommand.class,
            ConfirmCommand.class,
            GuideCommand.class,
            LoopCommand.class,
            QuoteCommand.class,
            OutlineCommand.class,
            StockCommand.class,
            BatchCommand.class,
            WorkerCommand.class,
            PageCommand.class,
            PagePlanCommand.class,
            HelpCommand.class
        },
        synopsisSubcommandLabel = "COMMAND",
        description = "Lays the pipe loop of a small heated floor, packs its plates and coils, and draws the kit.",
        footer = {
            "",
            "Exit codes: 0 done; 1 done, but a check failed; 2 bad input or usage; 70 a fault of our own.",
            "Example:",
            "  runbend plan examples/camper.yaml --out kit",
            "Keys of the files and more: runbend help job, catalog, shelf, stock, choices, drawings, exit codes."
        })
public final class Runbend implements Runnable {
    /** Of this program. */
    static final String VERSION = "0.1.0";

    @Spec
    private CommandSpec spec;

    private Runbend() {}

    /** Without a command: shows what there is. */
    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** Runs the command line and ends the process with its exit code. */
    public static void main(String[] args) {
        int code;
        try {
            CommandLine line = commandLine();
            line.setOut(new PrintWriter(System.out, true, StandardCharsets.UTF_8));
            line.setErr(new PrintWriter(System.err, true, StandardCharsets.UTF_8));
            code = line.execute(args);
        } catch (Throwable e) { // even the command line itself may find too little memory
            code = Failures.ownFault(e, new PrintWriter(System.err, true, StandardCharsets.UTF_8));
        }
        System.exit(code);
    }

    /** Java's own errors, such as no memory, are failures like any other. */
    private static int run(CommandLine.ParseResult parsed) {
        try {
            return new CommandLine.RunLast().execute(parsed);
        } catch (Error e) {
            List<CommandLine> lines = parsed.asCommandLineList();
            throw new CommandLine.ExecutionException(
                    lines.get(lines.size() - 1), "a fault of our own", new IllegalStateException(e));
        }
    }

    /** The command line with its failures mapped to exit codes; tests set its writers. */
    public static CommandLine commandLine() {
        Failures failures = new Failures();
        return new CommandLine(new Runbend())
                .setExecutionExceptionHandler(failures)
                .setParameterExceptionHandler(failures)
                .setExecutionStrategy(Runbend::run)
                .setExpandAtFiles(false) // a file may be called @x
                .setCaseInsensitiveEnumValuesAllowed(true);
    }
}
