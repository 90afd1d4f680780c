package org.runbend.optimizer.plan;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.runbend.catalog.product.Labour;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * The work of cutting a kit's plates and mounting its coils.
 *
 * @param lengths different lengths of pieces
 * @param cuts cuts of the saw
 * @param stopSettings how often its stop is set
 * @param coilChanges coils mounted
 * @param seconds what that takes, if the catalog says so
 * @param cost of that time, minor units rounded up, if the catalog says what an hour costs
 */
public record SawWork(
        int lengths, int cuts, int stopSettings, int coilChanges, OptionalDouble seconds, OptionalLong cost) {
    private static final double HOUR = 3600;

    /** The work of a plan at a workshop's times. */
    public static SawWork of(Optional<Labour> labour, PlatePlan plates, CoilPlan coils) {
        int cuts = plates.sawCuts();
        int settings = plates.stopSettings();
        int changes = coils.coils().size();
        OptionalDouble seconds = labour.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(cuts * labour.get().cut()
                        + settings * labour.get().stopSetting()
                        + changes * labour.get().coilChange());
        OptionalLong hour = labour.map(Labour::hour).orElse(OptionalLong.empty());
        OptionalLong cost = hour.isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of((long) Math.ceil(seconds.getAsDouble() / HOUR * hour.getAsLong() - 1e-9));
        return new SawWork(plates.lengths().size(), cuts, settings, changes, seconds, cost);
    }
}
