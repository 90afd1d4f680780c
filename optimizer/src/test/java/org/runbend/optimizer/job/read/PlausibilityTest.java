package org.runbend.optimizer.job.read;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.job.Job;

/** A number that is possible but seldom meant gets one sentence; a plain job gets none. */
class PlausibilityTest {
    private static final String MARKED =
            Jobs.GOOD.replace("  keepOut:", "  marks: [{edge: 0, text: door}, {edge: 1, text: cab}]\n  keepOut:");

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            at: [0, 75] | at: [0, 75] | ``
            [2400, 1500], [0, 1500] | [240, 1500], [0, 1500] | The side from [2400, 0] to [240, 1500] slants, and 2400 and 240 differ by a factor of 10: is one of them mistyped?
            [2400, 1500], [0, 1500] | [2400, 59.055], [0, 1500] | The side from [2400, 59.055] to [0, 1500] slants, and 59.055 and 1500 differ by a factor of 25.4: is one of them mistyped?
            at: [0, 75] | at: [-40, 75] | The port lies 40 mm outside the floor, beyond its wall: is it on the right side?
            at: [0, 75] | at: [700, 250] | The port lies in keep-out 'drain'.
            name: drain, circle: {centre: [700, 250], radius: 60}, clearance: 60 | name: seat, kind: bolt, point: [700, 250] | ``
            clearance: 60 | clearance: 4 | Keep-out 'drain': a clearance of 4 mm, counted to the middle of the pipe, would let the groove cut into it; 10 mm is taken, which leaves no air.
            circle: {centre: [700, 250], radius: 60}, clearance: 60 | kind: bolt, point: [700, 250], clearance: 12 | Keep-out 'drain': a clearance of 12 mm, counted to the middle of the pipe, would let the groove cut into it; 25 mm is taken, which leaves no air.
            name: drain, circle: {centre: [700, 250], radius: 60}, clearance: 60 | name: seat, kind: bolt, point: [700, 250], clearance: 50 | ``
            circle: {centre: [700, 250], radius: 60}, clearance: 60 | polygon: [[960, 0], [2400, 0], [2400, 1500], [960, 1500]] | Keep-outs with their clearance cover 61 % of the floor: are their sizes and clearances right?
            product: PX-16 | product: PX-16, tails: [9, 1100] | A tail of 9 mm is unusual: is its unit right (a number without unit is in the unit of the file)?
            product: PX-16 | product: PX-16, tails: [900, 90 m] | A tail of 90000 mm is unusual: is its unit right (a number without unit is in the unit of the file)?
            """)
    void oneSentence(String what, String with, String sentence) throws IOException {
        assertTrue(MARKED.contains(what), what);
        Job job = Jobs.read(folder, MARKED.replace(what, with));
        assertEquals(sentence.isEmpty() ? List.of() : List.of(sentence), job.warnings());
    }

    @Test
    void aFloorOfAHandsBreadthAndOneOfAStreetsLength() throws IOException {
        String bare = MARKED.replaceAll("(?m)^  (keepOut|  -|unheated).*\n", "");
        assertEquals(
                List.of(
                        "The floor measures 240 x 150 mm: were the sizes meant in centimetres (2400 x 1500 mm) or inches"
                                + " (6096 x 3810 mm)?"),
                Jobs.read(folder, bare.replace("2400", "240").replace("1500", "150"))
                        .warnings());
        assertEquals(
                List.of("The floor measures 12000 x 1500 mm: is one of its sizes too long by a factor of 10, or by 25.4"
                        + " for the inch?"),
                Jobs.read(folder, bare.replace("2400", "12000")).warnings());
    }

    @Test
    void spacingUnderThreeDiameters() throws IOException {
        Job job = Jobs.read(folder, MARKED);
        Job.Layout l = job.layout();
        Job.Layout tight = new Job.Layout(Job.Grid.free(47, l.edge()), l.aim());
        assertEquals(
                List.of("Spacing 47 mm is under three diameters of pipe PX-16 (16 mm): little floor is left between"
                        + " channels."),
                Plausibility.of(job.floor(), tight, job.pipe()));
    }

    /** With its port in the middle of a side a bare rectangle is its own mirror image; with the port at a corner it is not. */
    @ParameterizedTest
    @CsvSource({"'[0, 750]', true", "'[0, 75]', false", "'[1200, 0]', true"})
    void handednessNeedsAMarkWhereTheMirrorImageDiffers(String port, boolean same) throws IOException {
        String bare =
                Jobs.GOOD.replaceAll("(?m)^  (keepOut|  -|unheated).*\n", "").replace("[0, 75]", port);
        List<String> warnings = Jobs.read(folder, bare).warnings();
        assertEquals(same ? 0 : 1, warnings.size(), warnings.toString());
        assertTrue(same || warnings.get(0).contains("mirror image"), warnings.toString());
        assertEquals(1, Jobs.read(folder, Jobs.GOOD).warnings().size(), "the drain stands on one side only");
    }

    /**
     * By hand: the rectangle mirrors at y = 750 and at x = 1200. A mark at the middle of the side x = 2400 stays where it is at the
     * first, one at (600, 0) at neither, two of one word at (600, 0) and (1800, 0) change places at the second.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {edge: 1, text: cab} | true
            {point: [600, 0], text: door} | false
            {point: [600, 0], text: door}, {point: [1800, 0], text: door} | true
            {point: [600, 0], text: door}, {point: [1800, 0], text: window} | false
            """)
    void marksOnTheMirrorLineTellNothing(String marks, boolean warned) throws IOException {
        String text = Jobs.GOOD.replace("  keepOut:", "  marks: [" + marks + "]\n  keepOut:");
        List<String> warnings = Jobs.read(folder, text).warnings();
        assertEquals(warned ? 1 : 0, warnings.size(), warnings.toString());
        assertTrue(!warned || warnings.get(0).contains("its outline and marks do not"), warnings.toString());
    }

    /** A point on a straight side is no corner: the rectangle with its port in the middle of a side stays symmetric. */
    @Test
    void aPointOnAStraightSideChangesNothing() throws IOException {
        String bare = Jobs.GOOD
                .replaceAll("(?m)^  (keepOut|  -|unheated).*\n", "")
                .replace("[0, 75]", "[0, 750]")
                .replace("[2400, 0]", "[700, 0], [2400, 0]");
        assertEquals(List.of(), Jobs.read(folder, bare).warnings());
    }
}
