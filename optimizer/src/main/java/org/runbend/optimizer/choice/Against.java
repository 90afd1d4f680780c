package org.runbend.optimizer.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Catalog;

/** Says in one sentence how a plan differs from the one asked: first what is better, then what is worse. */
final class Against {
    private final List<String> better = new ArrayList<>();
    private final List<String> worse = new ArrayList<>();

    private Against() {}

    /**
     * The sentence.
     *
     * @param plan figures of the plan
     * @param asked figures of the plan of the job as it is
     * @param prices the catalog of their prices
     */
    static String sentence(PlanFigures plan, PlanFigures asked, Catalog prices) {
        Against against = new Against();
        if (plan.watts().isPresent() && asked.watts().isPresent()) {
            long more = plan.watts().getAsLong() - asked.watts().getAsLong();
            against.say(more, 1, 0, " W", "more heat", "less heat");
        }
        against.say(asked.minutes() - plan.minutes(), 1, 0, " min", "less work", "more work");
        against.say(
                asked.bends() - plan.bends(),
                1,
                0,
                "",
                "fewer quarter bends (a return bend is two)",
                "more quarter bends (a return bend is two)");
        long saved = asked.price() - plan.price();
        against.say(saved, prices.money(Math.abs(saved)).toString(), "cheaper", "dearer");
        against.say(asked.uneven() - plan.uneven(), 10, 1, " %", "less uneven", "more uneven");
        against.say(plan.served() - asked.served(), 10, 1, " %", "more floor served", "less floor served");
        against.say(asked.leftOut() - plan.leftOut(), 1, 0, "", "fewer places left out", "more places left out");
        against.say(asked.pipe() - plan.pipe(), 100, 2, " m", "less pipe", "more pipe");
        against.say(
                plan.plated() - asked.plated(),
                10,
                1,
                " %",
                "more of the straight pipe in plates",
                "less of the straight pipe in plates");
        against.say(asked.weight() - plan.weight(), 10, 1, " kg", "lighter", "heavier");
        return against.sentence();
    }

    private void say(long gain, int scale, int digits, String unit, String good, String bad) {
        if (gain != 0) {
            String number = String.format(Locale.ROOT, "%." + digits + "f", Math.abs(gain) / (double) scale);
            say(gain, number + unit, good, bad);
        }
    }

    private void say(long gain, String amount, String good, String bad) {
        if (gain != 0) {
            (gain > 0 ? better : worse).add(amount + " " + (gain > 0 ? good : bad));
        }
    }

    private String sentence() {
        if (better.isEmpty() && worse.isEmpty()) {
            return "The figures of the plan asked, with another loop.";
        }
        String gains = better.isEmpty() ? "nothing better" : String.join(", ", better);
        return "Against the plan asked: " + gains + (worse.isEmpty() ? "" : "; but " + String.join(", ", worse)) + ".";
    }
}
