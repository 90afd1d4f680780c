package org.runbend.optimizer.heat;

import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.FloorMass;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.coolant.CoolantFilling;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.coolant.ExpansionSolution;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.flow.StandingSolution;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.limits.HighestSupply;
import org.runbend.optimizer.heat.need.DampSolution;
import org.runbend.optimizer.heat.need.NeedSolution;
import org.runbend.optimizer.heat.output.FloorOutput;
import org.runbend.optimizer.heat.output.TypeBSolution;

/**
 * What a floor does, needs and must not do.
 *
 * @param output heat and surface
 * @param loops each loop
 * @param flow of all loops
 * @param balance how to set the valves of several loops
 * @param filling coolant in the circuit
 * @param expansion from coldest to hottest
 * @param standing pressures at rest
 * @param need of the room, if its loss is known, at {@link #usedSupply}
 * @param damp metal under the floor, if there is some, at {@link #usedSupply}
 * @param mass what of the floor stores heat, as the warm-up has it
 * @param warmUp from cold, at {@link #usedSupply}
 * @param hottest floor at its hottest, as limits have it
 * @param circuit over time, if its source is known, at {@link #usedSupply}
 * @param stuck the circuit over time with its valve stuck open and nothing mixed; where that differs from {@code circuit}
 * @param sensor how a floor sensor may be set, where there are plates
 * @param findings numbers held against limits
 * @param highestSupply that keeps every limit
 * @param held what the floor does at the highest whole degree that keeps every limit, where the supply asked breaks one; empty too where
 *     no supply warmer than the room keeps them
 * @param notes what a person must know, one sentence each
 * @param assumptions what was taken for what nobody gave, one sentence each
 */
public record HeatSolution(
        Output output,
        List<LoopHeat> loops,
        Flow flow,
        Optional<BalanceSolution> balance,
        CoolantFilling filling,
        ExpansionSolution expansion,
        StandingSolution standing,
        Optional<NeedSolution> need,
        Optional<DampSolution> damp,
        FloorMass mass,
        WarmUp warmUp,
        Hottest hottest,
        Optional<CircuitRun> circuit,
        Optional<CircuitRun> stuck,
        Optional<Sensor> sensor,
        List<Finding> findings,
        HighestSupply.Answer highestSupply,
        Optional<Held> held,
        List<String> notes,
        List<String> assumptions) {
    /**
     * Heat and surface of the whole floor.
     *
     * @param area m2
     * @param upward into the room, W, with the usual contact
     * @param upwardLeast W, with 0.2 mm of air between pipe and plate
     * @param upwardMost W, with none
     * @param downward to the outside, W
     * @param surfaceMean degrees C
     * @param surfacePeak hottest spot, at the loop's begin and with good contact, degrees C
     * @param zones each kind of floor
     * @param standard EN 1264-2 type B for the longest plated strip, if there is one
     */
    public record Output(
            double area,
            double upward,
            double upwardLeast,
            double upwardMost,
            double downward,
            double surfaceMean,
            double surfacePeak,
            List<FloorOutput.ZoneOutput> zones,
            Optional<TypeBSolution> standard) {
        /** Copies the list. */
        public Output {
            zones = List.copyOf(zones);
        }
    }

    /**
     * Flow of all loops.
     *
     * @param volume l/min
     * @param supply degrees C
     * @param back mixed, degrees C
     * @param velocity greatest of the loops, m/s
     * @param pressureDrop greatest of the loops, kPa
     * @param pumpHead of the pump there; without a pump what the loops take, kPa
     * @param flushing flow through one loop that carries air out, l/min
     * @param coolant at the mean temperature
     * @param pipes head that the loops take over the flow, up to the pump's greatest head; empty without a pump
     */
    public record Flow(
            double volume,
            double supply,
            double back,
            double velocity,
            double pressureDrop,
            double pumpHead,
            double flushing,
            CoolantProperties coolant,
            List<PumpCurve.Point> pipes) {
        /** Copies the list. */
        public Flow {
            pipes = List.copyOf(pipes);
        }
    }

    /**
     * The hottest kind of floor with pipe that touches its plate and coolant as hot as the wall: surface = room + (up x peak x
     * (supply - room) + exchange x (outside - room)) / surface.
     *
     * @param up W/(m2 K)
     * @param exchange W/(m2 K)
     * @param peak hottest over mean excess of the surface
     * @param surface W/(m2 K)
     * @param celsius hottest surface at the supply, degrees C
     */
    public record Hottest(double up, double exchange, double peak, double surface, double celsius) {}

    /**
     * Setting of a floor sensor under a plate.
     *
     * @param highest that keeps the floor's top and the cover under their limits, degrees C at the sensor
     * @param top of the floor over the plates, degrees C, when the plates are at the job's setting, or at the highest one
     * @param hysteresis between on and off, K
     */
    public record Sensor(double highest, double top, double hysteresis) {}

    /**
     * What the floor does when its supply is held down, as {@link Output} has it.
     *
     * @param supply degrees C
     * @param upward W
     * @param upwardLeast W
     * @param upwardMost W
     * @param surfaceMean degrees C
     * @param surfacePeak degrees C
     */
    public record Held(
            double supply,
            double upward,
            double upwardLeast,
            double upwardMost,
            double surfaceMean,
            double surfacePeak) {}

    /** Whether the supply that was asked for breaks a limit. */
    public boolean isTooHot() {
        return flow.supply() > highestSupply.celsius();
    }

    /** Supply at which the floor may be used, degrees C: the one asked for, or what that is held down to. */
    public double usedSupply() {
        return held.map(Held::supply).orElse(flow.supply());
    }

    /** Heat into the room at {@link #usedSupply}, W. */
    public double usedUpward() {
        return held.map(Held::upward).orElse(output.upward());
    }

    /** Copies the lists. */
    public HeatSolution {
        loops = List.copyOf(loops);
        findings = List.copyOf(findings);
        notes = List.copyOf(notes);
        assumptions = List.copyOf(assumptions);
    }
}
