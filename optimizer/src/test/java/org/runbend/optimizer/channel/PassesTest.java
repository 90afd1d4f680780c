package org.runbend.optimizer.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Worked by hand; step-over of at most 40 % and layers of at most 50 % of the cutter's diameter are common practice. */
class PassesTest {
    /** Beside the middle (20 - 12) / 2 = 4 mm under 4.8; ring of (32 - 12) / 2 = 10 mm in thirds; 16.5 mm in layers under 6. */
    @Test
    void aCutterOfTwelveMillimetres() {
        assertEquals(new Passes(3, 4, 3, 10 / 3.0, 3, 5.5), Passes.of(new ChannelSize(17.5, 20, 16.5, 32, 12)));
    }

    /** Beside the middle (20 - 8) / 2 = 6 mm in halves under 3.2; ring of 12 mm in quarters; 16.5 mm in fives under 4. */
    @Test
    void aCutterOfEightMillimetres() {
        assertEquals(new Passes(5, 3, 4, 3, 5, 3.3), Passes.of(new ChannelSize(17.5, 20, 16.5, 32, 8)));
    }

    /** A cutter as wide as the groove, no pads: the centreline alone. */
    @Test
    void aCutterAsWideAsTheGroove() {
        assertEquals(new Passes(1, 0, 0, 0, 2, 6), Passes.of(new ChannelSize(17.5, 17.5, 12, 0, 17.5)));
    }
}
