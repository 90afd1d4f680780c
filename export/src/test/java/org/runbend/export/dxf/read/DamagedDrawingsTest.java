package org.runbend.export.dxf.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Drawings spoiled by the line and by the byte: each is read or refused in one line, at once. {@code
 * -Dfuzz.drawings=N} says how many, {@code -Dfuzz.drawing=N} runs that one alone.
 */
class DamagedDrawingsTest {
    private static final int CASES = Integer.getInteger("fuzz.drawings", 1000);
    private static final long MOST_SECONDS = 10;
    private final DamagedDrawings drawings = new DamagedDrawings();

    @Test
    void wholeOnesAreRead() {
        for (byte[] file : DamagedDrawings.whole()) {
            assertTrue(new DxfReader().read(file, Optional.empty()).entities().size() > 8);
        }
    }

    @Test
    void eachIsReadOrRefusedInOneLine() {
        Long only = Long.getLong("fuzz.drawing");
        long first = only == null ? 0 : only;
        int read = 0;
        int refused = 0;
        for (long n = first; n < first + (only == null ? CASES : 1); n++) {
            byte[] file = drawings.spoiled(n);
            long start = System.nanoTime();
            Optional<String> fault = fault(file, n);
            assertTrue(System.nanoTime() - start < MOST_SECONDS * 1_000_000_000L, "case " + n + " is slow");
            fault.ifPresent(f -> assertTrue(f.lines().count() == 1 && f.length() < 300, f));
            read += fault.isEmpty() ? 1 : 0;
            refused += fault.isPresent() ? 1 : 0;
        }
        assertTrue(
                only != null || (read > CASES / 20 && refused > CASES / 20), read + " read, " + refused + " refused");
    }

    @Test
    void aNumberGivesTheSameCase() {
        assertEquals(Arrays.hashCode(drawings.spoiled(7)), Arrays.hashCode(drawings.spoiled(7)));
    }

    private static Optional<String> fault(byte[] file, long n) {
        try {
            new DxfReader().read(file, Optional.empty());
            return Optional.empty();
        } catch (DxfFault e) {
            return Optional.of(e.getMessage());
        } catch (RuntimeException | Error e) {
            throw new AssertionError("case " + n, e);
        }
    }
}
