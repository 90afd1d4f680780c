package org.runbend.catalog.source;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lengths against hand conversion: 1 ft = 12 in, 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
class LengthTextTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            1650          | 1650
            1650 mm       | 1650
            1650mm        | 1650
            165 cm        | 1650
            1.65m         | 1650
            1.65 m        | 1650
            .5 m          | 500
            -75           | -75
            +75           | 75
            1.5e3         | 1500
            0             | 0
            -0            | 0
            63.5in        | 1612.9
            2 1/2 in      | 63.5
            3/8in         | 9.525
            1/64 in       | 0.396875
            1/3 in        | 8.466667
            5ft           | 1524
            5 ft          | 1524
            5ft 3in       | 1600.2
            5ft3in        | 1600.2
            5ft 3 3/8in   | 1609.725
            5ft 3/8in     | 1533.525
            -5ft 3 3/8in  | -1609.725
            5' 3 3/8"     | 1609.725
            5'            | 1524
            63 1/2"       | 1612.9
            5.5ft         | 1676.4
            """)
    void readsWhatPeopleWrite(String text, double mm) {
        assertEquals(mm, LengthText.parse(text, Unit.MM).orElseThrow(), 0.0);
    }

    @ParameterizedTest
    @CsvSource({"63.5, 1612.9", "63 1/2, 1612.9", "1/2, 12.7", "1612.9mm, 1612.9", "-3 1/4, -82.55"})
    void takesInchesWhereTheFileIsInInches(String text, double mm) {
        assertEquals(mm, LengthText.parse(text, Unit.IN).orElseThrow(), 0.0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "abc",
                "",
                "mm",
                "ft",
                "in",
                "1,65m",
                "1 650",
                "1650 km",
                "0x10",
                ".nan",
                ".inf",
                "Infinity",
                "NaN",
                "1_650",
                "5ft 14in",
                "5ft 12in",
                "2 5/2 in",
                "2.5 1/2 in",
                "1/0 in",
                "1/2",
                "5ft 3",
                "1e999",
                "1e99999999",
                "--5",
                "5ft -3in",
                "1650m m",
                "1.6.5",
                "21/2/3 in",
                "٣"
            })
    void refusesEverythingElse(String text) {
        assertTrue(LengthText.parse(text, Unit.MM).isEmpty(), text);
    }
}
