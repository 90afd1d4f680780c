package org.runbend.export.cli;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.SourceFile;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.read.DrawingUnit;
import org.runbend.export.dxf.read.DxfFault;
import org.runbend.export.dxf.read.DxfReader;
import org.runbend.export.outline.DrawnLine;
import org.runbend.export.outline.LoopReading;
import org.runbend.export.outline.NoLoop;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.read.DrawingUnits;
import org.runbend.optimizer.job.read.LoopDrawings;

/** Brings loops out of DXF drawings for the reader of job files. */
public final class DrawnLoops implements LoopDrawings {
    @Override
    public Found read(SourceFile file, String layer, Optional<DrawingUnits> unit) {
        try {
            Optional<DrawingUnit> wished = unit.map(u -> DrawingUnit.valueOf(u.name()));
            DrawnLine line = LoopReading.read(new DxfReader().read(file.bytes(), wished), layer, wished);
            return new Found(loop(line.vertices()), line.unit().mm(), line.remarks());
        } catch (DxfFault e) {
            throw new BadInput(Fault.ofFile(file.name(), e.reason()));
        } catch (NoLoop e) {
            throw new BadInput(Fault.ofFile(file.name(), e.getMessage()));
        }
    }

    private static DrawnLoop loop(List<Vertex> vertices) {
        return new DrawnLoop(
                vertices.stream().map(v -> new Point(v.x(), v.y())).toList(),
                vertices.stream().limit(vertices.size() - 1L).map(Vertex::bulge).toList());
    }
}
