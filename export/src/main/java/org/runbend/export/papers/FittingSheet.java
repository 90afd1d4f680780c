package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import org.runbend.catalog.product.Item;
import org.runbend.catalog.product.PressureTest;
import org.runbend.export.data.CutList;
import org.runbend.export.data.KitJson;
import org.runbend.export.data.RunNames;
import org.runbend.export.data.Stamp;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.pdf.Align;
import org.runbend.export.pdf.Box;
import org.runbend.export.pdf.PageFormat;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.Placement;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.channel.Passes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.plan.HoleTurn;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.setout.SetOut;

/**
 * The paper from which a floor is marked out, routed and fitted, in the order of the work, with each caution before the step it
 * belongs to.
 */
public final class FittingSheet {
    private static final double SECTION_HIGH = 70;
    private static final double BAR = 100;
    private static final double HEAD = 26;
    private static final double FOOT = 19;
    /** What a run and its number need beside the next one on the drawing of the lines, mm of paper. */
    private static final double ROW = 5;

    /** Indent of a warning under its step, mm. */
    private static final double WARNED = 10;

    private static final String LINES =
            "In boxes at the ends of lines: their distance from the base line or the square line. Beside marks: running measures; a dashed line"
                    + " joins marks that share one. Small rings: centres of bends. Letters at corners: names of the walls.";

    private final KitPlan plan;
    private final Job job;
    private final SetOut marks;
    private final TapeText tape;
    private final MarkingOut out;
    private final BoardSteps boards;

    private FittingSheet(KitPlan plan, SetOut marks) {
        this.plan = plan;
        this.job = plan.job();
        this.marks = marks;
        tape = new TapeText(job);
        out = new MarkingOut(plan, marks);
        boards = new BoardSteps(plan);
    }

    /**
     * Drawings at so many floor mm to a mm of paper.
     *
     * @param floor the floor with its loop and the two lines
     * @param lines what is snapped and marked
     * @param sections cuts through the build-up, where the job gives it
     */
    public record Drawings(DoubleFunction<Sheet> floor, DoubleFunction<Sheet> lines, Optional<Sections> sections) {}

    /**
     * Cuts through the build-up, at so many mm to a mm of paper.
     *
     * @param runs across two runs with their plates
     * @param bendAndHole across a bend, and along the pipe at a hole where it goes down
     * @param layers what the numbers in them stand for
     */
    public record Sections(DoubleFunction<Sheet> runs, DoubleFunction<Sheet> bendAndHole, List<String> layers) {
        /** Copies the list. */
        public Sections {
            layers = List.copyOf(layers);
        }
    }

    /** The paper of a plan. */
    public static byte[] bytes(KitPlan plan, SetOut marks, Drawings drawings, PaperForm form) {
        return new FittingSheet(plan, marks).write(drawings, form);
    }

    private byte[] write(Drawings drawings, PaperForm form) {
        String name = "Fitting sheet " + job.order();
        View floor = View.of(form, drawings.floor());
        try (PdfDocument document = Letterhead.document(job, name, floor.format(), plan.isSound())) {
            PdfFlow flow = Letterhead.begin(document, job, name);
            flow.scaled(floor.sheet(), floor.scale());
            bar(flow);
            flow.paragraph(
                    "1 : " + Decimals.of(floor.scale(), 1)
                            + ", seen from above, sizes in " + tape.papers()
                            + ". Arrows show the flow. Numbers at pipes are runs along the flow, 1 is run A1; names on plates are written on the"
                            + " pieces. Dash-dotted rings: clearance of things for the middle of the pipe; dashed grey: not heated, pipe may"
                            + " cross; small crosses: left without pipe; crossed circle: where flow and return come up"
                            + (job.floor().below().isEmpty() ? "" : "; dashes with a name: what lies under the floor")
                            + (plan.sensor().isPresent() ? "; line to the sensor: its conduit" : "")
                            + ". O, X and Y: part 2.",
                    TextStyle.SMALL);
            lines(flow, drawings, form);
            flow.page(form.paper().upright());
            Steps steps = new Steps(flow);
            before(steps);
            out.lines(steps);
            out.holes(steps);
            out.running(steps);
            out.runs(steps);
            out.bends(steps);
            routing(steps, drawings);
            PipeSteps laying = new PipeSteps(plan, marks, out);
            plan.sensor().ifPresent(sensor -> laying.sensor(steps, sensor));
            plates(steps);
            laying.pipe(steps);
            test(steps);
            cover(steps);
            CoolantSteps coolant = new CoolantSteps(plan);
            coolant.filling(steps);
            coolant.running(steps);
            checks(flow);
            return document.toBytes();
        }
    }

    /** On one page, or on several where runs would lie too close on one for their numbers. */
    private void lines(PdfFlow flow, Drawings drawings, PaperForm form) {
        View whole = View.of(form, drawings.lines());
        double smallest = job.layout().spacing() / ROW;
        if (whole.scale() <= smallest) {
            flow.page(whole.format());
            flow.scaled(whole.sheet(), whole.scale());
            flow.paragraph("Lines to snap, 1 : " + Decimals.of(whole.scale(), 1) + ". " + LINES, TextStyle.SMALL);
            return;
        }
        PartedDrawing parted = PartedDrawing.of(form, drawings.lines(), smallest);
        for (int i = 0; i < parted.pages(); i++) {
            flow.page(parted.format());
            parted.draw(flow, i);
            flow.paragraph(
                    "Lines to snap, 1 : " + Decimals.of(parted.scale(), 1) + parted.words(i) + ". " + LINES,
                    TextStyle.SMALL);
        }
    }

    /** To measure whether the printer kept the size. */
    private static void bar(PdfFlow flow) {
        flow.figure("A bar of 100 mm", 4, (page, box) -> {
            page.fill(new Box(box.x(), box.y() + 1.5, BAR, 1.4), TextStyle.BODY.colour());
            page.text(
                    box.x() + BAR + 2, box.y() + 1.2, TextStyle.SMALL, Align.LEFT, "100 mm if printed in actual size");
        });
    }

    /** A drawing at the largest round scale that fits a page, lying or standing. */
    private record View(PageFormat format, Sheet sheet, double scale) {
        static View of(PaperForm form, DoubleFunction<Sheet> drawing) {
            View upright = fit(form.paper().upright(), drawing);
            View wide = fit(form.paper().wide(), drawing);
            return wide.scale < upright.scale ? wide : upright;
        }

        private static View fit(PageFormat format, DoubleFunction<Sheet> drawing) {
            Box in = format.inside();
            Box room = new Box(0, 0, in.width() - 2, in.height() - HEAD - FOOT);
            double scale = Placement.roundFigure(TrueLetters.unit(room, drawing));
            Sheet sheet = drawing.apply(scale);
            return new View(format, sheet, scale);
        }
    }

    private void before(Steps steps) {
        steps.part("Before anything is cut");
        steps.caution(
                "Look at what lies under the floor before you drill, rout or screw: cables, fuel, gas and brake lines, tanks."
                        + " Local codes and the makers' instructions go before this paper. Gas and electrical work are for licensed people.");
        if (!plan.isSound()) {
            steps.caution(Stamp.DO_NOT_CUT + ": " + failed() + ".");
        }
        steps.words("Go on only if all of these are true:");
        steps.step(overAll()
                + "Sides, diagonals and things are as on the confirmed drawing (confirm.pdf), none out by more than "
                + tape.beside(Job.MeasuredLength.DOUBTFUL) + ".");
        if (!job.floor().marks().isEmpty()) {
            steps.step("The drawing lies the right way round: "
                    + job.floor().marks().stream().map(Job.FloorMark::text).collect(Collectors.joining(", "))
                    + (job.floor().marks().size() == 1
                            ? " stands where the drawing has it."
                            : " stand where the drawing has them."));
        }
        steps.step("Nothing stands or goes through the floor that the drawing does not have.");
        job.build()
                .flatMap(Job.Build::board)
                .ifPresent(b -> steps.step((boards.areRouted() ? "The routed board is " : "The board to be routed is ")
                        + b.board().name() + ", "
                        + tape.beside(b.thickness()) + " thick; measured at three places it is not thinner."));
        job.build().map(this::laid).ifPresent(steps::step);
        boards.laid(steps);
        steps.step("The pipe is " + job.pipe().product().name() + ", " + lengths()
                + ": what lies on the floor, what goes through both holes and an allowance of "
                + Decimals.of(100 * job.pipe().allowance(), 1) + " %.");
        List<PlanCheck> warned = plan.checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.WARN)
                .toList();
        if (!warned.isEmpty()) {
            steps.step("You know what the plan warns of, what was found and, in brackets, the limit:");
            warned.forEach(c -> steps.flow()
                    .item(
                            "\u2022",
                            WARNED,
                            c.name() + ": " + found(c.value()) + " (" + found(c.limit()) + ") " + c.unit()));
        }
    }

    /** What a tape can reach from one side to the other of a floor that stands square in its axes. */
    private String overAll() {
        return plan.tape().isSquare()
                ? "The floor measures " + tape.beside(plan.tape().width()) + " by "
                        + tape.beside(plan.tape().height()) + " over all. "
                : "";
    }

    private String laid(Job.Build build) {
        String board = build.board()
                .map(b -> b.board().name() + ", " + tape.beside(b.thickness()))
                .orElse("what takes the groove, " + tape.fine(job.groove().depth())
                        + " (the job names no board: boards of that thickness beside the groove, or foam of both"
                        + " thicknesses in one)");
        String under =
                build.laidUnder() > 0 ? "insulation, " + tape.beside(job.insulationLaid(build)) + ", and on it " : "";
        return "On the floor lie " + under + board
                + ": level, joints tight, held down with no screw in the line of a run.";
    }

    private String lengths() {
        return plan.loops().stream()
                .map(l -> "loop " + l.name() + " is cut to " + tape.beside((double) l.cutLength()))
                .collect(Collectors.joining(", "));
    }

    private String failed() {
        return plan.checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.FAIL)
                .map(PlanCheck::name)
                .collect(Collectors.joining(", "));
    }

    private void routing(Steps steps, Drawings drawings) {
        steps.part("Rout the groove");
        steps.caution(
                "Goggles, ear protection and a dust mask, with extraction: dust of boards and foam harms lungs and may explode."
                        + " Pull the plug before a cutter is changed. The cutter stands still and drawn up when it is set into the"
                        + " groove and when it is lifted out.");
        if (plan.channel().isEmpty()) {
            steps.words("No cutter of the catalog goes into the groove: width "
                    + tape.beside(job.groove().width()) + ", at bends "
                    + tape.beside(job.groove().bendWidth()) + ", depth "
                    + tape.beside(job.groove().depth()) + ".");
        }
        plan.channel().ifPresent(c -> groove(steps, c));
        if (boards.areRouted()) {
            steps.step(
                    "The boards come routed, by their drawings in the folder boards: check grooves, pockets and slots with parts 3 to 6"
                            + " and this table before a plate is laid.");
        } else {
            steps.step(
                    "Routing takes the marks away: carry both lines, the ends of runs and the centres of bends out beside the groove first.");
            PipeSteps.fromBox(plan, steps, EnumSet.of(Item.Per.HAND_ROUTING));
            if (job.layout().pipeRules().stream().anyMatch(PipeRule.Kept.class::isInstance)) {
                steps.step(
                        "What the first page marks as kept is routed already: leave it, and let both ends run into it.");
            }
            steps.step("Rout a trial piece of scrap: pipe and plate go in by hand and stay flush.");
            steps.step("Rout the holes' slots first, then the bends, then the runs.");
        }
        steps.step("Break the edges; take all dust out of the groove.");
        steps.step("Lay a rule across: nothing of the pipe may stand proud of the board.");
        drawings.sections().ifPresent(s -> sections(steps.flow(), s));
    }

    private void sections(PdfFlow flow, Sections sections) {
        section(flow, sections.runs(), "Section across two straight runs", String.join(". ", sections.layers()) + ".");
        Optional<HoleTurn> turn = HoleTurn.of(job);
        section(
                flow,
                sections.bendAndHole(),
                turn.isPresent() || HoleTurn.goesUp(job)
                        ? "Left: across a bend. Right: along the pipe at a hole, where it turns "
                                + (turn.isPresent() ? "down" : "up through the cover")
                        : "Section across a bend",
                "No plate lies there."
                        + turn.map(t -> " From the hole's axis: the slot is right through the board up to "
                                        + tape.fine(t.throughTold()) + ", and begins at "
                                        + tape.fine(plan.holes().get(0).slot().length()) + "; radius of the turn "
                                        + tape.fine(t.radius()) + " to the middle of the pipe."
                                        + (job.groove().pad() > 0
                                                ? " The pocket is "
                                                        + tape.fine(job.groove().pad()) + " in diameter."
                                                : ""))
                                .orElse(HoleTurn.goesUp(job) ? inCover() : ""));
    }

    private String inCover() {
        return " From the hole's axis: the cover is cut through from "
                + tape.fine(HoleTurn.beyond(job)) + " beyond it up to "
                + tape.fine(plan.holes().get(0).slot().length()) + "; radius of the turn "
                + tape.fine(job.turnRadius()) + " to the middle of the pipe.";
    }

    private void section(PdfFlow flow, DoubleFunction<Sheet> drawing, String what, String words) {
        Box room = new Box(0, 0, flow.width() - 2, SECTION_HIGH);
        double unit = Placement.roundFigure(TrueLetters.unit(room, drawing));
        flow.scaled(drawing.apply(unit), unit);
        flow.paragraph(what + ", 1 : " + Decimals.of(unit, 1) + ". " + words, TextStyle.SMALL);
    }

    private void groove(Steps steps, ChannelPlan channel) {
        ChannelSize size = channel.size();
        Passes passes = channel.passes();
        PdfTable table = new PdfTable(Column.left("groove", 6), Column.right("size", 4), Column.left("why", 12));
        double outer = job.pipe().product().outer();
        table.row(
                "wide on straights",
                tape.fine(size.width()),
                "pipe " + tape.fine(outer) + ", plate on both sides, play "
                        + tape.fine(job.catalog().routing().play()));
        table.row(
                "wide at bends",
                tape.fine(size.bendWidth()),
                "pipe " + tape.fine(outer) + " and " + tape.fine(size.bendWidth() - outer) + " of play: it bends oval");
        table.row(
                "deep",
                tape.fine(size.depth()),
                "pipe, the plate under it, play "
                        + tape.fine(job.catalog().routing().depthPlay()));
        table.row(
                "cutter",
                tape.fine(size.cutter()),
                passes.down() + " passes of " + tape.fine(passes.layer()) + " in depth, " + passes.across()
                        + " side by side at bends");
        table.row(
                "cutter's middle off the line",
                tape.fine((size.width() - size.cutter()) / 2),
                "to each side on straights; " + tape.fine((size.bendWidth() - size.cutter()) / 2)
                        + " at bends, over the whole arc");
        if (size.pad() > 0) {
            table.row("pocket at each hole", tape.fine(size.pad()), "for the sleeve");
        }
        job.build()
                .flatMap(Job.Build::board)
                .ifPresent(b -> table.row(
                        "left under the groove",
                        tape.fine(b.rest()),
                        "of a board " + tape.fine(b.thickness()) + " thick"));
        steps.flow().table(table);
    }

    private void plates(Steps steps) {
        if (plan.plates().pieces().isEmpty()) {
            return;
        }
        steps.part("Lay the plates");
        steps.caution("Gloves: edges of sawn sheet are sharp.");
        steps.words(
                "Each piece lies in the groove of its run, its near end so far from where the flow enters the run. Leave "
                        + tape.beside(job.plates().gap()) + " between pieces. A piece in two runs lies over both. "
                        + widths()
                        + " Plates are fixed as their maker says.");
        PipeSteps.fromBox(plan, steps, EnumSet.of(Item.Per.PLATE_PIECE, Item.Per.METRE_OF_RUN));
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("piece", 2.4),
                Column.left("plate", 3),
                Column.right("long", 4),
                Column.left("from where the flow enters the run", 14));
        Map<PlatePiece, String> names = CutList.plateNames(plan);
        for (PlatePiece piece : plan.plates().pieces()) {
            table.row(
                    "\u2610",
                    names.get(piece),
                    piece.product(),
                    tape.beside(piece.length()),
                    RunNames.words(plan, piece, tape));
        }
        steps.flow().table(table);
    }

    private String widths() {
        return job.plates().products().stream()
                        .filter(p -> plan.plates().pieces().stream()
                                .anyMatch(q -> q.product().equals(p.sku())))
                        .map(p -> p.sku() + " is " + tape.beside(p.width()) + " wide")
                        .collect(Collectors.joining(", "))
                + ".";
    }

    private void test(Steps steps) {
        steps.part("Pressure test");
        steps.caution(
                "Test the loop alone: shut it off from heater, cylinder, header tank and pump, which may not stand the"
                        + " pressure. Test with water. With air only if the pipe's maker allows it, at no more than he says, with nobody"
                        + " kneeling over the pipe: compressed air throws parts.");
        PressureTest test = job.pipe().product().test().orElse(null);
        if (test == null) {
            steps.step(
                    "Pressure and time as the maker of the pipe says; the catalog does not tell them. Write them down first.");
        } else {
            steps.step("Fill, let all air out, pump up to " + Decimals.of(test.pressure(), 2)
                    + " bar, wait until the pipe has stopped"
                    + " giving, pump up again, and watch it for " + Decimals.of(test.minutes(), 0) + " minutes"
                    + drop(test.drop()) + ".");
        }
        PdfTable table = new PdfTable(
                Column.left("loop", 2),
                Column.left("start, bar", 3),
                Column.left("time", 2.6),
                Column.left("end, bar", 3),
                Column.left("time", 2.6),
                Column.left("under the cover, bar", 4),
                Column.left("tight", 2),
                Column.left("name", 4));
        plan.loops().forEach(l -> table.row(l.name() + "\n ", "", "", "", "", "", "", ""));
        steps.flow().table(table);
        steps.step(
                "Leave the pressure on while the cover is laid and screwed down, and read it again afterwards: a screw in the pipe shows"
                        + " at once. Where it may freeze, test with coolant, or drain and blow out the water.");
    }

    private static String drop(OptionalDouble drop) {
        return drop.isPresent()
                ? "; it may fall by " + Decimals.of(drop.getAsDouble(), 2) + " bar at most, and no joint may be damp"
                : "; no joint may be damp";
    }

    private void cover(Steps steps) {
        steps.part("Lay the cover");
        steps.caution(
                "No screw, nail or staple over the pipe. Snap the two lines of part 2 on the dry-laid cover, from the walls again, and draw the runs on it from part 4.");
        steps.step(job.build()
                .filter(b -> b.coverThickness() > 0)
                .map(b -> "Cover: " + b.coverName(job.catalog()) + ", " + tape.beside(b.coverThickness())
                        + ". Dry-lay it and mark the lines of the runs. "
                        + boards.held().orElse("Screw between them."))
                .orElse("Screw between the runs."));
        steps.step(
                "Put up the signs that warn of pipe under the floor, and leave this paper with the vehicle or building.");
    }

    private void checks(PdfFlow flow) {
        if (!plan.checks().isEmpty()) {
            PdfTable table = new PdfTable(
                    Column.left("check", 7),
                    Column.right("found", 3),
                    Column.right("limit", 3),
                    Column.left("unit", 2),
                    Column.left("verdict", 2),
                    Column.left("limit from", 6));
            for (PlanCheck check : plan.checks()) {
                boolean length = check.unit().equals("mm");
                table.row(
                        check.name(),
                        found(check.value()) + (length ? tape.also(check.value()) : ""),
                        found(check.limit()) + (length ? tape.also(check.limit()) : ""),
                        check.unit().replace("degrees C", "\u00b0C"),
                        check.verdict().name().toLowerCase(Locale.ROOT),
                        check.source());
            }
            flow.heading("For whoever planned it: checks").table(table);
        }
        List<String> remarks =
                new ArrayList<>(KitJson.remarks(plan).stream().map(tape::note).toList());
        if (!remarks.isEmpty()) {
            flow.heading("For whoever planned it: remarks, places in the axes of the job");
            remarks.forEach(r -> flow.item("\u2022", 5, r));
        }
    }

    private static String found(double value) {
        return Double.isFinite(value) ? Decimals.of(value, 2) : "-";
    }
}
