package org.runbend.export.data;

import java.io.IOException;
import java.util.Locale;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.Totals;

/** The quotation and the choice of standard kits in {@code kit.json}: money in minor units, rates and shares in percent, lengths in mm. */
final class OfferJson {
    private static final double PERCENT = 100;
    private static final double HUNDREDTHS = 100;

    private OfferJson() {}

    static void write(JsonOut out, Offer offer) throws IOException {
        quote(out, offer.quote());
        if (offer.kits().isPresent()) {
            kits(out, offer.kits().get());
        }
    }

    private static void quote(JsonOut out, Quote quote) throws IOException {
        out.open("quote").flag("firm", quote.isFirm()).text("lines", word(quote.form()));
        out.list("items", quote.lines(), l -> out.text("sku", l.sku())
                .text("name", l.name())
                .whole("quantity", l.quantity())
                .text("unit", l.unit())
                .whole("price", l.price())
                .whole("amount", l.amount()));
        out.whole("sum", quote.totals().lines());
        if (quote.discount().isPresent()) {
            Quote.Discount discount = quote.discount().get();
            out.open("discount")
                    .number("share", discount.share().hundredths() / PERCENT)
                    .whole("amount", discount.amount())
                    .flag("asked", discount.asked())
                    .close();
        }
        out.open("sending")
                .text("how", word(quote.sending().how()))
                .number("weight", quote.sending().weight())
                .whole("price", quote.sending().price())
                .close();
        Totals totals = quote.totals();
        out.whole("net", totals.net()).text("taxName", quote.taxName());
        out.list("taxes", totals.taxes(), t -> out.number("rate", t.rate().hundredths() / PERCENT)
                .whole("taxable", t.taxable())
                .whole("tax", t.tax()));
        out.whole("tax", totals.tax()).whole("gross", totals.gross()).text("validity", quote.validity());
        out.texts("granted", quote.granted()).texts("failed", quote.failed()).close();
    }

    private static void kits(JsonOut out, KitChoice choice) throws IOException {
        out.open("kitChoice");
        out.list("kits", choice.kits(), k -> out.text("sku", k.kit().sku())
                .text("name", k.kit().name())
                .whole("count", k.count())
                .whole("price", k.kit().price()));
        out.list("coils", choice.coils(), c -> out.text("from", word(c.source()))
                .number("length", c.length() / HUNDREDTHS)
                .texts("loops", c.loops()));
        out.list("added", choice.added(), a -> {
            out.text("sku", a.sku()).text("name", a.name());
            length(out, a.length());
            out.whole("quantity", a.quantity()).text("unit", a.unit()).whole("price", a.price());
        });
        out.list("spare", choice.spare(), s -> {
            out.text("sku", s.sku());
            length(out, s.length());
            out.whole("quantity", s.quantity());
        });
        out.whole("price", choice.price())
                .whole("bound", choice.bound())
                .text("proof", choice.proof())
                .whole("madeToMeasure", choice.madeToMeasure())
                .text("platesAlone", choice.platesAlone())
                .close();
    }

    private static void length(JsonOut out, long hundredths) throws IOException {
        if (hundredths > 0) {
            out.number("length", hundredths / HUNDREDTHS);
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
