package org.runbend.export.papers;

import java.util.function.DoubleFunction;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Box;

/** Drawings whose letters keep their size on paper, however much the floor is reduced. */
final class TrueLetters {
    private static final int TRIES = 200;

    /** Room between a drawing and the frame of its box, mm in all. */
    private static final double ROOM = 2;

    private TrueLetters() {}

    /**
     * The largest scale at which floor and letters of true size fit, as mm of floor for a mm of paper; the last one tried where
     * letters alone are wider than the box.
     */
    static double unit(Box box, DoubleFunction<Sheet> drawing) {
        double unit = 1;
        for (int i = 0; i < TRIES; i++) {
            Extent e = drawing.apply(unit).extent();
            double over = Math.max(e.width() / (box.width() - ROOM), e.height() / (box.height() - ROOM)) / unit;
            if (over <= 1) {
                return unit;
            }
            unit *= Math.max(1.02, Math.min(over, 1.5));
        }
        return unit;
    }
}
