package org.runbend.optimizer.quote;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.runbend.catalog.product.Rate;

/**
 * Sums and tax as in the example invoices of EN 16931 that the repository ConnectingEurope/eInvoicing-EN16931 publishes under ubl/examples:
 * ubl-tc434-example2.xml and example5.xml at commit 0995d598, example3.xml and example6.xml at 1e4facf7, sample-discount-price.xml at
 * 7ce3772a. Amounts are theirs in hundredths: line net amounts (BT-131), document allowances and charges with their rate, and what
 * is asked of us: taxable amount and tax of each rate (BT-116, BT-117), and BT-106, BT-109, BT-110, BT-112.
 */
class TotalsTest {
    static Stream<Arguments> examples() {
        return Stream.of(
                // a tax of 365.125 becomes 365.13
                example(
                        "example2",
                        "2500:127300 1500:-396 1500:496 0:-2500 2500:18750",
                        "2500:10000",
                        "2500:10000",
                        "0:-2500:0 1500:100:15 2500:146050:36513",
                        143_650,
                        143_650,
                        36_528,
                        180_178),
                example(
                        "example3",
                        "2500:80000 1000:80000",
                        "",
                        "2500:10000",
                        "1000:80000:8000 2500:90000:22500",
                        160_000,
                        170_000,
                        30_500,
                        200_500),
                example(
                        "example5",
                        "2500:100000 2500:50000 1200:250000",
                        "2500:15000",
                        "2500:15000",
                        "1200:250000:30000 2500:150000:37500",
                        400_000,
                        400_000,
                        67_500,
                        467_500),
                example(
                        "example6",
                        "2500:100000 2500:50000 1200:250000",
                        "",
                        "",
                        "1200:250000:30000 2500:150000:37500",
                        400_000,
                        400_000,
                        67_500,
                        467_500),
                example("sample-discount-price", "2500:1212", "", "", "2500:1212:303", 1212, 1212, 303, 1515));
    }

    private static Arguments example(
            String name,
            String lines,
            String allowances,
            String charges,
            String taxes,
            long sum,
            long net,
            long tax,
            long gross) {
        return Arguments.of(name, lines, allowances, charges, taxes, sum, net, tax, gross);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("examples")
    void asPublished(
            String name,
            String lines,
            String allowances,
            String charges,
            String taxes,
            long sum,
            long net,
            long tax,
            long gross) {
        Totals totals = Totals.of(taxed(lines), taxed(allowances), taxed(charges));
        assertEquals(taxes, said(totals));
        assertEquals(sum, totals.lines());
        assertEquals(net, totals.net());
        assertEquals(tax, totals.tax());
        assertEquals(gross, totals.gross());
    }

    /** Rounded once a rate, not line by line: 3 x 0.33 at 20 % are 0.20 of tax, and not three times 0.07. */
    @Test
    void taxIsRoundedOnceForARate() {
        Totals totals = Totals.of(taxed("2000:33 2000:33 2000:33"), List.of(), List.of());
        assertEquals("2000:99:20", said(totals));
        assertEquals(119, totals.gross());
    }

    private static String said(Totals totals) {
        return String.join(
                " ",
                totals.taxes().stream()
                        .map(t -> t.rate().hundredths() + ":" + t.taxable() + ":" + t.tax())
                        .toList());
    }

    private static List<Taxed> taxed(String amounts) {
        List<Taxed> all = new ArrayList<>();
        for (String amount : amounts.isEmpty() ? new String[0] : amounts.split(" ", -1)) {
            String[] parts = amount.split(":", -1);
            all.add(new Taxed(Long.parseLong(parts[1]), new Rate(Integer.parseInt(parts[0]))));
        }
        return all;
    }
}
