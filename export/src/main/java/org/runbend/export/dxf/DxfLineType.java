package org.runbend.export.dxf;

import java.util.List;

/** A line type: lengths of stroke, gap, stroke, gap ... in mm before the drawing's line type scale; empty is continuous. */
public record DxfLineType(String name, String description, List<Double> dashes) {
    /** Checks the name and copies. */
    public DxfLineType {
        DxfNames.check(name);
        dashes = List.copyOf(dashes);
    }
}
