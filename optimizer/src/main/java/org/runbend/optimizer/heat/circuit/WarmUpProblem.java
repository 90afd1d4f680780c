package org.runbend.optimizer.heat.circuit;

import java.util.List;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A cold floor whose coolant warms as given.
 *
 * @param mass the floor
 * @param start temperature of the floor, degrees C
 * @param room degrees C
 * @param outside degrees C
 * @param coolant temperatures over time, minutes rising; straight between, the last one holds
 * @param minutes how long to look
 */
public record WarmUpProblem(
        FloorMass mass, double start, double room, double outside, List<Point> coolant, int minutes) {
    /** Coolant at a time. */
    public record Point(double minute, double celsius) {}

    /** Checks ranges. */
    public WarmUpProblem {
        coolant = List.copyOf(coolant);
        Within.range("temperature at the start", start, -80, 80, "degrees C");
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        Within.range("minutes", minutes, 1, 10_000, "");
        Within.rule(!coolant.isEmpty(), "warm-up: no temperature of the coolant is given");
        for (int i = 0; i < coolant.size(); i++) {
            Within.range("temperature of the coolant", coolant.get(i).celsius(), -80, 200, "degrees C");
            Within.rule(
                    i == 0 || coolant.get(i).minute() > coolant.get(i - 1).minute(),
                    "warm-up: minutes of the coolant must rise (point %s)",
                    i + 1);
        }
    }

    /** Coolant at a time, degrees C. */
    double coolantAt(double minute) {
        Point before = coolant.get(0);
        for (Point p : coolant) {
            if (minute <= p.minute()) {
                double span = p.minute() - before.minute();
                double share = span <= 0 ? 1 : (minute - before.minute()) / span;
                return share <= 0 ? before.celsius() : before.celsius() + share * (p.celsius() - before.celsius());
            }
            before = p;
        }
        return before.celsius();
    }
}
