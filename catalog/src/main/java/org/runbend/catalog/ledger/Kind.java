package org.runbend.catalog.ledger;

import java.util.Arrays;
import java.util.Optional;

/** What a holding is. */
public enum Kind {
    /** Whole coils of pipe, by length. */
    COIL("coil", true),
    /** Whole spreader plates, by length. */
    PLATE("plate", true),
    /** Whole boards. */
    BOARD("board", false),
    /** Things that are counted. */
    ITEM("item", false),
    /** A coil with less than its full length, with an id of its own. */
    OPENED("opened", true),
    /** What is left of a plate and kept, with an id of its own. */
    OFFCUT("offcut", true);

    private final String word;
    private final boolean lengthy;

    Kind(String word, boolean hasLength) {
        this.word = word;
        this.lengthy = hasLength;
    }

    /** As commands, files and the ledger write it. */
    public String word() {
        return word;
    }

    /** As sentences say it. */
    public String words() {
        return this == OPENED ? "opened coil" : word;
    }

    /** Whether it has a length. */
    public boolean hasLength() {
        return lengthy;
    }

    /** Whether each piece has an id and a remaining length of its own. */
    public boolean isPiece() {
        return this == OPENED || this == OFFCUT;
    }

    /** What is left of it once something was cut from it. */
    public Kind rest() {
        return this == COIL || this == OPENED ? OPENED : OFFCUT;
    }

    /** The letter that numbers of such pieces begin with. */
    String letter() {
        return this == OPENED ? "C" : "O";
    }

    /** The kind of a word. */
    public static Optional<Kind> of(String word) {
        return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
    }
}
