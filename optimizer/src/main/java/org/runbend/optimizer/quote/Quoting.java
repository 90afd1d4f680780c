package org.runbend.optimizer.quote;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Freight;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.Sales;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;

/** Makes the quotation of a plan by the terms of its catalog. */
public final class Quoting {
    /**
     * The quotation.
     *
     * @param plan what is offered
     * @param asked discount asked for this order, which takes the place of the one by sum
     */
    public Quote quote(KitPlan plan, Optional<Rate> asked) {
        Sales sales = plan.job().catalog().sales();
        List<QuoteLine> lines = lines(plan, sales.lines());
        long sum = lines.stream().mapToLong(QuoteLine::amount).reduce(0, Math::addExact);
        Rate share = asked.orElseGet(() -> sales.discountOn(sum));
        Optional<Quote.Discount> discount = Optional.of(new Quote.Discount(share, share.of(sum), asked.isPresent()))
                .filter(d -> d.amount() > 0);
        long off = discount.map(Quote.Discount::amount).orElse(0L);
        Quote.Sending sending = sending(sales.freight(), plan.weight(), sum - off);
        return new Quote(
                sales.lines(),
                lines,
                discount,
                sending,
                sales.tax().map(t -> sales.taxName()),
                totals(sales.tax().orElse(Rate.NONE), lines, off, sending.price()),
                validity(sales.validDays(), plan.job()),
                Granted.of(plan),
                failed(plan));
    }

    private static List<QuoteLine> lines(KitPlan plan, Sales.Lines form) {
        if (form == Sales.Lines.LUMP_SUM) {
            return List.of(new QuoteLine(
                    plan.job().order(), "Floor-heating kit, " + plan.job().title(), 1, "kit", plan.total()));
        }
        return plan.items().stream()
                .map(i -> new QuoteLine(i.sku(), i.name(), i.quantity(), i.unit(), i.price()))
                .toList();
    }

    private static Quote.Sending sending(Freight freight, double weight, long net) {
        if (freight.isFreeFor(net)) {
            return new Quote.Sending(Quote.How.FREE, weight, 0);
        }
        if (freight.steps().isEmpty()) {
            return new Quote.Sending(Quote.How.NOT_PRICED, weight, 0);
        }
        return freight.stepFor(weight)
                .map(s -> new Quote.Sending(Quote.How.BY_WEIGHT, weight, s.price()))
                .orElse(new Quote.Sending(Quote.How.BY_ARRANGEMENT, weight, 0));
    }

    private static Totals totals(Rate tax, List<QuoteLine> lines, long discount, long freight) {
        return Totals.of(
                lines.stream().map(l -> new Taxed(l.amount(), tax)).toList(),
                List.of(new Taxed(discount, tax)),
                List.of(new Taxed(freight, tax)));
    }

    /** There is no clock: the job's own words for the day are taken as they are. */
    private static String validity(int days, Job job) {
        return days
                + (days == 1 ? " day" : " days")
                + job.date().map(d -> " from " + d).orElse(" from the day it reaches you");
    }

    private static List<String> failed(KitPlan plan) {
        return plan.checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.FAIL)
                .map(PlanCheck::name)
                .toList();
    }
}
