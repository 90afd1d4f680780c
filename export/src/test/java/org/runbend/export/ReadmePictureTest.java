package org.runbend.export;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.job.JobReader;
import org.runbend.optimizer.plan.KitPlanner;
import org.runbend.optimizer.plan.Progress;

/**
 * The README's picture is what the tool draws today. When a change alters the drawing on purpose: look at the new picture,
 * then replace {@code examples/pictures/camper.svg} in the same commit.
 */
class ReadmePictureTest {
    @Test
    void camperIsDrawnAsApproved() throws IOException {
        Path examples = Path.of("..", "examples");
        var plan =
                new KitPlanner(Progress.SILENT).plan(JobReader.read(examples.resolve("camper.yaml"), Optional.empty()));
        String drawn = SvgBackend.svg(new FloorDrafting().draw(plan));
        assertEquals(Files.readString(examples.resolve("pictures/camper.svg")), drawn);
    }
}
