package org.runbend.optimizer.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.product.Labour;

class SawWorkTest {
    /**
     * Pieces of 350 and 100 mm from one plate of 1200 take two cuts and two stops, and there is one coil: 2 x 20 + 2 x 60 +
     * 180 = 340 s; at 42.00 an hour 340 / 3600 x 4200 = 396.7, rounded up.
     */
    @Test
    void timeAndCost() {
        Labour labour = new Labour(20, 60, 180, OptionalLong.of(4200));
        SawWork work = SawWork.of(Optional.of(labour), SoundKit.plates(), SoundKit.coils());
        assertEquals(2, work.lengths());
        assertEquals(2, work.cuts());
        assertEquals(2, work.stopSettings());
        assertEquals(1, work.coilChanges());
        assertEquals(340, work.seconds().orElseThrow());
        assertEquals(397, work.cost().orElseThrow());
    }

    @Test
    void withoutTimes() {
        SawWork work = SawWork.of(Optional.empty(), SoundKit.plates(), SoundKit.coils());
        assertTrue(work.seconds().isEmpty() && work.cost().isEmpty());
        Labour free = new Labour(20, 60, 180, OptionalLong.empty());
        assertTrue(SawWork.of(Optional.of(free), SoundKit.plates(), SoundKit.coils())
                .cost()
                .isEmpty());
    }
}
