package org.runbend.export.stock;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code runbend stock}: the stock ledger. */
@Command(
        name = "stock",
        mixinStandardHelpOptions = true,
        subcommands = {
            InitCommand.class,
            ReceiveCommand.class,
            ListCommand.class,
            CountCommand.class,
            QuoteCommand.class,
            ReserveCommand.class,
            ReleaseCommand.class,
            ConfirmCommand.class,
            SpoilCommand.class,
            PackCommand.class,
            SendCommand.class,
            ReturnCommand.class,
            UndoCommand.class,
            OrdersCommand.class,
            HistoryCommand.class,
            PointCommand.class,
            ReorderCommand.class,
            AuditCommand.class
        },
        synopsisSubcommandLabel = "COMMAND",
        description = "The stock ledger: what is on the shelf, for which order it is kept, and every movement.",
        footer = {
            "",
            "Example:",
            "  runbend stock init --stock shelf.db",
            "  runbend stock receive coil PX-16 50m 4 --stock shelf.db",
            "  runbend plan job.yaml --out kit --stock shelf.db",
            "  runbend stock reserve kit --stock shelf.db",
            "  runbend stock confirm kit --stock shelf.db",
            "RUNBEND_STOCK in the environment stands for --stock. See runbend help stock."
        })
public final class StockCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    /** Without a command: shows what there is. */
    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
