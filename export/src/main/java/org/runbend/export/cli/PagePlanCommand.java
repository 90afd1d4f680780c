package org.runbend.export.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.runbend.export.page.PlanChild;
import org.runbend.export.stock.LedgerPlace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The process of one plan of the page; it speaks with the page alone. */
@Command(name = PagePlanCommand.NAME, hidden = true, description = "Makes one plan for the page.")
final class PagePlanCommand implements Callable<Integer> {
    static final String NAME = "page-plan";

    @Spec
    private CommandSpec spec;

    @Mixin
    private LedgerPlace stock;

    @Parameters(index = "0", paramLabel = "FOLDER")
    private Path folder;

    @Parameters(index = "1", paramLabel = "WARM.yaml")
    private Path warm;

    @Override
    public Integer call() throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        new PlanChild(
                        new DrawnLoops(),
                        Optional.of(stock).filter(LedgerPlace::isNamed),
                        spec.commandLine().getOut())
                .run(in, folder, warm);
        return 0;
    }
}
