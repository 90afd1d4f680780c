package org.runbend.catalog.product;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;

/** Reads the terms that a workshop sells on. */
final class SalesReader {
    private static final int MOST = 100;

    private final int digits;

    /** A reader of amounts with so many decimals. */
    SalesReader(int digits) {
        this.digits = digits;
    }

    /** The terms, empty if something was wrong. */
    Optional<Sales> sales(YamlMap m) {
        Sales plain = Sales.PLAIN;
        Optional<Rate> tax = m.find("tax").map(SalesReader::rate);
        String taxName = m.get("taxName", YamlValue::text, plain.taxName());
        Sales.Lines lines = m.get("lines", v -> v.oneOf(Sales.Lines.class), plain.lines());
        List<Sales.Discount> discounts = m.each("discounts", MOST, "a list of discounts", this::discount);
        List<Freight.Step> steps = m.each("freight", MOST, "a list of weights and prices", this::step);
        OptionalLong free = m.find("freightFreeFrom")
                .map(v -> OptionalLong.of(v.money(digits)))
                .orElse(OptionalLong.empty());
        int days = m.get("validDays", v -> v.whole(1, 3650), plain.validDays());
        return m.make(() -> new Sales(tax, taxName, lines, discounts, new Freight(steps, free), days));
    }

    private Optional<Sales.Discount> discount(YamlValue value) {
        YamlMap m = value.map();
        long from = m.require("from", "the sum that it begins at").money(digits);
        Rate share = rate(m.require("share", "a share with %"));
        return m.make(() -> new Sales.Discount(from, share));
    }

    private Optional<Freight.Step> step(YamlValue value) {
        YamlMap m = value.map();
        double upTo = m.require("upTo", "the heaviest weight in kg").number(0, 10_000);
        long price = m.require("price", "what the customer pays").money(digits);
        return m.make(() -> new Freight.Step(upTo, price));
    }

    private static Rate rate(YamlValue value) {
        double share = value.share(0, 1);
        if (Double.isNaN(share)) {
            return Rate.NONE;
        }
        if (!Rate.isExact(share)) {
            value.wrong("a share of at most two decimals");
        }
        return Rate.ofShare(share);
    }
}
