package org.runbend.optimizer.verify;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.runbend.catalog.product.Sales;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.QuoteLine;

/**
 * Holds a quotation against its plan and its catalog's terms, in decimals of the Java library; it shares no line with what makes quotations.
 *
 * <p>Rules: lines come to the box's price; the discount is the one asked or that of the sum; sending is priced as its weight and the sum say;
 * the tax is that of the net sum, rounded half up once; what is due is net and tax; a plan that fails has no firm price.
 */
public final class QuoteVerifier {
    private static final BigDecimal WHOLE = BigDecimal.valueOf(10_000);

    private QuoteVerifier() {}

    /** What is wrong; empty for a sound quotation. */
    public static List<Finding> verify(KitPlan plan, Quote quote) {
        Findings found = new Findings();
        Sales sales = plan.job().catalog().sales();
        long sum = 0;
        for (QuoteLine line : quote.lines()) {
            sum += line.price() * line.quantity();
        }
        found.unless(sum == plan.total(), "lines of %d in all, the box is priced at %d", sum, plan.total());
        long off = discount(sales, quote, sum, found);
        long freight = sending(sales, plan, quote, sum - off, found);
        long net = sum - off + freight;
        int rate = sales.tax().isPresent() ? sales.tax().get().hundredths() : 0;
        long tax = part(net, rate);
        found.unless(
                quote.totals().net() == net,
                "a net sum of %d, reckoned %d",
                quote.totals().net(),
                net);
        found.unless(
                quote.totals().tax() == tax,
                "a tax of %d, reckoned %d",
                quote.totals().tax(),
                tax);
        found.unless(
                quote.totals().gross() == net + tax,
                "a sum of %d, reckoned %d",
                quote.totals().gross(),
                net + tax);
        found.unless(
                quote.isFirm() == plan.isSound(),
                "a price is firm if the plan is sound: %s, %s",
                quote.isFirm(),
                plan.isSound());
        return found.all();
    }

    private static long discount(Sales sales, Quote quote, long sum, Findings found) {
        if (quote.discount().isEmpty()) {
            return 0;
        }
        Quote.Discount discount = quote.discount().get();
        long wanted = discount.amount();
        if (!discount.asked()) {
            int share = 0;
            for (Sales.Discount d : sales.discounts()) {
                share = sum >= d.from() ? d.share().hundredths() : share;
            }
            wanted = part(sum, share);
        }
        found.unless(
                discount.amount() == wanted
                        && wanted == part(sum, discount.share().hundredths()),
                "a discount of %d, the terms give %d",
                discount.amount(),
                wanted);
        return wanted;
    }

    private static long sending(Sales sales, KitPlan plan, Quote quote, long net, Findings found) {
        boolean free = sales.freight().freeFrom().isPresent()
                && net >= sales.freight().freeFrom().getAsLong();
        long wanted = 0;
        for (int i = sales.freight().steps().size() - 1; i >= 0 && !free; i--) {
            boolean within = plan.weight() <= sales.freight().steps().get(i).upTo();
            wanted = within ? sales.freight().steps().get(i).price() : wanted;
        }
        found.unless(
                quote.sending().price() == wanted,
                "sending at %d, the terms say %d",
                quote.sending().price(),
                wanted);
        return wanted;
    }

    private static long part(long amount, int hundredths) {
        return BigDecimal.valueOf(amount)
                .multiply(BigDecimal.valueOf(hundredths))
                .divide(WHOLE, 0, RoundingMode.HALF_UP)
                .longValueExact();
    }
}
