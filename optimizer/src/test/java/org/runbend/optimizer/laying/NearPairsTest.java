package org.runbend.optimizer.laying;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** One place, one sentence. */
class NearPairsTest {
    @Test
    void neighboursAlongThePipeAreOnePlace() {
        String a = "loop A element 3 and loop A element 9: come within 80.00 mm, 135.00 mm asked, at (1.0, 2.0)";
        String b =
                "loop A element 4 and loop A element 9: parallel runs lie 70.00 mm apart, 145.50 mm asked, at (1.0, 2.0)";
        String c = "loop A element 10 and loop A element 5: come within 90.00 mm, 135.00 mm asked, at (3.0, 2.0)";
        String far = "loop A element 4 and loop A element 30: come within 100.00 mm, 135.00 mm asked, at (7.0, 2.0)";
        String edge = "loop A element 4: comes within 20.00 mm of the outline, 75.00 mm asked, at (1.0, 2.0)";
        assertEquals(List.of(edge, b, far), NearPairs.thinned(List.of(edge, a, b, c, far)));
    }
}
