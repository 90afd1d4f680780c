package org.runbend.export.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.export.PlannedExamples;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;

/** What a fitter reads is in a fitter's words: none of those that the planner is written in. */
class PlainWordsTest {
    private static final Pattern OURS =
            Pattern.compile("(?i)\\b(lattices?|nodes?|objectives?|vert(ex|ices)|polylines? of)\\b");

    static List<Path> jobs() throws IOException {
        return PlannedExamples.jobs();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void remarksAndDrawings(Path job) {
        KitPlan plan = PlannedExamples.plan(job);
        List<String> said = new ArrayList<>(plan.remarkWords());
        said.addAll(FloorDrafting.caption(plan));
        plan.checks().stream().map(PlanCheck::name).forEach(said::add);
        assertTrue(said.size() > 10);
        assertEquals(
                List.of(), said.stream().filter(s -> OURS.matcher(s).find()).toList());
    }

    /** Messages of faults, tables of keys. */
    @Test
    void messagesAndKeys() throws IOException {
        List<String> said = new ArrayList<>();
        FaultTable.rows().forEach(r -> said.addAll(r.lines()));
        for (String schema : List.of("job.schema.json", "catalog.schema.json")) {
            Files.readAllLines(PlannedExamples.FOLDER.resolve(schema)).stream()
                    .filter(l -> l.contains("\"description\""))
                    .forEach(said::add);
        }
        assertTrue(said.size() > 300);
        assertEquals(
                List.of(), said.stream().filter(s -> OURS.matcher(s).find()).toList());
    }
}
