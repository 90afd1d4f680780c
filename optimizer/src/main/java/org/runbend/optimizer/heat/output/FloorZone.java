package org.runbend.optimizer.heat.output;

import org.runbend.optimizer.heat.quantity.Within;

/**
 * A part of the floor that is built alike.
 *
 * @param kind what it is
 * @param area m2
 * @param output what it does
 * @param plate part number of the plate there; empty where there is none, or where nobody says which
 */
public record FloorZone(Kind kind, double area, StripOutput output, String plate) {
    /** Kinds of floor. */
    public enum Kind {
        /** Pipe in a plate. */
        PLATED("pipe in a plate"),
        /** Straight pipe without a plate. */
        GROOVE("pipe without a plate"),
        /** Bends. */
        BEND("bends"),
        /** Floor without pipe that was meant to be warm. */
        BARE("floor left bare"),
        /** Floor that needs no heat. */
        UNHEATED("unheated floor");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Words for a paper. */
        public String words() {
            return words;
        }
    }

    /** Checks the area. */
    public FloorZone {
        Within.range("area of " + kind.words(), area, 0, 1000, "m2");
    }

    /** A part whose plate, if it has one, needs no name. */
    public FloorZone(Kind kind, double area, StripOutput output) {
        this(kind, area, output, "");
    }

    /** Words for a paper, as in "pipe in a plate SP-1". */
    public String words() {
        return plate.isEmpty() ? kind.words() : kind.words() + " " + plate;
    }
}
