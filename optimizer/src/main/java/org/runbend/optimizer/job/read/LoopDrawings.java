package org.runbend.optimizer.job.read;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.SourceFile;
import org.runbend.optimizer.job.DrawnLoop;

/**
 * Brings a loop out of a drawing. The reader of job files knows no format but its own; whoever calls it hands in what reads
 * drawings.
 */
@FunctionalInterface
public interface LoopDrawings {
    /** For callers that have no drawings. */
    LoopDrawings NONE = (file, layer, unit) -> {
        throw new BadInput(Fault.ofFile(file.name(), "no drawings are read here"));
    };

    /**
     * The loop on a layer of a drawing.
     *
     * @param file the drawing's bytes
     * @param unit unit of its numbers, in place of what it says itself
     * @throws BadInput with one line that names the file, if there is no such loop
     */
    Found read(SourceFile file, String layer, Optional<DrawingUnits> unit);

    /**
     * A loop as it was found.
     *
     * @param loop the loop, mm
     * @param unit mm in one unit of the drawing, as it was read
     * @param remarks what a person should look at, one sentence each
     */
    record Found(DrawnLoop loop, double unit, List<String> remarks) {
        /** Copies the remarks. */
        public Found {
            remarks = List.copyOf(remarks);
        }
    }
}
