package org.runbend.optimizer.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** The choice of plans on the floors of the examples. */
class ChoicePlannerTest {
    private static final Path EXAMPLES = Path.of("..", "examples");

    private static KitPlan asked(String example) {
        Job job = JobReader.read(EXAMPLES.resolve(example), Optional.empty());
        return new KitPlanner(Work.silent()).plan(job);
    }

    private static Choice choice(KitPlan asked) {
        return new ChoicePlanner(Work.silent()).choose(asked);
    }

    @ParameterizedTest
    @ValueSource(strings = {"camper.yaml", "sauna-rest.yaml", "ways-in/own-loop.yaml"})
    void noneIsDominatedAndEachIsSound(String example) {
        KitPlan asked = asked(example);
        Choice choice = choice(asked);
        List<Alternative> all = choice.alternatives();
        assertTrue(all.size() >= 2 && all.size() <= Choice.MOST, () -> "alternatives: " + all.size());
        for (int i = 0; i < all.size(); i++) {
            Alternative a = all.get(i);
            assertEquals(i + 1, a.number());
            assertFalse(a.aims().isEmpty());
            assertEquals(List.of(), KitVerifier.verify(a.plan()));
            assertFigures(a);
            assertNobodyBetter(a, all);
        }
        assertEquals(
                all.get(0).changes().isEmpty() ? Aim.AS_ASKED : Aim.BETTER_THAN_ASKED,
                all.get(0).aims().get(0));
        assertEquals(asked.job().fingerprint(), all.get(0).plan().job().fingerprint());
    }

    /** Each figure anew from the whole plan, the price from the lines of the box and pipe from the coils. */
    private static void assertFigures(Alternative a) {
        KitPlan plan = a.plan();
        assertEquals(
                plan.items().stream().mapToLong(i -> i.price() * i.quantity()).sum(),
                a.figures().price());
        double cut = plan.coils().coils().stream()
                .flatMap(c -> c.cuts().stream())
                .mapToDouble(c -> c.length())
                .sum();
        assertEquals(cut / 10, (double) a.figures().pipe(), 0.5);
        assertEquals(
                100 * plan.plates().plated() / plan.plates().straight(),
                a.figures().plated() / 10.0,
                0.051);
        assertEquals(
                plan.items().stream()
                        .mapToDouble(i -> i.weight() * i.quantity())
                        .sum(),
                a.figures().weight() / 10.0,
                0.051);
    }

    /** Compared here by hand, not by what chose them: someone is better in one figure at least, in each direction. */
    private static void assertNobodyBetter(Alternative a, List<Alternative> all) {
        for (Alternative other : all) {
            PlanFigures f = a.figures();
            PlanFigures o = other.figures();
            boolean better = f.bends() < o.bends()
                    || f.leftOut() < o.leftOut()
                    || f.served() > o.served()
                    || f.pipe() < o.pipe()
                    || f.plated() > o.plated()
                    || f.weight() < o.weight()
                    || f.price() < o.price()
                    || f.uneven() < o.uneven()
                    || (f.fitsCoil() && !o.fitsCoil());
            assertTrue(better || other.equals(a), () -> a.number() + " is in nothing better than " + other.number());
        }
    }

    /**
     * A rib and a circle without bends hold in each alternative, as the verifiers of each plan say; and where a coil is a
     * little short, fitting it is tried.
     */
    @Test
    void wishesOfTheJobHoldInEach(@TempDir Path folder) throws IOException {
        Files.copy(EXAMPLES.resolve("workshop.yaml"), folder.resolve("workshop.yaml"));
        Path job = Files.writeString(folder.resolve("job.yaml"), """
                job: Hut with a rib
                order: C-1
                catalog: workshop.yaml
                floor:
                  outline: [[0, 0], [2100, 0], [2100, 2100], [0, 2100]]
                  supports: [{name: rib, line: [[500, 0], [500, 2100]], width: 40, cross: square}]
                  port: {at: [0, 75]}
                layout: {leftOutPrice: 10, veto: [{noBend: [1050, 1050, 150]}]}
                pipe: {product: PX-16}
                plates: {product: [SP-1]}
                """);
        KitPlan asked = new KitPlanner(Work.silent()).plan(JobReader.read(job, Optional.empty()));
        Choice choice = choice(asked);
        assertTrue(choice.alternatives().size() >= 2);
        for (Alternative a : choice.alternatives()) {
            assertEquals(List.of(), KitVerifier.verify(a.plan()));
            assertEquals(
                    asked.job().layout().pipeRules(), a.plan().job().layout().pipeRules());
            assertNobodyBetter(a, choice.alternatives());
        }
        KeyChange fit = new KeyChange("layout.fit", "coil");
        assertTrue(
                asked.loops().get(0).cutLength() > 25_000,
                "14 x 14 places, 195 x 150 mm less bends, and 2000 mm of tails are over 25 m");
        assertTrue(choice.alternatives().stream().anyMatch(a -> a.changes().contains(fit))
                || choice.others().stream().anyMatch(o -> o.changes().contains(fit)));
    }

    @Test
    void aPlanOfTheWishesIsTheAlternative() {
        Choice choice = choice(asked("camper.yaml"));
        for (Alternative a : choice.alternatives()) {
            KitPlan again = new KitPlanner(Work.silent()).plan(a.plan().job());
            assertEquals(a.plan().loops(), again.loops());
            assertEquals(a.plan().items(), again.items());
        }
        assertFalse(choice.others().isEmpty());
    }

    @Test
    void dominatingNeedsOneBetterAndNoneWorse() {
        PlanFigures f = new PlanFigures(20, 0, 900, 2500, 700, 90, 30_000, 200, false);
        assertFalse(f.dominates(f));
        assertTrue(new PlanFigures(19, 0, 900, 2500, 700, 90, 30_000, 200, false).dominates(f));
        assertTrue(new PlanFigures(20, 0, 900, 2500, 700, 90, 30_000, 200, true).dominates(f));
        assertFalse(new PlanFigures(19, 0, 899, 2500, 700, 90, 30_000, 200, true).dominates(f));
        assertFalse(new PlanFigures(19, 1, 900, 2500, 700, 90, 30_000, 200, true).dominates(f));
    }
}
