package org.runbend.optimizer.heat;

import java.util.List;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.output.FloorOutput;

/**
 * A floor at work, at one quality of contact.
 *
 * @param loops each loop
 * @param zones zones of all loops and the bare floor, each at its own coolant's mean
 * @param coolant at the mean temperature
 * @param flow through all loops, l/min
 * @param pumpHead where a pump sets the flow, its head, kPa; else what the loops take
 * @param endOfCurve whether the pump would push more than its curve shows
 */
record FloorState(
        List<LoopHeat> loops,
        List<FloorOutput.ZoneOutput> zones,
        CoolantProperties coolant,
        double flow,
        double pumpHead,
        boolean endOfCurve) {
    double upward() {
        return zones.stream().mapToDouble(z -> z.upward() * z.zone().area()).sum();
    }

    double downward() {
        return zones.stream().mapToDouble(z -> z.downward() * z.zone().area()).sum();
    }

    double area() {
        return zones.stream().mapToDouble(z -> z.zone().area()).sum();
    }

    double surfaceMean() {
        return zones.stream()
                        .mapToDouble(z -> z.surfaceMean() * z.zone().area())
                        .sum()
                / area();
    }

    /** Mean temperature of what comes back, weighted by flow. */
    double back(double supply) {
        return flow == 0
                ? supply
                : loops.stream().mapToDouble(l -> l.back() * l.losses().flow()).sum() / flow;
    }
}
