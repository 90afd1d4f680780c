package org.runbend.optimizer.setout;

import java.util.List;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * The two lines that everything is measured from, and how they are found on the floor. Both lie clear of walls and things all
 * along; distances beyond their crossing are negative.
 *
 * @param frame their crossing and direction
 * @param base where the base line begins and ends, from the crossing
 * @param square where the square line begins and ends, from the crossing
 * @param check how to see that they stand square
 * @param marks the crossing and the ends of both lines, each with its distances from walls or corners
 */
public record Datum(Frame frame, Reach base, Reach square, SquareCheck check, List<TapeSheet.Thing> marks) {
    /** Copies the list. */
    public Datum {
        marks = List.copyOf(marks);
    }

    /**
     * A part of a line.
     *
     * @param from mm, at most 0
     * @param to mm, at least 0
     */
    public record Reach(double from, double to) {
        /** mm. */
        public double length() {
            return to - from;
        }
    }

    /**
     * A right angle by three lengths: the sides of a triangle 3 : 4 : 5 (Pythagoras), and the longest diagonal there is.
     *
     * @param along leg on the base line, mm; negative on the far side of the crossing; 0 where there is no room for one
     * @param across leg on the square line, likewise
     * @param diagonal between the ends of the two legs, mm
     * @param endToEnd between the ends of the longer arms of both lines, mm
     */
    public record SquareCheck(double along, double across, double diagonal, double endToEnd) {}
}
