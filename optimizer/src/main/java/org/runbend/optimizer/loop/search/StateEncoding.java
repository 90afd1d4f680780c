package org.runbend.optimizer.loop.search;

/**
 * How a state is packed into words: for each slot 0 if its link is unused, else 1 + the slot at the other end of the
 * same path piece; the port code in the top four bits of the first word. The form is canonical: equal states, equal
 * words.
 */
final class StateEncoding {
    /** Derived: four bits of 64 are the port code. */
    private static final int CODE_SHIFT = 60;

    private final int words;
    private final int[] word;
    private final int[] shift;
    private final long mask;

    StateEncoding(int slotCount) {
        int bits = 64 - Long.numberOfLeadingZeros(Math.max(1, slotCount));
        int perWord = CODE_SHIFT / bits;
        words = Math.max(1, (slotCount + perWord - 1) / perWord);
        mask = (1L << bits) - 1;
        word = new int[slotCount];
        shift = new int[slotCount];
        for (int slot = 0; slot < slotCount; slot++) {
            word[slot] = slot / perWord;
            shift[slot] = slot % perWord * bits;
        }
    }

    int words() {
        return words;
    }

    /** Slot at the other end of the piece, or -1 if the link is unused. */
    int mate(long[] state, int offset, int slot) {
        return (int) (state[offset + word[slot]] >>> shift[slot] & mask) - 1;
    }

    /** Sets the other end; -1 for unused. */
    void setMate(long[] state, int slot, int mate) {
        int w = word[slot];
        state[w] = (state[w] & ~(mask << shift[slot])) | ((long) (mate + 1) << shift[slot]);
    }

    static int code(long[] state, int offset) {
        return (int) (state[offset] >>> CODE_SHIFT);
    }

    static void setCode(long[] state, int code) {
        state[0] = (state[0] & ((1L << CODE_SHIFT) - 1)) | ((long) code << CODE_SHIFT);
    }

    /** Whether no link is used, whatever the port code. */
    boolean isEmpty(long[] state) {
        long any = state[0] & (1L << CODE_SHIFT) - 1;
        for (int w = 1; w < words; w++) {
            any |= state[w];
        }
        return any == 0;
    }
}
