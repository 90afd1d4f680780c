package org.runbend.catalog.product;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SalesTest {
    private static final Freight FREIGHT =
            new Freight(List.of(new Freight.Step(15, 1450), new Freight.Step(5, 890)), OptionalLong.of(100_000));

    private static final Sales SALES = new Sales(
            Optional.of(new Rate(2000)),
            "VAT",
            Sales.Lines.ITEMS,
            List.of(new Sales.Discount(80_000, new Rate(350)), new Sales.Discount(40_000, new Rate(200))),
            FREIGHT,
            30);

    /** Decimal arithmetic of the Java library, HALF_UP, is the other opinion; amounts of a quotation are not negative. */
    @Test
    void ratesRoundHalfUp() {
        Random random = new Random(16_931);
        for (int i = 0; i < 5000; i++) {
            long minor = random.nextInt(10_000_000);
            int hundredths = random.nextInt(10_001);
            long wanted = BigDecimal.valueOf(minor)
                    .multiply(BigDecimal.valueOf(hundredths))
                    .divide(BigDecimal.valueOf(10_000), 0, RoundingMode.HALF_UP)
                    .longValueExact();
            assertEquals(wanted, new Rate(hundredths).of(minor), () -> minor + " at " + hundredths);
        }
    }

    /** A half is lifted, also from a negative number: round of XPath 2.0, which the rules of EN 16931 are written with. */
    @ParameterizedTest
    @CsvSource({
        "2500, 146050, 36513",
        "2500, 2, 1",
        "2500, 1, 0",
        "2500, -2, 0",
        "0, 99, 0",
        "10000, 99, 99",
        "5, 1000, 1"
    })
    void halves(int hundredths, long minor, long wanted) {
        assertEquals(wanted, new Rate(hundredths).of(minor));
    }

    @ParameterizedTest
    @CsvSource({"0.055, 5.5 %, true", "0.2, 20 %, true", "0.08125, 8.12 %, false", "1, 100 %, true", "0, 0 %, true"})
    void ratesInWords(double share, String words, boolean exact) {
        assertEquals(words, Rate.ofShare(share).toString());
        assertEquals(exact, Rate.isExact(share));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "39999, 0", "40000, 200", "79999, 200", "80000, 350", "99999999, 350"})
    void theHighestSumReachedCounts(long sum, int hundredths) {
        assertEquals(new Rate(hundredths), SALES.discountOn(sum));
    }

    @ParameterizedTest
    @CsvSource({"0, 890", "5, 890", "5.001, 1450", "15, 1450"})
    void freightByWeight(double kilograms, long price) {
        assertEquals(price, FREIGHT.stepFor(kilograms).orElseThrow().price());
    }

    @Test
    void heavierIsNotPriced() {
        assertEquals(Optional.empty(), FREIGHT.stepFor(15.001));
        assertEquals(Optional.empty(), Freight.NONE.stepFor(0));
        assertEquals(true, FREIGHT.isFreeFor(100_000));
        assertEquals(false, FREIGHT.isFreeFor(99_999));
        assertEquals(false, Freight.NONE.isFreeFor(Long.MAX_VALUE));
    }

    @Test
    void refusesWhatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> new Rate(10_001));
        assertThrows(IllegalArgumentException.class, () -> new Rate(-1));
        assertThrows(IllegalArgumentException.class, () -> new Freight.Step(0, 100));
        assertThrows(
                IllegalArgumentException.class,
                () -> new StandardKit("K", "Kit", 1, 2, List.of(), List.of(), List.of()));
    }
}
