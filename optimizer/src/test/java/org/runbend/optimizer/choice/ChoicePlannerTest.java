package org.runbend.optimizer.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.ToLongFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/** The choice of plans on the floors of the examples. */
class ChoicePlannerTest {
    private static final Path EXAMPLES = Path.of("..", "examples");

    private static KitPlan asked(String example) {
        return new KitPlanner(Work.silent()).plan(job(example));
    }

    private static Job job(String example) {
        return JobReader.read(EXAMPLES.resolve(example), Optional.empty());
    }

    private static Choice choice(KitPlan asked) {
        return new ChoicePlanner(Work.silent()).choose(asked);
    }

    @ParameterizedTest
    @ValueSource(strings = {"camper.yaml", "sauna-rest.yaml", "ways-in/own-loop.yaml"})
    void noneIsDominatedAndEachIsSound(String example) {
        KitPlan asked = asked(example);
        List<Choice> early = new ArrayList<>();
        Choice choice = new ChoicePlanner(Work.silent()).choose(asked, early::add);
        List<Alternative> all = choice.alternatives();
        assertGrows(early);
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
        assertBestAtTheirAims(all);
        if (asked.isOnLattice()) {
            all.forEach(a ->
                    assertEquals(asked.lattice().origin(), a.plan().lattice().origin(), "another lattice"));
        }
    }

    /** Whoever waits hears of a choice of two first, and then only of more. */
    private static void assertGrows(List<Choice> early) {
        assertFalse(early.isEmpty());
        int last = 1;
        for (Choice choice : early) {
            assertTrue(choice.alternatives().size() > last);
            last = choice.alternatives().size();
        }
    }

    /** Whoever is named best at something has no better beside it; with heat reckoned somebody is warmest, unless all are alike. */
    private static void assertBestAtTheirAims(List<Alternative> all) {
        Map<Aim, ToLongFunction<PlanFigures>> costs = Map.of(
                Aim.WARMEST,
                f -> -f.watts().orElseThrow(),
                Aim.LEAST_WORK,
                PlanFigures::minutes,
                Aim.LEAST_PRICE,
                PlanFigures::price,
                Aim.EVEN_HEAT,
                PlanFigures::uneven);
        costs.forEach((aim, cost) -> {
            long least = all.stream()
                    .mapToLong(a -> cost.applyAsLong(a.figures()))
                    .min()
                    .orElseThrow();
            long most = all.stream()
                    .mapToLong(a -> cost.applyAsLong(a.figures()))
                    .max()
                    .orElseThrow();
            List<Alternative> named =
                    all.stream().filter(a -> a.aims().contains(aim)).toList();
            assertEquals(least == most ? 0 : 1, named.size(), () -> aim + " is said of " + named.size());
            named.forEach(a -> assertEquals(least, cost.applyAsLong(a.figures()), () -> aim + ": " + a.name()));
        });
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
        assertEquals(
                plan.heat().orElseThrow().upward(), (double) a.figures().watts().orElseThrow(), 0.5);
        assertEquals(minutes(plan), (double) a.figures().minutes(), 0.51);
    }

    /** By the times of the example catalog, as its line labour has them: seconds; a quarter bend is 90 degrees, rounded. */
    private static double minutes(KitPlan plan) {
        List<Element> pipe = plan.loops().stream()
                .flatMap(l -> l.breakdown().elements().stream())
                .toList();
        int bends = pipe.stream()
                .filter(Element.Bend.class::isInstance)
                .mapToInt(e -> (int) Math.round(Math.abs(((Element.Bend) e).turn()) / 90))
                .sum();
        double metres = pipe.stream().mapToDouble(Element::length).sum() / 1000;
        double saw = 20 * plan.sawWork().cuts()
                + 60 * plan.sawWork().stopSettings()
                + 180 * plan.coils().coils().size();
        return (40 * bends + 30 * metres + 20 * plan.plates().pieces().size() + saw) / 60;
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
                    || f.minutes() < o.minutes()
                    || f.watts().orElse(0) > o.watts().orElse(0)
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

    /** What is known from planning is worked out again where it is not known, to the same end, on one thread as on more. */
    @Test
    void theSameWhetherItIsKnownOrNot() {
        Work work = new Work(Progress.SILENT, 2);
        KitPlan asked = new KitPlanner(work).plan(job("closet.yaml"));
        Choice known = new ChoicePlanner(work).choose(asked);
        Choice anew = new ChoicePlanner(new Work(Progress.SILENT, 1)).choose(asked);
        assertEquals(known.others(), anew.others());
        assertEquals(known.alternatives().size(), anew.alternatives().size());
        for (int i = 0; i < known.alternatives().size(); i++) {
            Alternative a = known.alternatives().get(i);
            Alternative b = anew.alternatives().get(i);
            assertEquals(a.name() + a.why() + a.wishWords(), b.name() + b.why() + b.wishWords());
            assertEquals(a.figures(), b.figures());
            assertEquals(a.plan().loops(), b.plan().loops());
            assertEquals(a.plan().items(), b.plan().items());
        }
        assertFalse(known.others().isEmpty());
    }

    @Test
    void dominatingNeedsOneBetterAndNoneWorse() {
        PlanFigures f = figures(20, 0, 900, false, 60, 150);
        assertFalse(f.dominates(f));
        assertTrue(figures(19, 0, 900, false, 60, 150).dominates(f));
        assertTrue(figures(20, 0, 900, true, 60, 150).dominates(f));
        assertTrue(figures(20, 0, 900, false, 59, 150).dominates(f));
        assertTrue(figures(20, 0, 900, false, 60, 151).dominates(f));
        assertFalse(figures(19, 0, 899, true, 60, 150).dominates(f));
        assertFalse(figures(19, 1, 900, true, 60, 150).dominates(f));
        assertFalse(figures(19, 0, 900, true, 61, 150).dominates(f));
        assertFalse(figures(19, 0, 900, true, 60, 149).dominates(f));
    }

    private static PlanFigures figures(int bends, int leftOut, long served, boolean fits, long minutes, long watts) {
        return new PlanFigures(
                bends, leftOut, served, 2500, 700, 90, 30_000, 200, fits, minutes, OptionalLong.of(watts));
    }

    /** Without its heat a plan can be best at all else. */
    @Test
    void nobodyIsWarmestWithoutHeat() {
        PlanFigures f = new PlanFigures(20, 0, 900, 2500, 700, 90, 30_000, 200, true, 60, OptionalLong.empty());
        assertFalse(Aim.WARMEST.admits(f));
        assertTrue(Aim.LEAST_WORK.admits(f) && Aim.LEAST_PRICE.admits(f) && Aim.FITS_COIL.admits(f));
    }
}
