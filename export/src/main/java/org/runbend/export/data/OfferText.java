package org.runbend.export.data;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.Totals;

/** An offer in words, alike on paper and terminal. */
public final class OfferText {
    private static final double HUNDREDTHS = 100;
    private static final double METRE = 1000;

    private final Catalog prices;

    /** Words in the currency of a catalog. */
    public OfferText(Catalog prices) {
        this.prices = prices;
    }

    /**
     * A line at the foot of a quotation.
     *
     * @param words what it says
     * @param amount in the catalog's currency; empty where there is none
     * @param strong whether it is a sum
     */
    public record Foot(String words, String amount, boolean strong) {}

    /** Sum, discount, sending, tax and what is due. */
    public List<Foot> foot(Quote quote) {
        Totals totals = quote.totals();
        List<Foot> foot = new ArrayList<>();
        foot.add(new Foot("Sum", money(totals.lines()), true));
        quote.discount()
                .ifPresent(d -> foot.add(new Foot(
                        "Less " + d.share() + (d.asked() ? " for this order" : " for an order of this size"),
                        money(-d.amount()),
                        false)));
        foot.add(sending(quote.sending()));
        quote.taxName().ifPresent(name -> {
            foot.add(new Foot("Net", money(totals.net()), true));
            totals.taxes()
                    .forEach(t -> foot.add(
                            new Foot(name + " " + t.rate() + " of " + money(t.taxable()), money(t.tax()), false)));
        });
        String due = quote.taxName().isPresent() ? "To pay" : "To pay, no tax reckoned";
        foot.add(new Foot(due, money(totals.gross()), true));
        return foot;
    }

    private Foot sending(Quote.Sending sending) {
        String weight = String.format(Locale.ROOT, "%.1f kg without packing", sending.weight());
        return switch (sending.how()) {
            case BY_WEIGHT -> new Foot("Sending, " + weight, money(sending.price()), false);
            case FREE -> new Foot("Sending, free for an order of this size, " + weight, money(0), false);
            case BY_ARRANGEMENT -> new Foot("Sending by arrangement, not in this sum, " + weight, "", false);
            case NOT_PRICED -> new Foot("Sending is not in this sum, " + weight, "", false);
        };
    }

    /** Whether kits are the better buy, and how sure that is. */
    public String verdict(KitChoice choice) {
        long saved = choice.madeToMeasure() - choice.price();
        String words = saved > 0
                ? "Standard kits with what is added come to " + prices.money(saved)
                        + " less than the kit made to measure"
                : saved == 0
                        ? "Standard kits with what is added come to as much as the kit made to measure"
                        : "Made to measure is " + prices.money(-saved)
                                + " cheaper than standard kits with what is added";
        String proof = choice.isProvedLeast()
                ? "no other choice of our standard kits comes to less, plates being cut as planned"
                        + choice.platesAlone().map(p -> " or all of " + p).orElse("")
                : "no choice of our standard kits comes to less than " + prices.money(choice.bound());
        String plates = choice.platesAlone()
                .map(p -> ", the floor being plated with " + p + " alone")
                .orElse("");
        return words + plates + ", net, before discount and sending; " + proof + ".";
    }

    /** What a kit that costs less is without: what makes it cheaper is that nothing of it is made for this floor. */
    public Optional<String> givenUp(KitChoice choice) {
        return choice.isCheaper()
                ? Optional.of(
                        "What you give up for that: standard kits come as they are stocked. Their plates are whole and bear no names,"
                                + " so whoever fits the floor saws and marks the pieces by the cut sheet first.")
                : Optional.empty();
    }

    /** What of the kits this floor does not need. */
    public Optional<String> spare(KitChoice choice) {
        List<String> all = choice.spare().stream()
                .map(s -> s.quantity() + " x " + s.sku() + (s.length() > 0 ? " of " + length(s.length()) : ""))
                .toList();
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of("Of the kits this floor does not need: " + String.join(", ", all) + ".");
    }

    /** What an added thing is, with its length. */
    public String name(KitChoice.Added added) {
        return added.length() > 0 ? added.name() + ", " + added.unit() + " of " + length(added.length()) : added.name();
    }

    private static String length(long hundredths) {
        double mm = hundredths / HUNDREDTHS;
        return mm >= 10 * METRE ? Plain.number(mm / METRE) + " m" : Plain.number(mm) + " mm";
    }

    private String money(long minor) {
        return prices.money(minor).bare();
    }
}
