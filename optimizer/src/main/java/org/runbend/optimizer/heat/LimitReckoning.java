package org.runbend.optimizer.heat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.flow.AirCarrying;
import org.runbend.optimizer.heat.flow.StandingSolution;
import org.runbend.optimizer.heat.limits.DrinkingWater;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.limits.FrostProtection;
import org.runbend.optimizer.heat.limits.HighestSupply;
import org.runbend.optimizer.heat.limits.Iso13732;
import org.runbend.optimizer.heat.limits.SensorSetting;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.limits.SleepingFloor;
import org.runbend.optimizer.heat.limits.SurfaceLimit;

/** Holds a floor at work against its limits. */
final class LimitReckoning {
    private static final double LITTLE_MARGIN = 10;
    private static final String DEGREES = "degrees C";

    private final HeatProblem problem;
    private final SupplyLimits limits;
    private final HighestSupply.Answer highest;
    private final List<Finding> findings = new ArrayList<>();

    LimitReckoning(HeatProblem problem) {
        this.problem = problem;
        limits = new SupplyLimits(problem);
        double supply = problem.supply().temperature();
        highest = new HighestSupply().solve(limits.at(supply), supply);
    }

    HighestSupply.Answer highestSupply() {
        return highest;
    }

    HeatSolution.Hottest hottest() {
        return limits.hottest(problem.supply().temperature());
    }

    List<Finding> judge(FloorState state, StandingSolution standing) {
        surfaces();
        pipe();
        sleeping();
        sensor();
        flow(state);
        Supply supply = problem.supply();
        findings.add(new FrostProtection()
                .judge(
                        supply.mixture(),
                        supply.coldest(),
                        problem.surroundings().outside()));
        problem.circuit().walls().ifPresent(w -> findings.add(new DrinkingWater().judge(supply.mixture(), w)));
        findings.add(Finding.atLeast(
                "margin to boiling at least",
                standing.margin(),
                LITTLE_MARGIN,
                "K",
                Finding.Verdict.WARN,
                "Antoine and Raoult, from memory; 10 K are our choice"));
        findings.add(Finding.atMost(
                "supply to the floor at most what keeps every limit",
                supply.temperature(),
                highest.celsius(),
                DEGREES,
                Finding.Verdict.WARN,
                "the first limit to be passed is that of: " + highest.name()
                        + (supply.highest() > supply.temperature()
                                ? String.format(
                                        Locale.ROOT,
                                        "; the source can send %.0f, so the mixing valve must hold it down",
                                        supply.highest())
                                : "; mix it down or limit it")));
        return findings;
    }

    private void surfaces() {
        double supply = problem.supply().temperature();
        double surface = limits.surface(supply);
        SurfaceLimit limit = limits.surfaceLimit();
        findings.add(Finding.atMost(
                "hottest floor surface at most",
                surface,
                limit.celsius(),
                DEGREES,
                Finding.Verdict.WARN,
                limit.source()));
        if (problem.build().timber()) {
            findings.add(Finding.atMost(
                    "hottest timber surface at most",
                    surface,
                    SurfaceLimit.TIMBER.celsius(),
                    DEGREES,
                    Finding.Verdict.WARN,
                    SurfaceLimit.TIMBER.source()));
        }
        findings.add(Finding.atMost(
                "underside of the cover at most",
                limits.underside(supply),
                SupplyLimits.PLY_AND_GLUE,
                DEGREES,
                Finding.Verdict.WARN,
                "plywood and glue: our choice"));
    }

    private void pipe() {
        double highestSource = problem.supply().highest();
        problem.build()
                .pipeLimit()
                .ifPresent(p -> findings.add(Finding.atMost(
                        "highest supply at most what the pipe stands",
                        highestSource,
                        p,
                        DEGREES,
                        Finding.Verdict.FAIL,
                        "catalog")));
        findings.add(Finding.atMost(
                Finding.BARE_TAILS,
                highestSource,
                new Iso13732().threshold(1),
                DEGREES,
                Finding.Verdict.WARN,
                "ISO 13732-1, a minute's touch, from memory; lag or cover what is hotter"));
    }

    private void sleeping() {
        limits.sleeping(problem.supply().highest()).ifPresent(s -> {
            double celsius = s.underMattress();
            boolean said = problem.surroundings().sleeping() == Sleeping.YES;
            findings.add(new Finding(
                    "under a mattress with the valve stuck open at most",
                    celsius,
                    Finding.Side.AT_MOST,
                    SleepingFloor.WARN,
                    DEGREES,
                    celsius < SleepingFloor.WARN
                            ? Finding.Verdict.OK
                            : celsius >= SleepingFloor.FAIL && said ? Finding.Verdict.FAIL : Finding.Verdict.WARN,
                    "our choice: warn from 35, fail from 40; burns at 43 over eight hours (ISO 13732-1, from memory)"
                            + (said
                                    ? ""
                                    : "; heating.sleeping says whether somebody sleeps on it: yes fails from 40")));
        });
    }

    /** Set too high, a sensor lets the floor's top pass its limit; 30 to 36 degrees C at the plates is common practice. */
    private void sensor() {
        sensorSetting().ifPresent(s -> problem.circuit()
                .sensor()
                .ifPresent(given -> findings.add(Finding.atMost(
                        "setting of the floor sensor at most what keeps the floor's top",
                        given.setting(),
                        s.highest(),
                        DEGREES,
                        Finding.Verdict.WARN,
                        "limits of the floor's top and of the cover, through the layers (EN ISO 6946); 30 to 36 is"
                                + " common practice"))));
    }

    /** How high a sensor under a plate may be set; nothing where no plate is. */
    Optional<HeatSolution.Sensor> sensorSetting() {
        OptionalDouble peak = limits.overPlates();
        if (peak.isEmpty()) {
            return Optional.empty();
        }
        Optional<FloorSensor> given = problem.circuit().sensor();
        double hysteresis = given.map(FloorSensor::hysteresis).orElse(SensorSetting.USUAL_HYSTERESIS);
        SensorSetting setting = new SensorSetting(
                problem.build().stack(), problem.surroundings().room());
        double highest = setting.highest(limits.topLimit(), peak.getAsDouble(), SupplyLimits.PLY_AND_GLUE, hysteresis);
        return Optional.of(new HeatSolution.Sensor(
                highest, setting.top(given.map(FloorSensor::setting).orElse(highest)), hysteresis));
    }

    private void flow(FloorState state) {
        for (LoopHeat loop : state.loops()) {
            findings.add(Finding.atLeast(
                    "velocity in " + loop.name() + " at least what carries air along",
                    loop.losses().velocity(),
                    AirCarrying.LEAST,
                    "m/s",
                    Finding.Verdict.WARN,
                    "0.2 to 0.3 m/s, common practice"));
        }
        if (problem.supply().flow() instanceof FlowRequest.ByPump) {
            double most = state.loops().stream()
                    .mapToDouble(l -> l.losses().total())
                    .max()
                    .orElseThrow();
            // Pump and pipes meet where both are equal; the finding is whether they meet at all.
            findings.add(Finding.atLeast(
                    "flow that the pump pushes at least",
                    state.flow(),
                    needed(state),
                    "l/min",
                    Finding.Verdict.WARN,
                    String.format(
                            Locale.ROOT,
                            "pump curve of the catalog, %.1f kPa there; the flow at which the loops drop by 10 K",
                            most)));
        }
    }

    /** Flow at which all loops together drop by 10 K, l/min. */
    private static double needed(FloorState state) {
        double given = state.loops().stream()
                .mapToDouble(l -> l.upward() + l.downward())
                .sum();
        return Math.max(0, given / (10 * state.coolant().carried()));
    }
}
