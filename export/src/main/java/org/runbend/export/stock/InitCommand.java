package org.runbend.export.stock;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code runbend stock init}: makes a new, empty ledger. */
@Command(
        name = "init",
        mixinStandardHelpOptions = true,
        description = "Makes a new, empty ledger.",
        footer = {"", "Example:", "  runbend stock init --stock shelf.db"})
final class InitCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        spec.commandLine().getOut().println("A new ledger is in " + place.create());
        return 0;
    }
}
