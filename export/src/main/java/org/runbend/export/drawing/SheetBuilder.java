package org.runbend.export.drawing;

import java.util.ArrayList;
import java.util.List;

/** Collects the marks of a sheet. */
public final class SheetBuilder {
    private final String title;
    private final List<Mark> marks = new ArrayList<>();

    /** An empty sheet with a title. */
    public SheetBuilder(String title) {
        this.title = title;
    }

    /** Adds a shape to a layer. */
    public SheetBuilder add(Layer layer, Shape shape) {
        marks.add(new Mark(layer, shape));
        return this;
    }

    /** Tells programs something of the shape added last; formats that cannot say it leave it out. */
    public SheetBuilder annotate(List<String> notes) {
        Mark last = marks.remove(marks.size() - 1);
        marks.add(new Mark(last.layer(), last.shape(), notes));
        return this;
    }

    /** The box around what is there by now. */
    public Extent extent() {
        return build().extent();
    }

    /** The sheet as it is now. */
    public Sheet build() {
        return new Sheet(title, marks);
    }
}
