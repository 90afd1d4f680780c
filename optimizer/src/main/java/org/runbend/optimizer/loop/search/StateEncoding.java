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
    private final int mateWords;
    private final int labelBits;

    /** A state of a frontier's links. */
    StateEncoding(Frontier frontier) {
        this(frontier.slotCount(), StraightPieces.labels(frontier.straightCost()));
    }

    /**
     * A state of so many links.
     *
     * @param labels how many labels a link may have beside its mate; 0 for none
     */
    StateEncoding(int slotCount, int labels) {
        int bits = 64 - Long.numberOfLeadingZeros(Math.max(1, slotCount));
        int perWord = CODE_SHIFT / bits;
        mateWords = Math.max(1, (slotCount + perWord - 1) / perWord);
        labelBits = labels == 0 ? 0 : 32 - Integer.numberOfLeadingZeros(labels - 1);
        words = mateWords + (labels == 0 ? 0 : (slotCount + labelsPerWord() - 1) / labelsPerWord());
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

    private int labelsPerWord() {
        return 64 / labelBits;
    }

    /** Label of an open link; 0 if it has none. */
    int label(long[] state, int offset, int slot) {
        int shift = slot % labelsPerWord() * labelBits;
        return (int) ((state[offset + mateWords + slot / labelsPerWord()] >>> shift) & ((1L << labelBits) - 1));
    }

    /** Sets the label of an open link; 0 for none. */
    void setLabel(long[] state, int slot, int label) {
        int shift = slot % labelsPerWord() * labelBits;
        int w = mateWords + slot / labelsPerWord();
        state[w] = (state[w] & ~(((1L << labelBits) - 1) << shift)) | ((long) label << shift);
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
