package org.runbend.export;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.runbend.export.cli.Runbend;
import picocli.CommandLine;

/**
 * What a run of the command line came to.
 *
 * @param code exit code
 * @param out what it printed
 * @param err what it printed as errors
 */
public record CommandRun(int code, String out, String err) {
    /** Runs the command line in this process. */
    public static CommandRun of(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine line = Runbend.commandLine();
        line.setOut(new PrintWriter(out, true));
        line.setErr(new PrintWriter(err, true));
        int code = line.execute(args);
        return new CommandRun(code, out.toString(), err.toString());
    }
}
