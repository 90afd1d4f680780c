package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.choice.Aim;
import org.runbend.optimizer.choice.Alternative;
import org.runbend.optimizer.choice.Choice;
import org.runbend.optimizer.choice.KeyChange;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/**
 * The alternatives for programs: JSON, UTF-8, keys in a fixed order. Lengths in mm, shares from 0 to 1 but for {@code served} in
 * %, money in minor units. A figure is called and rounded as in the {@code kit.json} of the same plan.
 */
public final class AlternativesJson {
    /** The choice as JSON. */
    public byte[] bytes(Choice choice) {
        Job job = choice.alternatives().get(0).plan().job();
        try {
            JsonOut out = new JsonOut().open();
            out.text("job", job.title()).text("order", job.order()).text("units", "mm");
            out.text("currency", job.catalog().currency());
            out.text("heat", choice.hasHeat() ? "reckoned" : "not reckoned, so no plan is named warmest");
            out.list("alternatives", choice.alternatives(), a -> alternative(out, a));
            out.list("others", choice.others(), o -> {
                changes(out, o.changes());
                out.text("reason", o.reason());
            });
            return out.text("fingerprint", job.fingerprint()).close().finish();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void alternative(JsonOut out, Alternative a) throws IOException {
        KitPlan plan = a.plan();
        out.whole("number", a.number()).text("name", a.name());
        out.texts("bestAt", a.aims().stream().map(AlternativesJson::word).toList());
        out.text("why", a.why());
        changes(out, a.changes());
        out.whole("quarterBends", a.figures().bends());
        if (plan.isOnLattice()) {
            out.whole(
                    "leftOut",
                    sum(plan.loops().stream().map(l -> (long) l.leftOut()).toList()));
        }
        out.number("served", plan.served())
                .number(
                        "floorLength",
                        plan.loops().stream()
                                .mapToDouble(KitPlan.LoopPlan::floorLength)
                                .sum())
                .whole(
                        "cutLength",
                        sum(plan.loops().stream()
                                .map(KitPlan.LoopPlan::cutLength)
                                .toList()))
                .whole("pieces", plan.plates().pieces().size())
                .whole("stock", plan.plates().stock().size())
                .number("coverage", plan.plates().coverage())
                .number("weight", plan.weight())
                .whole("total", plan.total())
                .number("uneven", a.figures().uneven() / 1000.0)
                .text("fitsCoil", a.figures().fitsCoil() ? "yes" : "no");
        if (plan.heat().isPresent()) {
            out.number("upward", plan.heat().get().upward());
        }
        out.whole("minutes", a.figures().minutes());
        KitJson.work(out.open("work"), plan.work()).close();
    }

    private static long sum(List<Long> values) {
        return values.stream().mapToLong(v -> v).sum();
    }

    private static String word(Aim aim) {
        return aim.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static void changes(JsonOut out, List<KeyChange> changes) throws IOException {
        out.list("wishes", changes, w -> out.text("key", w.key()).text("value", w.value()));
    }
}
