package org.runbend.optimizer.heat.flow;

import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Pressure drop of a loop for a flow: dp = (f L/d + sum of K) rho v^2 / 2. Straights by Churchill 1977. Bends by White 1929 up to
 * the Reynolds number of Schmidt 1967, never under the friction of a straight pipe as long; above it by Rennels 2012. A valve
 * takes (Q / Kv)^2 rho / 1000 bar with Q in m3/h.
 *
 * <p>Height adds nothing: in a filled closed circuit what rises on one side falls on the other.
 */
public final class DarcyWeisbach {
    /** Losses of a flow in l/min, 0 or more. */
    public LoopLosses losses(LoopPath path, CoolantProperties coolant, double flow) {
        Within.range("flow", flow, 0, 100_000, "l/min");
        double bore = path.bore() / 1000;
        double velocity = flow / 60_000 / (Math.PI / 4 * bore * bore);
        double reynolds = coolant.density() * velocity * bore / coolant.viscosity();
        double friction = new Churchill1977().friction(reynolds, path.roughness() / path.bore());
        double head = coolant.density() * velocity * velocity / 2 / 1000;
        double bends = path.bends().stream()
                .mapToDouble(b -> b.count() * loss(b, path.bore(), reynolds, friction))
                .sum();
        double cubic = flow * 0.06 / path.kv();
        return new LoopLosses(
                flow,
                velocity,
                reynolds,
                friction,
                head * friction * path.straight() / path.bore(),
                head * bends,
                head * path.fittings(),
                100 * cubic * cubic * coolant.density() / 1000);
    }

    private static double loss(Bend bend, double bore, double reynolds, double friction) {
        double lengths = bend.length() / bore;
        if (reynolds <= new Schmidt1967().critical(bore, bend.radius())) {
            return lengths * Math.max(friction, new White1929().friction(reynolds, bore, bend.radius()));
        }
        double angle = Math.toRadians(bend.angle());
        double whole = Math.min(angle, Math.PI);
        double ratio = bend.radius() / bore;
        // What goes on round after half a turn is reckoned as pipe of the same bend, without another inlet.
        return new Rennels2012().loss(friction, whole, ratio) + friction * (angle - whole) * ratio;
    }
}
