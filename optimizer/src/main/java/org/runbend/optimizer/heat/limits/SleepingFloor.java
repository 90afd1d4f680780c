package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.output.HottelWhillierBliss;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.output.StripOutput;

/**
 * Steady temperature of a floor's top under a mattress of 1 m2 K/W with the valve stuck open and the highest supply everywhere, by the
 * fin method. Skin burns at 43 degrees C over eight hours (ISO 13732-1, from memory), and a sleeper does not move away in time: warn
 * from 35, fail from 40 degrees C (our choice).
 */
public final class SleepingFloor {
    /** A mattress, m2 K/W (our choice). */
    public static final double MATTRESS = 1;

    /** Warn from here, degrees C (our choice). */
    public static final double WARN = 35;

    /** Fail from here, degrees C (our choice). */
    public static final double FAIL = 40;

    /** The temperature under the mattress. */
    public SleepingSolution solve(SleepingProblem problem) {
        FinProblem f = problem.floor();
        Stack under = f.stack().under(MATTRESS);
        StripOutput s = new HottelWhillierBliss()
                .solve(new FinProblem(under, f.pipe(), f.plate(), f.left(), f.right(), f.contact()));
        double over = MATTRESS + 1 / under.surface();
        double slope = s.up() * s.peak() * over;
        double still = problem.room() + s.exchange() * (problem.outside() - problem.room()) * over;
        return new SleepingSolution(still + slope * (problem.supply() - problem.room()), slope);
    }
}
