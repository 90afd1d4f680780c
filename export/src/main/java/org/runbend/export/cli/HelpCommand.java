package org.runbend.export.cli;

import java.io.PrintWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code runbend help TOPIC}: keys of the files, drawings, choices, exit codes, or a command. */
@Command(
        name = "help",
        mixinStandardHelpOptions = true,
        description = "Tells of job, catalog, shelf, choices, drawings, exit codes, or of a command.",
        footer = {"", "Example:", "  runbend help job"})
final class HelpCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "TOPIC",
            arity = "0..*",
            description = "job, catalog, shelf, choices, drawings, exit codes, or a command.")
    private List<String> topic = List.of();

    @Override
    public Integer call() {
        CommandLine all = spec.commandLine().getParent();
        PrintWriter out = spec.commandLine().getOut();
        if (topic.isEmpty()) {
            all.usage(out);
            return 0;
        }
        Optional<HelpTopic> told = HelpTopic.of(topic);
        CommandLine command = all.getSubcommands().get(topic.get(0));
        if (told.isPresent()) {
            told.get().lines().forEach(out::println);
        } else if (topic.size() == 1 && command != null) {
            command.usage(out);
        } else {
            throw new ParameterException(
                    spec.commandLine(),
                    "there is no help on '" + String.join(" ", topic) + "'; topics are "
                            + Arrays.stream(HelpTopic.values())
                                    .map(HelpTopic::words)
                                    .collect(Collectors.joining(", "))
                            + ", and the commands "
                            + all.getSubcommands().keySet().stream().sorted().collect(Collectors.joining(", ")));
        }
        return 0;
    }
}
