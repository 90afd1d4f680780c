package org.runbend.catalog.source;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
    /** kitten and sitting are the textbook pair; the others are counted by hand. */
    @ParameterizedTest
    @CsvSource({"kitten, sitting, 3", "spacing, spaceing, 1", "a, '', 1", "'', abc, 3", "flaw, lawn, 2", "same, same, 0"
    })
    void countsLetters(String a, String b, int distance) {
        assertEquals(distance, Nearest.distance(a, b));
        assertEquals(distance, Nearest.distance(b, a));
    }

    @Test
    void theFirstOfEqualsWins() {
        assertEquals(
                Optional.of("PX-12"),
                Nearest.of("px-13", List.of("PX-16", "PX-12", "PX-1").subList(1, 3)));
        assertEquals(Optional.of("PX-16"), Nearest.of("PX-61", List.of("PX-16", "PX-10", "PX-1X")));
        assertEquals(Optional.of("glycol-30"), Nearest.of("glycol", List.of("water", "glycol-30", "glycol-40")));
        assertEquals(Optional.empty(), Nearest.of("x", List.of()));
    }
}
