package org.runbend.export.drafting;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.export.data.Stamp;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.setout.Datum;
import org.runbend.optimizer.setout.SetOut;

/**
 * Draws the floor with its loop in true size, seen from above: mm, x to the right, y up.
 *
 * <p>{@link Layer#PIPE} holds one open path a loop and nothing else; letters and signs are sized for an A4 page.
 */
public final class FloorDrafting {
    private static final int MOST_TRIALS = 4;
    private static final double TIGHT = 1.01;
    /** Names and titles of very many letters do not make the floor smaller without end. */
    private static final double MOST_GROWTH = 1.4;

    /** Texts stay within the nearest row of measures, mm of paper. */
    private static final double ROOM = 12;

    private final GrooveForm form;

    /** Draws everything. */
    public FloorDrafting() {
        this(GrooveForm.EDGE);
    }

    /** Draws the groove in a form of it. */
    public FloorDrafting(GrooveForm form) {
        this.form = form;
    }

    /** The drawing of a plan. */
    public Sheet draw(KitPlan plan) {
        return draw(plan, true);
    }

    /** The drawing of a plan for a page that says in its own words what {@link #caption} says; the floor gets their room. */
    public Sheet drawWithoutWords(KitPlan plan) {
        return draw(plan, false);
    }

    /** What a reader of the drawing has to know, sentence by sentence. */
    public static List<String> caption(KitPlan plan) {
        return TitleBlock.legend(plan);
    }

    /** The drawing at so many floor mm to a mm of paper, without title and notes, with the lines that all is measured from. */
    public Sheet drawToMarkOut(KitPlan plan, SetOut marks, double unit) {
        return best(plan, false, unit, Optional.of(marks.datum())).sheet();
    }

    private Sheet draw(KitPlan plan, boolean withTitle) {
        Extent floor = TrueArcs.of(Places.all(plan.job().floor().outline())).extent();
        double unit = Places.unit(floor);
        Draft draft = best(plan, withTitle, unit, Optional.empty());
        // letters are as large as promised on the page that the whole drawing fits, words and measures included
        double most = MOST_GROWTH * unit;
        for (int i = 0; i < MOST_TRIALS && draft.sheet().extent().mmPerPaperMm() > TIGHT * unit && unit < most; i++) {
            unit = Math.min(most, draft.sheet().extent().mmPerPaperMm());
            draft = draw(plan, withTitle, unit, Optional.empty(), draft.first());
        }
        return draft.strain() < Labels.ACROSS_TEXT
                ? draft.sheet()
                : best(plan, withTitle, unit, Optional.empty()).sheet();
    }

    /** What gets its name first; the rest has what room is left. */
    private enum First {
        WALLS,
        ENDS,
        PORT
    }

    /** A drawing and how far its names lie from what they name. */
    private record Draft(Sheet sheet, First first, double strain) {}

    /** In which order names find the nearest places differs from floor to floor: the best of a few is taken. */
    private Draft best(KitPlan plan, boolean withTitle, double unit, Optional<Datum> lines) {
        return Stream.of(First.values())
                .map(first -> draw(plan, withTitle, unit, lines, first))
                .min(Comparator.comparingDouble(Draft::strain))
                .orElseThrow();
    }

    private Draft draw(KitPlan plan, boolean withTitle, double unit, Optional<Datum> lines, First first) {
        Extent floor = TrueArcs.of(Places.all(plan.job().floor().outline())).extent();
        SheetBuilder sheet = new SheetBuilder(plan.job().title());
        Labels labels = new Labels(sheet);
        labels.keepIn(floor.grow(ROOM * unit));
        labels.mayTurn();
        Measures measures = new Measures(sheet, unit, plan.job());
        measures.draw(plan, floor);
        sheet.build().marks().forEach(measure -> labels.shun(measure.shape()));
        LoopMarks loops = new LoopMarks(sheet, labels, unit);
        FloorMarks floorMarks = new FloorMarks(sheet, labels, unit);
        floorMarks.keepClear(plan.job().floor());
        lines.ifPresent(l -> DatumLines.draw(sheet, labels, unit, l));
        loops.draw(plan, form);
        // a program that cuts in the order of the file has the pockets and holes before the part comes free
        HoleMarks.draw(sheet, plan);
        SensorMarks.draw(sheet, labels, plan);
        floorMarks.draw(plan.job().floor(), ReadBack.floor(plan.job()));
        Map<First, Runnable> names = new EnumMap<>(First.class);
        names.put(First.WALLS, () -> floorMarks.nameWalls(plan.job().floor()));
        names.put(First.ENDS, () -> loops.nameEnds(plan));
        names.put(First.PORT, () -> floorMarks.namePort(plan.job().floor()));
        names.remove(first).run();
        names.values().forEach(Runnable::run);
        floorMarks.nameThings(plan.job().floor());
        new WishMarks(sheet, labels, unit).draw(plan.job());
        measures.radii(plan.job(), labels);
        if (lines.isPresent()) {
            DatumLines.name(labels, unit, lines.get());
        } else {
            OriginMark.draw(sheet, labels, unit, plan.job());
        }
        SensorMarks.name(labels, unit, plan);
        loops.numberRuns(plan);
        loops.numberPlates(plan, lines.isPresent());
        if (!plan.isSound()) {
            sheet.add(Layer.TITLE, Text.level(floor.centre(), 9 * unit, Anchor.MIDDLE_CENTRE, Stamp.DO_NOT_CUT));
        }
        if (withTitle) {
            new TitleBlock(sheet, unit, form).draw(plan, floor);
        }
        return new Draft(sheet.build(), first, labels.strain());
    }
}
