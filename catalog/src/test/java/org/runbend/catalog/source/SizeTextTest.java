package org.runbend.catalog.source;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SizeTextTest {
    /** A foot is 304.8 mm, an inch 25.4 mm exactly (international yard and pound agreement of 1959). */
    @ParameterizedTest
    @CsvSource({
        "2600x1500, 2600, 1500",
        "2.6m x 1.5m, 2600, 1500",
        "260 cm X 150 cm, 2600, 1500",
        "2600 \u00d7 1500 mm, 2600, 1500",
        "8ft 6in x 5ft, 2590.8, 1524",
        "' 102in*59 1/2in ', 2590.8, 1511.3"
    })
    void twoLengths(String written, double first, double second) {
        assertEquals(Optional.of(new SizeText(first, second)), SizeText.parse(written));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "2600", "2600x", "x1500", "2600x1500x3", "axb", "2,6m x 1,5m", "2600 1500"})
    void isNone(String written) {
        assertEquals(Optional.empty(), SizeText.parse(written));
    }

    @Test
    void aSingleLength() {
        assertEquals(152.4, SizeText.length("6in").getAsDouble());
        assertEquals(true, SizeText.length("wide").isEmpty());
    }
}
