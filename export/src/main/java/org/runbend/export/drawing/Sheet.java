package org.runbend.export.drawing;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;

/** A drawing: a title for its file and what is on it. Immutable. */
public record Sheet(String title, List<Mark> marks) {
    /** Copies the marks. */
    public Sheet {
        marks = List.copyOf(marks);
    }

    /** The box around all marks; the flat box at 0, 0 for an empty sheet. */
    public Extent extent() {
        return marks.stream()
                .map(mark -> mark.shape().extent())
                .reduce(Extent::union)
                .orElse(new Extent(0, 0, 0, 0));
    }

    /** Draws everything, layer by layer from the bottom up, within a layer in the order given. */
    public void drawOn(Backend backend) throws IOException {
        backend.begin(title, extent());
        drawMarksOn(backend);
        backend.end();
    }

    /** Draws the marks alone, in the same order, on a backend that has begun. */
    public void drawMarksOn(Backend backend) throws IOException {
        List<Mark> ordered = marks.stream()
                .sorted(Comparator.comparingInt(m -> backend.order().indexOf(m.layer())))
                .toList();
        for (Mark mark : ordered) {
            backend.notes(mark.notes());
            mark.shape().drawOn(backend, mark.layer());
        }
    }
}
