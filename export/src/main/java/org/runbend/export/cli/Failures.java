package org.runbend.export.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import org.runbend.catalog.ledger.LedgerRefused;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.KeyPlace;
import org.runbend.export.folder.OutputRefused;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.natives.NoSolver;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Maps failures once for all commands: bad input is one line and exit code 2, our own fault one line, a report and 70. */
final class Failures implements IExecutionExceptionHandler, IParameterExceptionHandler {
    private static final Set<PosixFilePermission> OWNER_ALONE =
            EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

    static final int BAD_INPUT = 2;
    static final int OWN_FAULT = 70;
    /** The widest floors, with alternatives, were planned in 2 GB. */
    private static final long ALWAYS_ENOUGH = 2048;

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
        if (e instanceof OutputRefused || e instanceof LedgerRefused) {
            at.getErr().println(Terminal.oneLine(e.getMessage()));
            return BAD_INPUT;
        }
        if (e instanceof Unbuildable unbuildable) {
            tell(unbuildable, at);
            return BAD_INPUT;
        }
        return ownFault(e, at.getErr());
    }

    /** One line for what is no fault of the input, with the place of the report; the exit code. */
    static int ownFault(Throwable e, PrintWriter err) {
        Throwable reason = reason(e);
        String report =
                report(e).map(r -> "; please send " + r + " with the job file").orElse("; no folder takes a report");
        if (reason instanceof OutOfMemoryError) {
            err.println("runbend: not enough memory: Java may use " + megabytes() + " MB, give it more: java -Xmx"
                    + enough() + "m -jar runbend.jar ..." + report);
        } else if (reason instanceof NoSolver) {
            err.println("runbend: " + Terminal.oneLine(reason.getMessage()) + report);
        } else {
            err.println("runbend: a fault of our own (" + reason.getClass().getSimpleName() + ")" + report);
        }
        return OWN_FAULT;
    }

    /** What lies under the wrappings of threads and of classes that could not be made ready. */
    private static Throwable reason(Throwable e) {
        Throwable reason = e;
        for (Throwable t = e; t != null; t = t.getCause()) {
            if (t instanceof OutOfMemoryError || t instanceof NoSolver) {
                return t;
            }
            boolean wrapping = t instanceof CompletionException
                    || t instanceof ExecutionException
                    || (t instanceof IllegalStateException && t.getCause() instanceof Error);
            reason = wrapping && t.getCause() != null && reason == t ? t.getCause() : reason;
        }
        return reason;
    }

    private static long megabytes() {
        return Runtime.getRuntime().maxMemory() >> 20;
    }

    /** Twice as much, and never under what the widest floors were seen to need. */
    private static long enough() {
        return Math.max(ALWAYS_ENOUGH, 2 * megabytes());
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
        if (at.getCommandSpec().userObject() instanceof JobCommand command && command.jobFile() != null) {
            return KeyPlace.fault(command.jobFile(), key, text).text();
        }
        return key + ": " + text;
    }

    /** A report in the temporary folder, else in the user's own or where we are. */
    private static Optional<Path> report(Throwable e) {
        StringWriter text = new StringWriter();
        e.printStackTrace(new PrintWriter(text));
        for (String folder : List.of("java.io.tmpdir", "user.home", "user.dir")) {
            Optional<Path> file = report(System.getProperty(folder, ""), text.toString());
            if (file.isPresent()) {
                return file;
            }
        }
        return Optional.empty();
    }

    private static Optional<Path> report(String folder, String text) {
        // not by Files.createTempFile: its random names need more memory than may be left
        Path file = null;
        try {
            Path named = Path.of(folder).resolve("runbend-fault-" + Math.abs(System.nanoTime()) + ".txt");
            file = named.getFileSystem().supportedFileAttributeViews().contains("posix")
                    ? Files.createFile(named, PosixFilePermissions.asFileAttribute(OWNER_ALONE))
                    : Files.createFile(named);
            Files.writeString(file, text);
            return Optional.of(file);
        } catch (IOException | RuntimeException | LinkageError full) {
            remove(file);
            return Optional.empty();
        }
    }

    /** Removes a report that the disk took half of. */
    private static void remove(Path file) {
        try {
            if (file != null) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            // there is nothing more to do
        }
    }
}
