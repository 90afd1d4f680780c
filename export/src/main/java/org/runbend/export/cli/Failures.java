package org.runbend.export.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.KeyPlace;
import org.runbend.optimizer.job.Unbuildable;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Maps failures once for all commands: bad input is one line and exit code 2, our own fault one line, a report and 70. */
final class Failures implements IExecutionExceptionHandler, IParameterExceptionHandler {
    static final int BAD_INPUT = 2;
    static final int OWN_FAULT = 70;

    @Override
    public int handleParseException(ParameterException e, String[] args) {
        CommandLine at = e.getCommandLine();
        at.getErr()
                .println(at.getCommandSpec().qualifiedName() + ": " + Terminal.oneLine(e.getMessage()) + " (see '"
                        + at.getCommandSpec().qualifiedName() + " --help')");
        return BAD_INPUT;
    }

    @Override
    public int handleExecutionException(Exception e, CommandLine at, ParseResult parsed) {
        if (e instanceof BadInput bad) {
            tell(bad, at);
            return BAD_INPUT;
        }
        if (e instanceof OutputRefused) {
            at.getErr().println(Terminal.oneLine(e.getMessage()));
            return BAD_INPUT;
        }
        if (e instanceof Unbuildable unbuildable) {
            tell(unbuildable, at);
            return BAD_INPUT;
        }
        at.getErr()
                .println("runbend: a fault of our own (" + e.getClass().getSimpleName() + ")"
                        + report(e)
                                .map(r -> "; please send " + r + " with the job file")
                                .orElse(""));
        return OWN_FAULT;
    }

    /** {@code check} is there to tell everything; other commands say one line, and how many more there are. */
    private static void tell(BadInput bad, CommandLine at) {
        if (at.getCommandSpec().userObject() instanceof CheckCommand) {
            bad.faults().forEach(f -> at.getErr().println(Terminal.oneLine(f.text())));
            return;
        }
        at.getErr()
                .println(Terminal.oneLine(bad.getMessage()) + more(bad.faults().size() - 1));
    }

    private static void tell(Unbuildable unbuildable, CommandLine at) {
        List<String> lines = unbuildable.lines();
        if (at.getCommandSpec().userObject() instanceof CheckCommand) {
            lines.forEach(l -> at.getErr().println(Terminal.oneLine(line(unbuildable.key(), l, at))));
            return;
        }
        at.getErr().println(Terminal.oneLine(line(unbuildable.key(), lines.get(0), at)) + more(lines.size() - 1));
    }

    private static String more(int more) {
        return more == 0 ? "" : " (and " + more + " more: runbend check prints them all)";
    }

    private static String line(String key, String text, CommandLine at) {
        if (at.getCommandSpec().userObject() instanceof JobCommand command) {
            return KeyPlace.fault(command.jobFile(), key, text).text();
        }
        return key + ": " + text;
    }

    private static Optional<Path> report(Exception e) {
        StringWriter text = new StringWriter();
        e.printStackTrace(new PrintWriter(text));
        try {
            Path file = Files.createTempFile("runbend-fault-", ".txt");
            Files.writeString(file, text.toString());
            return Optional.of(file);
        } catch (IOException ignored) {
            return Optional.empty();
        }
    }
}
