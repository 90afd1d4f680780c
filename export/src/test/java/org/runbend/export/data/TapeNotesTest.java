package org.runbend.export.data;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.runbend.catalog.source.Unit;
import org.runbend.export.DemoPlan;
import org.runbend.optimizer.job.Job;

/** An inch is 25.4 mm (international inch, 1959); fractions to a sixteenth by hand. */
class TapeNotesTest {
    private static TapeText tape(Unit unit) {
        Job j = DemoPlan.plan().job();
        return new TapeText(new Job(
                j.heading(),
                j.supply(),
                j.floor(),
                j.layout(),
                j.pipe(),
                j.plates(),
                j.build(),
                j.heating(),
                new Job.Source(
                        j.fingerprint(), List.of(), List.of(), new Job.Written(unit, List.of(), List.of(), false))));
    }

    @Test
    void notesOfAJobInInches() {
        TapeText inches = tape(Unit.IN);
        assertEquals(
                "at [254, 127] mm (10\", 5\") a gap of 63.5 mm (2 1/2\")",
                inches.note("at [254, 127] a gap of 63.5 mm"));
        assertEquals(
                "With edge 2 in (50.8 mm) instead of 3 in (76.2 mm) a loop can reach 4 places more.",
                inches.note("With edge 50.8 instead of 76.2 a loop can reach 4 places more."));
        assertEquals("3.05 m (10.0 ft) are new", inches.note("3.05 m are new"));
        assertEquals("1190 (46 7/8\")", inches.beside(1190));
        assertEquals("0.5 (0.02\")", inches.beside(0.5), "half a millimetre is not nothing");
        assertEquals("0 (0\")", inches.beside(0));
        assertEquals("3.05 m (10.0 ft)", inches.metres(3050));
    }

    @Test
    void notesOfAJobInMillimetresStay() {
        String note = "at [254, 127] a gap of 63.5 mm; with edge 50 instead of 75";
        assertEquals(note, tape(Unit.MM).note(note));
        assertEquals("1190", tape(Unit.MM).beside(1190));
    }
}
