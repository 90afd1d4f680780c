package org.runbend.export.outline;

import org.runbend.export.drawing.Point;

/** Two ends of lines that do not meet, and how far they are apart, mm. */
record Gap(Point a, Point b) {
    double width() {
        return a.distance(b);
    }
}
