package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
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
import org.runbend.optimizer.breakdown.BendCount;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.channel.Passes;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.HoleTurn;
import org.runbend.optimizer.plan.KitHeat;
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

    private static final String LINES =
            "At the ends of lines: their distance from the base line or the square line. Beside marks: running measures; a dashed line"
                    + " joins marks that share one. Small rings: centres of bends. Letters at corners: names of the walls.";

    private final KitPlan plan;
    private final Job job;
    private final SetOut marks;
    private final TapeText tape;
    private final MarkingOut out;

    private FittingSheet(KitPlan plan, SetOut marks) {
        this.plan = plan;
        this.job = plan.job();
        this.marks = marks;
        tape = new TapeText(job);
        out = new MarkingOut(plan, marks);
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
                            + " cross; small crosses: left without pipe. O, X and Y: part 2.",
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
            plates(steps);
            plan.sensor().ifPresent(s -> sensor(steps, s));
            pipe(steps);
            test(steps);
            cover(steps);
            filling(steps);
            running(steps);
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
                    "Lines to snap, 1 : " + Decimals.of(parted.scale(), 1) + ", part " + (i + 1) + " of "
                            + parted.pages() + " (" + parted.place(i) + "); they overlap. " + LINES,
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
        steps.step("The floor measures " + tape.beside(plan.tape().width()) + " by "
                + tape.beside(plan.tape().height())
                + " over all, and sides, diagonals and things are as on the confirmed drawing (confirm.pdf), none out by more than "
                + tape.beside(Job.MeasuredLength.DOUBTFUL) + ".");
        if (!job.floor().marks().isEmpty()) {
            steps.step("The drawing lies the right way round: "
                    + job.floor().marks().stream().map(Job.FloorMark::text).collect(Collectors.joining(", "))
                    + (job.floor().marks().size() == 1
                            ? " stands where the drawing has it."
                            : " stand where the drawing has them."));
        }
        if (!job.floor().keepOuts().isEmpty()) {
            steps.step("Nothing stands or goes through the floor that the drawing does not have.");
        }
        job.build()
                .flatMap(Job.Build::board)
                .ifPresent(
                        b -> steps.step("The board to be routed is " + b.board().name() + ", "
                                + tape.beside(b.thickness()) + " thick; measured at three places it is not thinner."));
        job.build().map(this::laid).ifPresent(steps::step);
        steps.step("The pipe is " + job.pipe().product().name() + ", " + lengths()
                + ": what lies on the floor, both tails and an" + " allowance of "
                + Decimals.of(100 * job.pipe().allowance(), 1) + " %.");
        String warned = plan.checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.WARN)
                .map(c -> c.name() + " " + found(c.value()) + " (" + found(c.limit()) + ") " + c.unit())
                .collect(Collectors.joining("; "));
        if (!warned.isEmpty()) {
            steps.step("You know what the plan warns of, found and limit: " + warned + ".");
        }
    }

    private String laid(Job.Build build) {
        String board = build.board()
                .map(b -> b.board().name() + ", " + tape.beside(b.thickness()))
                .orElse("the board that takes the groove");
        String under = build.laidUnder() > 0 ? "insulation, " + tape.beside(build.laidUnder()) + ", and on it " : "";
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
                        + " Pull the plug before a cutter is changed.");
        if (plan.channel().isEmpty()) {
            steps.words("No cutter of the catalog goes into the groove: width "
                    + tape.beside(job.groove().width()) + ", at bends "
                    + tape.beside(job.groove().bendWidth()) + ", depth "
                    + tape.beside(job.groove().depth()) + ".");
        }
        plan.channel().ifPresent(c -> groove(steps, c));
        steps.step(
                "Routing takes the marks away: carry both lines, the ends of runs and the centres of bends out beside the groove first.");
        steps.step("Rout a trial piece of scrap: pipe and plate go in by hand and stay flush.");
        steps.caution("The cutter stands still and drawn up when it is set into the groove and when it is lifted out.");
        steps.step(
                "Rout the holes' slots first, then the bends, then the runs. Break the edges; take all dust out of the groove.");
        steps.step("Lay a rule across: nothing of the pipe may stand proud of the board.");
        drawings.sections().ifPresent(s -> sections(steps.flow(), s));
    }

    private void sections(PdfFlow flow, Sections sections) {
        section(flow, sections.runs(), "Section across two straight runs", String.join(". ", sections.layers()) + ".");
        Optional<HoleTurn> turn = HoleTurn.of(job);
        section(
                flow,
                sections.bendAndHole(),
                turn.isPresent()
                        ? "Left: across a bend. Right: along the pipe at a hole, where it turns down"
                        : "Section across a bend",
                "No plate lies there."
                        + turn.map(t -> " From the hole's axis: the slot is right through the board up to "
                                        + tape.beside(t.throughTold()) + ", and begins at "
                                        + tape.beside(plan.holes().get(0).slot().length()) + "; radius of the turn "
                                        + tape.beside(t.radius()) + " to the middle of the pipe."
                                        + (job.groove().pad() > 0
                                                ? " The pocket is "
                                                        + tape.beside(
                                                                job.groove().pad()) + " in diameter."
                                                : ""))
                                .orElse(""));
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
                tape.beside(size.width()),
                "pipe " + tape.beside(outer) + ", plate on both sides, play "
                        + tape.beside(job.catalog().routing().play()));
        table.row(
                "wide at bends",
                tape.beside(size.bendWidth()),
                "pipe " + tape.beside(outer) + " and " + tape.beside(size.bendWidth() - outer)
                        + " of play: it bends oval");
        table.row(
                "deep",
                tape.beside(size.depth()),
                "pipe, the plate under it, play "
                        + tape.beside(job.catalog().routing().depthPlay()));
        table.row(
                "cutter",
                tape.beside(size.cutter()),
                passes.down() + " passes of " + tape.beside(passes.layer()) + " in depth, " + passes.across()
                        + " side by side at bends");
        table.row(
                "cutter's middle off the line",
                tape.beside((size.width() - size.cutter()) / 2),
                "to each side on straights; " + tape.beside((size.bendWidth() - size.cutter()) / 2)
                        + " at bends, over the whole arc");
        if (size.pad() > 0) {
            table.row("pocket at each hole", tape.beside(size.pad()), "for the sleeve");
        }
        job.build()
                .flatMap(Job.Build::board)
                .ifPresent(b -> table.row(
                        "left under the groove",
                        tape.beside(b.rest()),
                        "of a board " + tape.beside(b.thickness()) + " thick"));
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

    private void sensor(Steps steps, SensorPlan sensor) {
        steps.part("Floor sensor");
        if (sensor.at().isEmpty()) {
            steps.words(
                    "No place under a plate can be reached from the port without crossing pipe: ask before you lay one.");
            return;
        }
        Point at = marks.datum().frame().from(sensor.at().get());
        steps.step("The sensor lies under its plate at " + out.place(at) + " (along / across), its lead in a conduit "
                + tape.beside(sensor.length()) + " long with corners at "
                + sensor.conduit().stream()
                        .map(p -> out.place(marks.datum().frame().from(p)))
                        .collect(Collectors.joining(", "))
                + ". Pull it in before the plate, so that it can be changed.");
    }

    private void pipe(Steps steps) {
        steps.part("Lay the pipe");
        PdfTable table = new PdfTable(
                Column.left("loop", 2),
                Column.left("valve outlet", 3),
                Column.right("on the floor", 4),
                Column.right("return bends", 3),
                Column.right("quarter bends", 3),
                Column.right("cut to", 4));
        for (KitPlan.LoopPlan loop : plan.loops()) {
            BendCount count = BendCount.of(loop.breakdown().elements());
            table.row(
                    loop.name(),
                    Integer.toString(loop.outlet()),
                    tape.metres(loop.floorLength()),
                    Integer.toString(count.returns()),
                    Integer.toString(count.quarters()),
                    tape.metres((double) loop.cutLength()));
        }
        steps.flow().table(table);
        steps.step(
                "Stand the coil on edge, or on a turning frame, beside the flow hole, and turn it as the pipe is drawn off: pipe pulled"
                        + " sideways off a lying coil comes twisted and springs out of the groove.");
        steps.step(
                "Push " + tape.beside(job.pipe().flowTail())
                        + " through the flow hole as its tail and read the metre mark there: all readings of part 6 count from it.");
        steps.step("Lay run by run in the order of flow, fixing each bend before the next run. " + bendWords()
                + " Warm pipe bends easier; never heat it with a flame.");
        steps.step("At the return hole the pipe reads "
                + plan.loops().stream()
                        .map(l -> MarkingOut.metres(l.floorLength()) + " m (loop " + l.name() + ")")
                        .collect(Collectors.joining(", "))
                + "; " + tape.beside(job.pipe().returnTail())
                + " or more must be left for its tail. What is over is the allowance: cut it off only when the tail has reached its"
                + " valve.");
        steps.step("Join both tails to the valves with their adaptors, flow to flow, and write the loop on them.");
    }

    private String bendWords() {
        double by = job.pipe().product().handRadius();
        String least = "No bend tighter than "
                + tape.beside(job.pipe().product().fittedRadius()) + " to the middle of the pipe";
        return plan.bendRadius() < by - 1e-6
                ? least + ", and bends under " + tape.beside(by) + " only with the bending aid."
                : least + ".";
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
                        + ". Dry-lay it, mark the lines" + " of the runs, screw between them.")
                .orElse("Screw between the runs."));
        steps.step(
                "Put up the signs that warn of pipe under the floor, and leave this paper with the vehicle or building.");
    }

    private void filling(Steps steps) {
        steps.part("Fill, bleed and flush");
        steps.caution(
                "Coolant with glycol is poisonous to people and animals: no food, no open vessels; it goes to the collecting point,"
                        + " not down the drain. Open nothing that is hot or under pressure.");
        if (plan.heat().isEmpty()) {
            steps.step(
                    "Fill slowly from the lowest point until coolant comes without bubbles; the job gives no build-up or heating, so no"
                            + " amounts were worked out.");
            return;
        }
        KitHeat kit = plan.heat().get();
        HeatSolution heat = kit.solution();
        steps.step("Drain and blow out the water of the test.");
        HeatProblem problem = kit.problem();
        steps.step(String.format(
                Locale.ROOT,
                "Mix %s, %.2f l for loops, tails and what else the job tells of the circuit (%.2f l of glycol in it). Mix it before it goes in; glycol poured into standing water does not mix.",
                problem.supply().mixture().words(),
                heat.filling().litres(),
                heat.filling().glycol()));
        steps.step(String.format(
                Locale.ROOT,
                "Flush each loop %swith %.1f l/min or more until no bubbles come: that flow carries air along.",
                plan.loops().size() > 1 ? "alone, the others shut, " : "",
                heat.flow().flushing()));
        steps.step(
                problem.circuit().closed()
                        ? String.format(
                                Locale.ROOT,
                                "Fill cold to %.0f kPa at the lowest point; the vessel must take %.1f l.",
                                heat.standing().fill(),
                                heat.expansion().room())
                        : String.format(
                                Locale.ROOT,
                                "Fill the header tank to its cold mark; over it %.1f l must stay free for the coolant to grow.",
                                heat.expansion().room()));
        steps.step("Run the pump cold for half an hour, top up, bleed again; look at every joint.");
    }

    private void running(Steps steps) {
        steps.part("First heating");
        steps.caution(
                "Surfaces, valves and tails get hot. A floor that people lie on must not burn them: set the mixing valve before"
                        + " the heater is lit.");
        if (plan.heat().isEmpty()) {
            steps.step("Begin with the lowest setting and look at every joint once it is warm.");
            return;
        }
        HeatSolution heat = plan.heat().get().solution();
        steps.step(String.format(
                Locale.ROOT,
                "Set the mixing valve to %.0f degrees C; over %.1f degrees C a limit is broken: %s.",
                job.heating().orElseThrow().flow(),
                Math.floor(10 * heat.highestSupply().celsius()) / 10,
                heat.highestSupply().name()));
        steps.step(String.format(
                Locale.ROOT,
                "The floor then gives about %.0f W; its surface has %.1f degrees C in the mean and %.1f at its hottest place.",
                heat.output().upward(),
                heat.output().surfaceMean(),
                heat.output().surfacePeak()));
        job.heating()
                .orElseThrow()
                .coldest()
                .ifPresent(c -> steps.step(String.format(
                        Locale.ROOT,
                        "Frost: a refractometer must show protection down to %.0f degrees C or lower.",
                        c)));
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
