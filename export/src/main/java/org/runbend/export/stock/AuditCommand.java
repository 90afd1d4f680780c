package org.runbend.export.stock;

import java.util.List;
import java.util.concurrent.Callable;
import org.runbend.catalog.ledger.Audit;
import org.runbend.catalog.ledger.StockLedger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code runbend stock audit}: whether stock is the sum of its movements. */
@Command(
        name = "audit",
        mixinStandardHelpOptions = true,
        description = "Adds all movements up once more and says what does not agree; exit code 1 if anything.")
final class AuditCommand implements Callable<Integer> {
    @Mixin
    private LedgerPlace place;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        List<String> said = place.with(word -> spec.commandLine().getErr().println(word), AuditCommand::audit);
        said.forEach(spec.commandLine().getOut()::println);
        return said.size() > 1 ? 1 : 0;
    }

    private static List<String> audit(StockLedger ledger) {
        List<String> faults = Audit.faults(ledger).lines().toList();
        int movements = ledger.look(books -> books.movements()).size();
        return faults.isEmpty()
                ? List.of("All " + movements + " movements add up to what the ledger says is there.")
                : java.util.stream.Stream.concat(
                                java.util.stream.Stream.of("Of " + movements + " movements:"), faults.stream())
                        .toList();
    }
}
