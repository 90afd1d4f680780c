package org.runbend.export.stock;

import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code runbend stock undo}: a movement never happened. */
@Command(
        name = "undo",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "A movement never happened: a counter-movement takes it back, where no later one needs it.",
        footer = {"", "Example:", "  runbend stock undo 12"})
final class UndoCommand extends ChangeCommand {
    @Parameters(paramLabel = "MOVEMENT", description = "Its number, as history shows it.")
    private long movement;

    @Override
    Outcome change(StockLedger ledger) {
        return ledger.undo(request(), movement);
    }
}
