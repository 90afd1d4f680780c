package org.runbend.optimizer.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.source.BadInput;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.HeatedLoop;
import org.runbend.optimizer.heat.PipeStrip;
import org.runbend.optimizer.heat.field.ConductionField;
import org.runbend.optimizer.heat.field.FieldSolution;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.quantity.OddInput;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plates.PlatePacking;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Work;

/** From real plans to heat: what goes over is the plan's own geometry. */
class HeatPartTest {
    @TempDir
    Path folder;

    /** Plans of examples, which are only read: one takes seconds. */
    private static final Map<String, KitPlan> PLANS = new ConcurrentHashMap<>();

    private static KitPlan plan(String example) {
        return PLANS.computeIfAbsent(example, e -> new KitPlanner(Work.silent())
                .plan(JobReader.read(Path.of("../examples", e), Optional.empty())));
    }

    @ParameterizedTest
    @ValueSource(strings = {"camper.yaml", "sauna-rest.yaml"})
    void lengthsAndAreasAreThoseOfThePlan(String example) throws IOException, BadInput {
        KitPlan plan = plan(example);
        HeatProblem problem =
                HeatPart.problem(plan.job(), plan.loops(), plan.plates()).orElseThrow();
        double pipe = problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .mapToDouble(PipeStrip::length)
                .sum();
        assertEquals(
                plan.loops().stream().mapToDouble(KitPlan.LoopPlan::floorLength).sum(), pipe, 1e-3);
        double plated = problem.loops().stream()
                .flatMap(l -> l.strips().stream())
                .filter(s -> s.kind() == FloorZone.Kind.PLATED)
                .mapToDouble(PipeStrip::length)
                .sum();
        assertEquals(plan.plates().plated(), plated, 1e-3);
        // The allowance is cut off, not filled; the path has what lies on the floor, to the port and to the valves.
        for (int i = 0; i < plan.loops().size(); i++) {
            HeatedLoop loop = problem.loops().get(i);
            assertEquals(
                    (double) plan.loops().get(i).cutLength(),
                    loop.path().length() * (1 + plan.job().pipe().allowance()),
                    1.5);
        }
    }

    @Test
    void aCamperIsReckoned() throws IOException, BadInput {
        KitPlan plan = plan("camper.yaml");
        HeatSolution heat = new HeatReckoning()
                .solve(HeatPart.problem(plan.job(), plan.loops(), plan.plates()).orElseThrow());
        assertTrue(heat.output().upward() > 100, () -> "" + heat.output());
        assertTrue(
                heat.output().surfacePeak() < plan.job().heating().orElseThrow().flow());
        List<PlanCheck> checks = HeatChecks.of(heat);
        assertTrue(plan.checks().containsAll(checks));
        assertEquals(List.of(), KitVerifier.verify(plan));
        assertTrue(checks.size() >= 5);
    }

    /** 70 % glycol by volume lies outside what is known of coolants: one line, no figures. */
    @Test
    void anUnknownCoolantIsOneLine() throws IOException, BadInput {
        String text = Files.readString(Path.of("../examples/workshop.yaml"))
                .replace(
                        "sku: propylene-glycol-40, name: Propylene glycol 40 %, base: propylene-glycol, share: 40%",
                        "sku: propylene-glycol-40, name: Propylene glycol 70 %, base: propylene-glycol, share: 70%");
        Files.writeString(folder.resolve("workshop.yaml"), text);
        Files.copy(Path.of("../examples/cabin-boat.yaml"), folder.resolve("job.yaml"));
        String job = Files.readString(folder.resolve("job.yaml")).replace("ethylene-glycol-40", "propylene-glycol-40");
        KitPlan plan = new KitPlanner(Work.silent())
                .plan(JobReader.read(Files.writeString(folder.resolve("job.yaml"), job), Optional.empty()));
        OddInput e = assertThrows(
                OddInput.class, () -> HeatPart.problem(plan.job(), plan.loops(), plan.plates(), HeatRequest.NONE));
        assertTrue(e.getMessage().contains("known up to 60 % by mass"), e.getMessage());
    }

    /** Between bare pipe and all plates: the answer is enough, and 15 % less coverage would not be. */
    @Test
    void platesAreChosenByHeat() throws IOException, BadInput {
        KitPlan plan = plan("cabin-boat.yaml");
        double none = AutoCoverage.cheapest(plan.job(), plan.loops(), 0).upward();
        AutoCoverage.Answer all = AutoCoverage.cheapest(plan.job(), plan.loops(), 1e6);
        assertTrue(!all.enough() && all.coverage() == 1);
        double wanted = (none + all.upward()) / 2;
        AutoCoverage.Answer answer = AutoCoverage.cheapest(plan.job(), plan.loops(), wanted);
        assertTrue(answer.enough() && answer.upward() >= wanted && answer.coverage() < 1);
        assertTrue(answer.plates().bought() < all.plates().bought());
        Job less = plan.job()
                .with(
                        plan.job().layout(),
                        plan.job().pipe(),
                        plan.job().plates().with(plan.job().plates().products(), answer.coverage() - 0.15));
        PlatePlan fewer = new PlatePacking()
                .pack(PlateComparing.problem(
                        less,
                        plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList()));
        assertTrue(new HeatReckoning()
                        .solve(HeatPart.problem(less, plan.loops(), fewer).orElseThrow())
                        .output()
                        .upward()
                < wanted);
    }

    /** The field of the real plan and the sum of its zones, two methods, agree on the heat within 12 % and on the mean within 0.5 K. */
    @ParameterizedTest
    @ValueSource(strings = {"camper.yaml", "sauna-rest.yaml", "cabin-boat.yaml"})
    void fieldAndZonesAgree(String example) throws IOException, BadInput {
        KitPlan plan = plan(example);
        HeatProblem problem =
                HeatPart.problem(plan.job(), plan.loops(), plan.plates()).orElseThrow();
        HeatSolution heat = new HeatReckoning().solve(problem);
        FieldSolution field = new ConductionField().solve(TemperaturePart.problem(plan, problem, heat));
        assertEquals(
                heat.output().upward(),
                field.balance().upward(),
                0.12 * heat.output().upward());
        assertEquals(heat.output().surfaceMean(), field.mean(), 0.5);
        assertEquals(
                field.balance().given(),
                field.balance().upward() + field.balance().downward(),
                0.005 * field.balance().given());
        assertTrue(
                field.peak() <= heat.output().surfacePeak() + 0.5,
                field.peak() + " " + heat.output().surfacePeak());
    }

    /** 50 mm of foam from sheets of 20, 30 and 40: 20 and 30; 45 mm are bought as 50. */
    @ParameterizedTest
    @ValueSource(doubles = {45, 50})
    void theThinnestStackIsBought(double asked) throws IOException, BadInput {
        Job job = JobReader.read(Path.of("../examples/camper.yaml"), Optional.empty());
        InsulationStack stack = InsulationStack.of(job.catalog(), asked).orElseThrow();
        assertEquals(50, stack.thickness());
        assertEquals("Extruded foam, 300 kPa, 30 + 20 mm", stack.words());
    }
}
