package org.runbend.optimizer.quote;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.runbend.catalog.product.Rate;

/**
 * The sums at the foot of a quotation, in minor units: lines less what is allowed plus what is charged, then the tax, rounded half up once for
 * each rate and never anywhere else.
 *
 * <p>Source: EN 16931-1, rules BR-CO-10 to BR-CO-15 (sums of rounded amounts), BR-S-08 (taxable amount of a rate) and BR-CO-17 (its tax),
 * as the validation artefacts of ConnectingEurope/eInvoicing-EN16931 state them; two decimals there are a currency's own here.
 *
 * @param lines sum of the lines
 * @param allowances what is taken off
 * @param charges what is added
 * @param taxes by rate, the lowest first
 */
public record Totals(long lines, long allowances, long charges, List<TaxSum> taxes) {
    /** Copies the list. */
    public Totals {
        taxes = List.copyOf(taxes);
    }

    /**
     * The sums of amounts; none of them is rounded again.
     *
     * @param lines net amounts of the lines
     * @param allowances what is taken off, as positive amounts
     * @param charges what is added
     */
    public static Totals of(List<Taxed> lines, List<Taxed> allowances, List<Taxed> charges) {
        Map<Rate, Long> taxable = new TreeMap<>(Comparator.comparingInt(Rate::hundredths));
        Stream.concat(lines.stream(), charges.stream())
                .forEach(t -> taxable.merge(t.rate(), t.amount(), Math::addExact));
        allowances.forEach(t -> taxable.merge(t.rate(), -t.amount(), Math::addExact));
        List<TaxSum> taxes = new ArrayList<>();
        taxable.forEach((rate, amount) -> taxes.add(new TaxSum(rate, amount, rate.of(amount))));
        return new Totals(sum(lines), sum(allowances), sum(charges), taxes);
    }

    private static long sum(List<Taxed> amounts) {
        return amounts.stream().mapToLong(Taxed::amount).reduce(0, Math::addExact);
    }

    /** Before tax. */
    public long net() {
        return Math.addExact(Math.subtractExact(lines, allowances), charges);
    }

    /** The tax of all rates. */
    public long tax() {
        return taxes.stream().mapToLong(TaxSum::tax).reduce(0, Math::addExact);
    }

    /** With tax. */
    public long gross() {
        return Math.addExact(net(), tax());
    }

    /**
     * The tax at a rate.
     *
     * @param rate the rate
     * @param taxable what is taxed at it
     * @param tax rounded half up
     */
    public record TaxSum(Rate rate, long taxable, long tax) {}
}
