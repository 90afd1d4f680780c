package org.runbend.export.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.runbend.catalog.product.Catalog;
import org.runbend.export.data.OfferText;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.QuoteLine;

/** What a person reads on the terminal of an offer. */
final class OfferSummary {
    private static final int NAME = 62;

    private final PrintWriter out;
    private final KitPlan plan;
    private final Catalog prices;

    OfferSummary(PrintWriter out, KitPlan plan) {
        this.out = out;
        this.plan = plan;
        this.prices = plan.job().catalog();
    }

    /** The quotation on a line. */
    static String line(KitPlan plan, Quote quote) {
        return quote.isFirm()
                ? "Quotation: " + plan.job().catalog().money(quote.totals().gross())
                        + quote.taxName().map(t -> ", " + t + " included").orElse("") + ", for " + quote.validity()
                : "Quotation: no firm price, as a check fails";
    }

    void print(Offer offer) {
        OfferText words = new OfferText(prices);
        Quote quote = offer.quote();
        line("Quotation " + plan.job().order() + ", " + plan.job().title() + ", in " + prices.currency());
        if (!quote.isFirm()) {
            line("No firm price: the plan fails " + String.join("; ", quote.failed()) + ". DO NOT CUT.");
            return;
        }
        for (QuoteLine l : quote.lines()) {
            amount(
                    l.quantity() + " " + l.unit() + "  " + l.name(),
                    prices.money(l.amount()).bare());
        }
        words.foot(quote).forEach(f -> amount(f.words(), f.amount()));
        line("Holds for " + quote.validity() + ".");
        if (!plan.notSupplied().isEmpty()) {
            line("Not in the price: " + String.join("; ", plan.notSupplied()) + ".");
        }
        offer.kits().ifPresent(k -> kits(words, k));
    }

    private void kits(OfferText words, KitChoice choice) {
        line(words.verdict(choice));
        choice.kits()
                .forEach(k -> amount(
                        k.count() + " x  " + k.kit().sku() + ", " + k.kit().name(),
                        prices.money(k.kit().price() * k.count()).bare()));
        choice.added()
                .forEach(a -> amount(
                        "+ " + a.quantity() + " " + a.unit() + "  " + words.name(a),
                        prices.money(a.amount()).bare()));
        amount("Kits with what is added", prices.money(choice.price()).bare());
        words.spare(choice).ifPresent(this::line);
    }

    private void amount(String what, String amount) {
        String cut = what.length() <= NAME ? what : what.substring(0, NAME - 3) + "...";
        line(String.format(Locale.ROOT, "  %-" + NAME + "s %12s", cut, amount));
    }

    private void line(String text) {
        out.println(Terminal.plain(text).stripTrailing());
    }
}
