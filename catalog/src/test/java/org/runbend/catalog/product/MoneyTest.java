package org.runbend.catalog.product;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Decimals are the minor units of ISO 4217 list one (from memory): EUR 2, JPY and ISK 0, KWD, BHD and TND 3. */
class MoneyTest {
    @ParameterizedTest
    @CsvSource({
        "1250, EUR, 12.50 EUR",
        "5, EUR, 0.05 EUR",
        "-5, EUR, -0.05 EUR",
        "-1250, GBP, -12.50 GBP",
        "1250, JPY, 1250 JPY",
        "0, JPY, 0 JPY",
        "1250, ISK, 1250 ISK",
        "1250, KWD, 1.250 KWD",
        "7, BHD, 0.007 BHD",
        "1250, TND, 1.250 TND",
    })
    void words(long minor, String currency, String words) {
        assertEquals(words, new Money(minor, currency).toString());
    }

    /** The greatest amount a long can hold is not rounded. */
    @Test
    void exact() {
        assertEquals("92233720368547758.07", new Money(Long.MAX_VALUE, "EUR").bare());
    }
}
