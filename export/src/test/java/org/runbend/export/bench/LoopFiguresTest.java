package org.runbend.export.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LoopFiguresTest {
    @TempDir
    Path folder;

    /** Same names lie deeper and in other places; only those of the lattice and of the first loop count. */
    @Test
    void takesTheFirstLoopAndNothingDeeper() throws IOException {
        Path kit = Files.writeString(folder.resolve("kit.json"), """
                {"pipe": {"turns": 1}, "turns": 2,
                 "lattice": {"origin": [75, 75], "angle": 0.0, "spacing": 150.000, "reachable": 160},
                 "loops": [
                   {"name": "A", "elements": [{"turn": 90.0, "turns": 3}], "turns": 20, "leftOut": 1, "objective": 30},
                   {"name": "B", "turns": 4, "turnBound": 4, "objective": 5}],
                 "checks": [{"objectiveBound": 6}]}
                """);
        OptionalInt none = OptionalInt.empty();
        assertEquals(
                new LoopFigures(
                        OptionalInt.of(160), OptionalInt.of(1), OptionalInt.of(20), none, OptionalInt.of(30), none),
                LoopFigures.read(kit));
    }
}
