package org.runbend.optimizer.bare;

/** Why a part of the heated floor stays bare. */
public enum Reason {
    /** Its places hang on to the port's part of the floor by one place only, so a closed loop cannot go there and back. */
    JOINED_BY_ONE,
    /** No link leads from the port's part of the floor to its places. */
    NOT_JOINED,
    /** Nowhere on it does the centreline keep edge and clearances. */
    TOO_NARROW,
    /** The centreline could lie on it, but no place of the lattice does. */
    BETWEEN_PLACES,
    /** The bends that a loop needs there come too near to something. */
    NO_ARC,
    /** Neighbouring places differ in colour like the fields of a chessboard, and one colour is in excess. */
    COLOURS,
    /** Serving it takes more turns than it is worth to the job. */
    TURNS
}
