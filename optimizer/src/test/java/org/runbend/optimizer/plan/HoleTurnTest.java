package org.runbend.optimizer.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;

class HoleTurnTest {
    private static Job job(String example) throws IOException {
        return JobReader.read(Path.of("..", "examples").resolve(example), Optional.empty());
    }

    /**
     * Camper, by hand: pipe 16 turns at 55; from its middle to the bottom of the floor 8 + 0.5 + 4.5 + 30 = 43 mm, so it begins
     * sqrt(2 x 55 x 43 - 43 x 43) = 53.675 before the axis. Its underside, radius 47, falls the 5 mm from 16 to 21 by
     * sqrt(47 x 47 - 42 x 42) = 21.095 after that: 32.580 before the axis.
     */
    @Test
    void camperByHand() throws IOException {
        HoleTurn turn = HoleTurn.of(job("camper.yaml")).orElseThrow();
        assertEquals(55, turn.radius(), 1e-9);
        assertEquals(53.675, turn.begin(), 5e-4);
        assertEquals(43, turn.drop(), 1e-6);
        assertEquals(32.580, turn.through(), 5e-4);
        assertEquals(12.602, HoleTurn.lean(job("camper.yaml")), 5e-4, "sin 12.602 degrees is (55 - 43) / 55");
    }

    /**
     * Sauna with its pipe turned up, by hand: pipe 12 turns at 60 through a cover of 12, 6 + 12 = 18 mm, so it begins sqrt(2 x 60 x 18 - 18
     * x 18) = 42.849 before the axis. Its far edge, radius 66, has risen the 24 mm to the cover's top after sqrt(66 x 66 - 42 x 42) =
     * 50.912: 8.06 beyond the axis, 9 in whole mm.
     */
    @Test
    void coverIsCutAsFarAsThePipeNeeds(@TempDir Path folder) throws IOException {
        Path examples = Path.of("..", "examples");
        Files.copy(examples.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        String sauna = Files.readString(examples.resolve("sauna-rest.yaml"));
        Path up = Files.writeString(folder.resolve("up.yaml"), sauna.replaceFirst("port: \\{", "port: {turn: up, "));
        Job job = JobReader.read(up, Optional.empty());
        assertTrue(HoleTurn.goesUp(job));
        assertEquals(42.849 + 6, job.slotLength(), 5e-4);
        assertEquals(9, HoleTurn.beyond(job), 1e-9);
        assertEquals(44.427, HoleTurn.lean(job), 5e-4, "sin 44.427 degrees is (60 - 18) / 60");
        assertEquals(Optional.empty(), HoleTurn.of(job), "nothing goes through the board");
    }

    /** The straight from the groove's bottom at the slot's end to the board's underside stays below the pipe all the way. */
    @Test
    void rampStaysClearOfThePipe() throws IOException {
        for (String example : new String[] {"camper.yaml", "closet.yaml", "cabin-boat.yaml", "sauna-rest.yaml"}) {
            Job job = job(example);
            Optional<HoleTurn> found = HoleTurn.of(job);
            if (found.isEmpty()) {
                continue;
            }
            HoleTurn turn = found.get();
            double outer = job.pipe().product().outer();
            double board = HoleTurn.boardThickness(job, job.build().orElseThrow());
            double slot = job.slotLength();
            double radius = turn.radius() - outer / 2;
            for (int i = 0; i <= 100; i++) {
                double x = turn.through() + (turn.begin() - turn.through()) * i / 100;
                double off = turn.begin() - x;
                double pipe = -outer - radius + Math.sqrt(radius * radius - off * off);
                double share = (slot - x) / (slot - turn.through());
                double ramp =
                        -job.groove().depth() - share * (board - job.groove().depth());
                assertTrue(ramp <= pipe + 1e-6, example + ": pipe " + pipe + ", ramp " + ramp + " at " + x);
            }
        }
    }
}
