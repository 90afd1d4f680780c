package org.runbend.export.papers;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.export.data.TapeText;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plan.HoleTurn;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PortHole;
import org.runbend.optimizer.setout.Datum;
import org.runbend.optimizer.setout.Lie;
import org.runbend.optimizer.setout.SetOut;
import org.runbend.optimizer.tape.TapeSheet;

/** How a bare floor is marked out: two lines, holes, lines to snap, runs and bends in order of flow. */
final class MarkingOut {
    /** So few degrees a sleeve gives, chosen. */
    private static final double PLUMB = 5;

    private final KitPlan plan;
    private final SetOut marks;
    private final TapeText tape;

    MarkingOut(KitPlan plan, SetOut marks) {
        this.plan = plan;
        this.marks = marks;
        tape = new TapeText(plan.job());
    }

    /** The two lines and how to see that they stand square. */
    void lines(Steps steps) {
        Datum datum = marks.datum();
        steps.part("Two lines to measure from");
        steps.words("The base line is " + line(datum.base(), "X") + ", the square line " + line(datum.square(), "Y")
                + "; they cross at O. Every measure below is taken from them, not from the walls: along the base line from O, and"
                + " across it along the square line. Measures with a minus lie on the other side of O: minus along is towards "
                + end("X", true) + ", minus across towards " + end("Y", true) + ".");
        if (areRouted()) {
            steps.words("The boards come routed: what parts 2 to 6 set out is to check how they lie, not to rout by.");
        }
        steps.step("Mark these points and snap both lines:");
        PdfTable table = new PdfTable(
                Column.left("point", 2), Column.left("first measure", 8), Column.left("second measure", 8));
        for (TapeSheet.Thing mark : datum.marks()) {
            table.row(mark.name(), tie(mark, 0), tie(mark, 1));
        }
        steps.flow().table(table);
        square(steps, datum.check());
    }

    private String line(Datum.Reach reach, String letter) {
        boolean both = reach.from() < -1;
        String ends = both ? letter + "1 to " + letter + "2" : "O to " + letter;
        return ends + ", " + tape.beside(reach.length()) + " long";
    }

    private String end(String letter, boolean low) {
        Datum.Reach reach =
                letter.equals("X") ? marks.datum().base() : marks.datum().square();
        return reach.from() < -1 && low ? letter + "1" : "the near wall";
    }

    private String tie(TapeSheet.Thing thing, int index) {
        if (index >= thing.ties().size()) {
            return index == 0 ? "no tape reaches it" : "";
        }
        TapeSheet.Tie tie = thing.ties().get(index);
        String from = tie.isFromSide()
                ? "from wall " + TapeText.between(tie.from(), tie.to())
                : "from corner " + TapeText.shortName(tie.from());
        return Math.abs(tie.distance()) < 0.5 && tie.isFromSide()
                ? "on wall " + TapeText.between(tie.from(), tie.to())
                : tape.beside(tie.distance()) + " " + from;
    }

    private void square(Steps steps, Datum.SquareCheck check) {
        if (check.diagonal() > 0) {
            steps.step("See that they stand square: " + tape.beside(check.along()) + " along the base line and "
                    + tape.beside(check.across()) + " along the square line from O lie "
                    + tape.beside(check.diagonal()) + " apart (3\u00a0:\u00a04\u00a0:\u00a05).");
        }
        steps.step("And from end to end of the longer arms: "
                + far("X", marks.datum().base()) + " to "
                + far("Y", marks.datum().square()) + " is " + tape.beside(check.endToEnd())
                + ". Over 2 mm out: snap the square line again.");
    }

    private static String far(String letter, Datum.Reach reach) {
        if (reach.from() >= -1) {
            return letter;
        }
        return letter + (reach.to() >= -reach.from() ? "2" : "1");
    }

    /** Holes first. */
    void holes(Steps steps) {
        Job.Port port = plan.job().floor().port();
        steps.part("Holes for flow and return");
        if (port.turn() != Job.Turn.LEVEL) {
            steps.caution(
                    "Goggles and dust mask. Look underneath before you drill: cables, fuel, gas and brake lines, tanks, frame. Drill a thin pilot"
                            + " hole first and look again." + below());
        }
        boolean given = !port.holes().isEmpty();
        if (!given) {
            steps.words(
                    "The places are proposed. Where one is not free underneath, stop and have the floor planned anew.");
        }
        PdfTable table = new PdfTable(
                Column.left("hole", 3),
                Column.right("along", 3),
                Column.left("across", 3),
                Column.left("check", 9),
                Column.left("slot runs to", 5));
        List<PortHole> holes = plan.holes();
        for (int i = 0; i < holes.size(); i++) {
            PortHole hole = holes.get(i);
            Point at = marks.datum().frame().from(hole.at());
            Point to = marks.datum().frame().from(hole.slot().to());
            TapeSheet.Thing tied =
                    i < plan.tape().holes().size() ? plan.tape().holes().get(i) : null;
            table.row(
                    hole.loop() + " " + hole.kind().name().toLowerCase(Locale.ROOT),
                    cell(at.x()),
                    cell(at.y()),
                    tied == null ? "" : tie(tied, 0) + (tied.ties().size() > 1 ? ", " + tie(tied, 1) : ""),
                    mm(to.x()) + " / " + mm(to.y()));
        }
        steps.flow().table(table);
        if (port.turn() == Job.Turn.LEVEL) {
            steps.step("Pipe goes straight on through the wall at these places.");
            return;
        }
        double pad = plan.job().groove().pad();
        steps.step("Mark the " + (holes.size() == 2 ? "two" : Integer.toString(holes.size()))
                + " holes and drill the pilot holes, straight down. Pockets and slots "
                + (areRouted()
                        ? "come routed; look whether they agree with the table: "
                        : "are routed with the groove (part 7): ")
                + (pad > 0 ? "a round pocket of " + tape.fine(pad) + " as deep as the groove, " : "")
                + "and a slot " + tape.fine(holes.get(0).slot().width())
                + " wide from the hole's middle to the place in the last column (along / across)" + slot(port)
                + "; the drawing there shows it.");
        steps.step("Nothing is in the way below: bore each pilot hole out to the outside of its sleeve"
                + (port.turn() == Job.Turn.UP ? " in the cover." : " right through the floor.")
                + lean()
                + " Take the burr off, seal the bare edge, and set the sleeve when its pocket is routed.");
    }

    /** Where the pipe is not plumb yet when it comes through. */
    private String lean() {
        double lean = HoleTurn.lean(plan.job());
        return lean < PLUMB
                ? ""
                : " The pipe comes through it " + Decimals.of(lean, 0)
                        + " degrees off plumb, leaning away from its slot: let the bore lean as much, or make it wider.";
    }

    /** How deep the slot is. */
    private String slot(Job.Port port) {
        if (port.turn() == Job.Turn.UP) {
            return ", through the cover, so that the pipe can turn up";
        }
        String through = HoleTurn.of(plan.job())
                .map(t -> ": right through the board up to " + tape.fine(t.throughTold())
                        + " from the hole's middle, and from there rising to the groove's depth")
                .orElse(", which falls from the groove's depth there to right through the board at the hole");
        return through + ", so that the pipe can turn down";
    }

    private boolean areRouted() {
        return new BoardSteps(plan).areRouted();
    }

    private String below() {
        String names = plan.job().floor().below().stream().map(Job.Below::name).collect(Collectors.joining(", "));
        return names.isEmpty() ? "" : " This floor has under it: " + names + ".";
    }

    /** Running measures, line by line. */
    void running(Steps steps) {
        steps.part("Lines to snap, and where runs begin and end on them");
        steps.words(
                "The drawing of the lines shows them all. Running measures from the other line, from low to high: on a line along the base line they are taken along, on one across it"
                        + " across. Where two bends meet there is a mark and no run.");
        for (Lie lie : Lie.values()) {
            List<SetOut.ChalkLine> lines =
                    marks.lines().stream().filter(l -> l.lie() == lie).toList();
            if (!lines.isEmpty()) {
                steps.flow().table(lie == Lie.ASLANT ? slanting(lines) : table(lie, lines));
            }
        }
    }

    private PdfTable table(Lie lie, List<SetOut.ChalkLine> lines) {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left(lie == Lie.ALONG ? "line along, so far across" : "line across, so far along", 5),
                Column.left("marks on it", 16));
        for (SetOut.ChalkLine line : lines) {
            table.row(
                    "\u2610",
                    cell(line.offset()),
                    line.stops().stream().map(s -> stop(lie, s)).collect(Collectors.joining(";  ")));
        }
        return table;
    }

    private String stop(Lie lie, SetOut.Stop stop) {
        double from = lie.stop(stop.from());
        double to = lie.stop(stop.to());
        if (stop.bends()) {
            return mm(from) + " bends " + bend(stop, 0) + " and " + bend(stop, 1) + " meet";
        }
        return mm(Math.min(from, to)) + " to " + mm(Math.max(from, to)) + " run " + stop.loop() + stop.number();
    }

    private static String bend(SetOut.Stop stop, int next) {
        return stop.loop() + "b" + (stop.number() + next);
    }

    private PdfTable slanting(List<SetOut.ChalkLine> lines) {
        PdfTable table = new PdfTable(
                Column.centre("", 1),
                Column.left("slanting", 5),
                Column.left("from (along / across)", 8),
                Column.left("to (along / across)", 8));
        for (SetOut.ChalkLine line : lines) {
            SetOut.Stop s = line.stops().get(0);
            String name =
                    s.bends() ? "bends " + bend(s, 0) + " and " + bend(s, 1) + " meet" : "run " + s.loop() + s.number();
            table.row("\u2610", name, place(s.from()), place(s.to()));
        }
        return table;
    }

    /** Runs in order of flow. */
    void runs(Steps steps) {
        steps.part("Runs in the order of flow");
        steps.words(
                "Offset: from the base line (along) or from the square line (across). Start and end: from the other line, in the"
                        + " direction of the flow. The last columns say how far a run that is off its line, together with the bends at its ends"
                        + " and whatever shares plates with it, may lie to the left or right of where it should before it touches what"
                        + " stands there.");
        for (SetOut.LoopMarks loop : marks.loops()) {
            PdfTable straight = square(loop);
            PdfTable slanting = slanting(loop);
            if (!straight.isEmpty()) {
                steps.flow().table(straight);
            }
            if (!slanting.isEmpty()) {
                steps.flow().table(slanting);
            }
        }
    }

    private PdfTable square(SetOut.LoopMarks loop) {
        PdfTable table = new PdfTable(
                Column.left("run", 1.5),
                Column.left("lies", 1.8),
                Column.right("offset", 2),
                Column.right("start", 2),
                Column.right("end", 2),
                Column.left("long", 2),
                Column.left("room left", 5.6),
                Column.left("room right", 5.6));
        for (SetOut.RunMark r : loop.runs()) {
            if (r.lie() != Lie.ASLANT) {
                table.row(
                        loop.name() + r.number(),
                        r.lie().name().toLowerCase(Locale.ROOT),
                        cell(r.offset()),
                        cell(r.lie().stop(r.from())),
                        cell(r.lie().stop(r.to())),
                        cell(r.length()),
                        room(r.left()),
                        room(r.right()));
            }
        }
        return table;
    }

    private PdfTable slanting(SetOut.LoopMarks loop) {
        PdfTable table = new PdfTable(
                Column.left("run", 1.8),
                Column.left("lies", 2),
                Column.left("start (along / across)", 5.2),
                Column.left("end (along / across)", 5.2),
                Column.left("long", 2.4),
                Column.left("room left", 4),
                Column.left("room right", 4));
        for (SetOut.RunMark r : loop.runs()) {
            if (r.lie() == Lie.ASLANT) {
                table.row(
                        loop.name() + r.number(),
                        "aslant",
                        place(r.from()),
                        place(r.to()),
                        cell(r.length()),
                        room(r.left()),
                        room(r.right()));
            }
        }
        return table;
    }

    /** Down to whole mm: room that is told must be there. */
    private String room(SetOut.Room room) {
        return Double.isFinite(room.distance())
                ? tape.of(Math.floor(room.distance() + 1e-6)) + " to " + TapeText.shortName(room.what())
                : "free";
    }

    /** What all bends share, and what they ask for. */
    private String radii() {
        double by = plan.job().pipe().product().handRadius();
        double tightest = plan.bendRadius();
        boolean turns = plan.job().floor().port().turn() != Job.Turn.LEVEL;
        double atHoles = turns ? plan.job().turnRadius() : tightest;
        String holes = Math.abs(atHoles - tightest) > 1e-6
                ? " Into the holes it turns with one of " + tape.beside(atHoles) + "."
                : "";
        String aid = Math.min(tightest, atHoles) < by - 1e-6
                ? " By hand this pipe bends to " + tape.beside(by) + ": use the bending aid where a bend is tighter. "
                : " This pipe bends to it by hand. ";
        return "Radii are those of the middle of the pipe, the tightest is " + tape.beside(tightest) + "." + holes
                + aid;
    }

    /** Bends in order of flow, with the metre marks of the pipe. */
    void bends(Steps steps) {
        steps.part("Bends in the order of flow");
        steps.words(radii()
                + "Set the compass at the centre; the arc meets both runs without a corner. Hand: which way the flow turns, seen from"
                + " above. Pipe reads: its metre mark at the begin and the end of the bend, with the mark at the flow hole taken as 0; a"
                + " reading that is out by more than 20 mm means that pipe lies in the wrong groove or off its line.");
        for (SetOut.LoopMarks loop : marks.loops()) {
            PdfTable table = new PdfTable(
                    Column.left("bend", 1.7),
                    Column.left("after", 2.3),
                    Column.right("along", 2.4),
                    Column.right("across", 2.4),
                    Column.right("radius", 2.2),
                    Column.right("degrees", 2),
                    Column.left("hand", 1.8),
                    Column.right("pipe reads, m", 3.6));
            for (SetOut.BendMark b : loop.bends()) {
                table.row(
                        loop.name() + "b" + b.number(),
                        after(loop, b),
                        cell(b.centre().x()),
                        cell(b.centre().y()),
                        cell(b.radius()),
                        Decimals.of(Math.abs(b.turn()), 2),
                        b.isLeft() ? "left" : "right",
                        metres(b.metre()) + " to " + metres(b.endMetre()));
            }
            steps.flow().table(table);
        }
    }

    private static String after(SetOut.LoopMarks loop, SetOut.BendMark bend) {
        List<SetOut.RunMark> before = new ArrayList<>(loop.runs());
        before.removeIf(r -> r.element() != bend.element() - 1);
        if (!before.isEmpty()) {
            return "run " + loop.name() + before.get(0).number();
        }
        return bend.element() == 0 ? "hole" : "bend " + loop.name() + "b" + (bend.number() - 1);
    }

    String place(Point p) {
        return mm(p.x()) + " / " + mm(p.y());
    }

    /** Likewise in a cell of a table, inches under it. */
    private String cell(double value) {
        return tape.cell(Math.abs(value) < 0.05 ? 0 : value);
    }

    /** A measure to a tenth where it is none in whole mm. */
    String mm(double value) {
        return tape.beside(Math.abs(value) < 0.05 ? 0 : value);
    }

    static String metres(double mm) {
        return String.format(Locale.ROOT, "%.2f", mm / 1000);
    }
}
