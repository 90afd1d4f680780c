package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.runbend.export.data.Stamp;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;

/** Draws what stands under the floor: axes, title, what the drawing shows, cautions. */
public final class TitleBlock {
    /** How far under the floor it begins, mm of paper. */
    static final double BELOW = 26;

    /** Letters of a line of notes beside the title at least, and of one under it. */
    private static final int BESIDE = 48;

    private static final int UNDER = 66;

    private final SheetBuilder sheet;
    private final double unit;
    private final GrooveForm form;

    TitleBlock(SheetBuilder sheet, double unit, GrooveForm form) {
        this.sheet = sheet;
        this.unit = unit;
        this.form = form;
    }

    void draw(KitPlan plan, Extent floor) {
        Point corner = new Point(floor.minX(), floor.minY() - BELOW * unit);
        axes(corner.plus(0, -14 * unit));
        Point title = corner.plus(22 * unit, 0);
        List<String> lines = Wording.lines(plan.job().title());
        sheet.add(
                Layer.TITLE,
                lines.size() == 1
                        ? Text.level(title, 4 * unit, Anchor.TOP_LEFT, lines.get(0))
                        : new Paragraph(title, 4 * unit, lines));
        Point below = title.plus(0, -7.5 * unit - (lines.size() - 1) * Paragraph.PITCH * 4 * unit);
        Paragraph facts = new Paragraph(below, 2.5 * unit, facts(plan.job()));
        sheet.add(Layer.TITLE, facts);
        Paragraph notes = notes(plan, below, floor, facts);
        sheet.add(Layer.NOTE, notes);
    }

    /** Beside the title where the floor is wide enough, else under it. */
    private Paragraph notes(KitPlan plan, Point at, Extent floor, Paragraph facts) {
        double left = Math.max(floor.centre().x(), facts.extent().maxX() + 6 * unit);
        double height = 2.2 * unit;
        double beside = floor.maxX() + 6 * unit - left;
        double least = Text.roughWidth("x".repeat(BESIDE), height);
        double room = beside >= least ? beside : Math.max(floor.width(), Text.roughWidth("x".repeat(UNDER), height));
        List<String> lines = noteLines(plan).stream()
                .flatMap(l -> Wording.lines(l, room, height).stream())
                .toList();
        double right =
                new Paragraph(new Point(left, at.y()), height, lines).extent().maxX();
        Point place = right < floor.maxX() + 6 * unit
                ? new Point(left, at.y())
                : new Point(
                        floor.minX(), Math.min(facts.extent().minY(), floor.minY() - (BELOW + 14) * unit) - 4 * unit);
        return new Paragraph(place, height, lines);
    }

    private void axes(Point o) {
        double length = 13 * unit;
        sheet.add(Layer.NOTE, new Segment(o, o.plus(length, 0)));
        sheet.add(Layer.NOTE, new Arrow(o.plus(length, 0), 0, 3 * unit));
        sheet.add(Layer.NOTE, Text.level(o.plus(length + unit, 0), 2.5 * unit, Anchor.MIDDLE_LEFT, "x"));
        sheet.add(Layer.NOTE, new Segment(o, o.plus(0, length)));
        sheet.add(Layer.NOTE, new Arrow(o.plus(0, length), 90, 3 * unit));
        sheet.add(Layer.NOTE, Text.level(o.plus(unit, length), 2.5 * unit, Anchor.MIDDLE_LEFT, "y"));
    }

    private static List<String> facts(Job job) {
        List<String> lines = new ArrayList<>();
        lines.add("order " + job.order());
        lines.add(MachiningNotes.identity(job));
        job.customer().ifPresent(c -> lines.add("customer " + c));
        job.date().ifPresent(d -> lines.add("date " + d));
        lines.add("sizes in " + new TapeText(job).papers() + ", 1:1 in the DXF file");
        lines.add(job.catalog().workshop());
        return lines.stream().flatMap(l -> Wording.lines(l).stream()).toList();
    }

    private List<String> noteLines(KitPlan plan) {
        List<String> lines = new ArrayList<>(legend(plan));
        lines.addAll(new MachiningNotes(plan, form, sheet.build().marks()).lines());
        lines.add("Look under the floor before you drill or cut.");
        lines.add("Pressure-test the loop before it is covered.");
        return lines;
    }

    /** What the marks of the drawing mean. */
    static List<String> legend(KitPlan plan) {
        List<String> lines = new ArrayList<>();
        if (!plan.isSound()) {
            lines.add(Stamp.DO_NOT_CUT + ": " + failed(plan));
        }
        lines.add("seen from above, x to the right, y up");
        lines.addAll(HoleMarks.words(plan));
        TapeText tape = new TapeText(plan.job());
        KitPlan.LatticePlace lattice = plan.lattice();
        String turned = lattice.angle() == 0 ? "" : " at " + Decimals.of(lattice.angle(), 2) + " degrees";
        String radius = plan.isOnLattice() ? ", bend radius " : ", least bend radius ";
        lines.add("spacing " + tape.beside(lattice.spacing()) + turned + radius + tape.beside(plan.bendRadius())
                + " (centreline)");
        lines.add("arrows: direction of flow; numbers: runs in order of flow");
        if (plan.sensor().flatMap(s -> s.at()).isPresent()) {
            lines.add("line to the sensor: its conduit");
        }
        if (plan.loops().size() > 1) {
            lines.add(plan.loops().stream()
                    .map(l -> l.name() + " to " + l.outlet())
                    .collect(Collectors.joining(", ", "valve outlets: loop ", "")));
        }
        if (plan.loops().stream().anyMatch(l -> !l.bare().isEmpty())) {
            String side = tape.beside(lattice.spacing());
            lines.add("small crosses: places the loop leaves out, " + side + " by " + side + " each");
        }
        return lines;
    }

    private static String failed(KitPlan plan) {
        return plan.checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.FAIL)
                .map(PlanCheck::name)
                .collect(Collectors.joining(", "));
    }

    /** Sizes of a channel, mm. */
    static String channel(ChannelSize size) {
        return mm(size.width()) + " wide, " + mm(size.bendWidth()) + " at bends, " + mm(size.depth())
                + " deep, cutter dia " + mm(size.cutter());
    }

    private static String mm(double value) {
        return Decimals.of(value, 1);
    }
}
