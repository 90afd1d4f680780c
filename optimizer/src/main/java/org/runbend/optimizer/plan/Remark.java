package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.product.Money;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.plates.UnusedPlate;

/** What a person should know of a plan: a kind with its data. All are worded here. Lengths in mm, money as {@link Money}. */
public sealed interface Remark {
    /** One sentence or more for people. */
    String words();

    private static String place(Point p) {
        return "[" + Plain.number(Math.rint(p.x())) + ", " + Plain.number(Math.rint(p.y())) + "]";
    }

    /**
     * A warning of the reader of jobs, on something in the file.
     *
     * @param words as the reader words it
     */
    record OfJob(String words) implements Remark {}

    /** Boards are asked for and none is named for the grooves. */
    record NoRoutedBoard() implements Remark {
        @Override
        public String words() {
            return "No board is named for the grooves (build.board), so no board has grooves; cover and insulation are"
                    + " split alone.";
        }
    }

    /**
     * A layer has no boards.
     *
     * @param material board of the catalog
     * @param thickness mm
     */
    record NotSold(String material, double thickness) implements Remark {
        @Override
        public String words() {
            return "The catalog sells no " + material + " " + Plain.number(thickness)
                    + " mm thick, so no boards of it are drawn.";
        }
    }

    /**
     * Insulation is bought thicker than it was asked for.
     *
     * @param asked mm
     * @param laid mm
     * @param sheets what it is made of
     */
    record ThickerInsulation(double asked, double laid, String sheets) implements Remark {
        private static final double SAME = 1e-9;

        /** The remark, where the job's insulation is sold thicker alone. */
        public static Optional<Remark> of(Job job) {
            return job.build()
                    .filter(b -> job.insulationLaid(b) > b.laidUnder() + SAME)
                    .flatMap(b -> InsulationStack.of(job.catalog(), b.laidUnder())
                            .map(s -> new ThickerInsulation(b.laidUnder(), s.thickness(), s.words())));
        }

        @Override
        public String words() {
            return "Insulation under the floor is " + Plain.number(laid) + " mm thick (" + sheets + "), not the "
                    + Plain.number(asked) + " mm asked: the catalog sells none between. The floor gets "
                    + Plain.number(Math.rint(10 * (laid - asked)) / 10) + " mm higher.";
        }
    }

    /**
     * The boards of a layer.
     *
     * @param name what it is
     * @param thickness mm
     * @param parts how many parts
     * @param boards how many stock boards
     * @param bound fewer cannot do, whatever the joints
     * @param triedBound fewer cannot do with joints at the places tried
     * @param length of a stock board, mm
     * @param width of a stock board, mm
     * @param broken wishes for joints that could not be kept: how many joints cross near a bend or at a slant, run beside a
     *     groove, lie off a support, lie over joints below
     */
    record Boards(
            String name,
            double thickness,
            int parts,
            int boards,
            int bound,
            int triedBound,
            double length,
            double width,
            List<Integer> broken)
            implements Remark {
        private static final List<String> WISHES = List.of(
                "groove crossed within 50 mm of a bend or at a slant",
                "joint beside the long side of a groove",
                "joint off the supports",
                "joint within 100 mm of one below");

        /** Copies the list. */
        public Boards {
            broken = List.copyOf(broken);
        }

        @Override
        public String words() {
            String proof;
            if (boards == bound) {
                proof = "fewer cannot do";
            } else if (boards == triedBound) {
                proof = "fewer cannot do with joints at the places that were tried; by area at least " + bound;
            } else {
                proof = "at least " + triedBound + " are needed with joints at the places that were tried, " + bound
                        + " by area";
            }
            List<String> list = new ArrayList<>();
            for (int i = 0; i < broken.size(); i++) {
                if (broken.get(i) > 0) {
                    list.add(broken.get(i) + " x " + WISHES.get(i));
                }
            }
            return name + " " + Plain.number(thickness) + " mm: " + parts + (parts == 1 ? " part" : " parts") + " from "
                    + boards + (boards == 1 ? " board " : " boards ") + Plain.number(length) + " x "
                    + Plain.number(width)
                    + " mm, " + proof + (list.isEmpty() ? "." : "; not kept: " + String.join(", ", list) + ".");
        }
    }

    /**
     * Parts of boards that were cut before the floor changed and stay.
     *
     * @param stay how many
     * @param parts of how many
     */
    record BoardsStay(int stay, int parts) implements Remark {
        @Override
        public String words() {
            String all = "Boards and their drawings are counted as for a new kit: ";
            return stay == parts
                    ? all + "all " + parts + " parts were cut before and stay, so none is bought and none is cut."
                    : all + stay + " of " + parts + (stay == 1 ? " parts was" : " parts were")
                            + " cut before and " + (stay == 1 ? "stays" : "stay")
                            + "; cut the others alone, changes.pdf names them.";
        }
    }

    /**
     * The boards of all layers.
     *
     * @param height from the underside to the top, mm
     * @param out what it may be out to either side, mm
     * @param weight kg/m2
     */
    record BoardsInAll(double height, double out, double weight) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "The boards are %s mm high (%s to %s at the worst of their tolerances) and weigh %.1f kg/m2 without pipe,"
                            + " plates and floor covering.",
                    Plain.number(height),
                    Plain.number(height - out),
                    Plain.number(height + out),
                    weight);
        }
    }

    /**
     * A solid packer.
     *
     * @param name what it bears
     * @param length mm
     * @param width mm
     * @param height mm
     * @param round whether it is a disc
     */
    record SolidPacker(String name, double length, double width, double height, boolean round) implements Remark {
        @Override
        public String words() {
            String size = round
                    ? Plain.number(length) + " mm across"
                    : Plain.number(length) + " x " + Plain.number(width) + " mm";
            return "Under " + name + ", in the place of foam and board, goes a solid packer of " + size + ", "
                    + Plain.number(height)
                    + " mm high: its preload would crush foam and bend a plate. Bore cover and packer"
                    + " through on site.";
        }
    }

    /**
     * How the cover is held.
     *
     * @param fixing how
     * @param screws how many
     * @param length of a screw, mm
     * @param off from a screw to the middle of the pipe at least, mm
     */
    record Cover(CoverFixing fixing, int screws, double length, double off) implements Remark {
        @Override
        public String words() {
            return switch (fixing) {
                case SCREW ->
                    "The cover is held by " + screws + " screws of " + Plain.number(length)
                            + " mm, each at least " + Plain.number(off)
                            + " mm from the middle of the pipe; boards.svg shows where, and where no other may go.";
                case GLUE -> "The cover is glued; boards.svg shows where nobody may screw.";
                case FLOAT -> "The cover lies loose; boards.svg shows where nobody may screw.";
            };
        }
    }

    /**
     * The sensor's place.
     *
     * @param at mm
     * @param conduit its length, mm
     */
    record SensorPlace(Point at, double conduit) implements Remark {
        @Override
        public String words() {
            return "The floor's sensor lies under a plate at " + place(at)
                    + ", as near as can be to the mean of flow and return; "
                    + Plain.number(Math.ceil(conduit / 10) * 10)
                    + " mm of conduit lead there from the port and cross no pipe.";
        }
    }

    /**
     * The sensor's place where the best one has no way.
     *
     * @param wanted mm
     * @param at mm
     */
    record SensorElsewhere(Point wanted, Point at) implements Remark {
        @Override
        public String words() {
            return "No way was found for the sensor's conduit from the port to " + place(wanted)
                    + " that crosses no pipe and is short enough for the cable; the next best place under a plate that has one is "
                    + place(at) + ".";
        }
    }

    /**
     * The sensor's cable does not reach.
     *
     * @param at the sensor's place, mm
     * @param wanted cable needed, mm
     * @param has its length, mm
     */
    record CableShort(Point at, double wanted, double has) implements Remark {
        @Override
        public String words() {
            return "The sensor's cable of " + Plain.number(has) + " mm reaches no place under a plate: at " + place(at)
                    + " it needs "
                    + Plain.number(Math.ceil(wanted / 10) * 10)
                    + " mm, 300 of them beyond the port. Supply one with a longer cable.";
        }
    }

    /**
     * No place for the sensor.
     *
     * @param wanted the best place under a plate, if there is any, mm
     * @param nearest what can be reached nearest to it, mm
     */
    record NoSensorPlace(Optional<Point> wanted, Optional<Point> nearest) implements Remark {
        @Override
        public String words() {
            if (wanted.isEmpty()) {
                return "The floor's sensor has no place: under no plate is there room for its conduit 100 mm from every bend.";
            }
            return "The floor's sensor has no place under a plate: no way was found for its conduit from the port that crosses"
                    + " no pipe"
                    + nearest.map(n -> "; the nearest place to " + place(wanted.get()) + " that has one is " + place(n))
                            .orElse("")
                    + ".";
        }
    }

    /** The job gives no tails. */
    record NoTails() implements Remark {
        @Override
        public String words() {
            return "No tails are given: no pipe is counted from the port to the valves, so what is cut may be too short."
                    + " Measure both ways and write pipe.tails: [flow, return].";
        }
    }

    /**
     * The floor has several loops.
     *
     * @param loops how many, 2 or more
     * @param last name of the last one
     * @param eachProved whether each loop is proved best for its part
     */
    record Divided(int loops, String last, boolean eachProved) implements Remark {
        @Override
        public String words() {
            String proof = eachProved
                    ? "no loop of a part has fewer bends, counted with what is left out; other cuts were tried, not all"
                    : "the cut and its loops are the best that were tried, not proved best";
            return "The floor is cut into " + loops + " parts; loops A to " + last + " follow each other along the rim"
                    + " at the port and go to valve outlets 1 to " + loops + ": " + proof + ".";
        }
    }

    /**
     * Loops were shortened.
     *
     * @param limit pipe of a loop
     * @param bare places that stay bare
     * @param reachable places that could be reached
     * @param stiff whether the pipe is stiff
     */
    record Shortened(double limit, int bare, int reachable, boolean stiff) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "Shortened to %.2f m of pipe a loop: %d of %d places stay bare, %s.",
                    limit / 1000,
                    bare,
                    reachable,
                    stiff
                            ? "those furthest from the port and those that such pipe cannot reach"
                            : "at walls and beside what is left free where that costs few bends");
        }
    }

    /**
     * The pipe is stiff.
     *
     * @param how what that does to the loop, a sentence part that begins in a small letter
     * @param proved whether no such loop is better
     */
    record Stiff(String how, boolean proved) implements Remark {
        @Override
        public String words() {
            return how.substring(0, 1).toUpperCase(Locale.ROOT) + how.substring(1) + "."
                    + (proved
                            ? " It is proved that no such loop is better."
                            : " This is the best such loop that was met, not proved best.");
        }
    }

    /**
     * A kit was cut before.
     *
     * @param change what becomes of its pipe
     * @param afresh what a plan begun afresh would make of it, if it is another
     */
    record Changed(LoopChange change, Optional<LoopChange> afresh) implements Remark {
        @Override
        public String words() {
            return change.sentence()
                    + afresh.map(a -> String.format(
                                    Locale.ROOT, " A plan begun afresh would let %.2f m go.", a.goes() / 1000))
                            .orElse("");
        }
    }

    /**
     * Plates were chosen by heat.
     *
     * @param wanted heat into the room, W
     * @param coverage share of what can be plated, 0 to 1
     * @param upward heat that it gives, W
     * @param enough whether that is enough
     */
    record PlatedByHeat(double wanted, double coverage, double upward, boolean enough) implements Remark {
        @Override
        public String words() {
            String chosen = String.format(
                    Locale.ROOT,
                    "Plates were chosen by heat: %.0f W are wanted, plates over %.0f %% of what can be plated give %.0f W.",
                    wanted,
                    100 * coverage,
                    upward);
            return enough
                    ? chosen
                    : chosen + " More plates than these there cannot be: the rest must come from elsewhere.";
        }
    }

    /**
     * Plates could not be chosen by heat.
     *
     * @param reason why not, a sentence part
     * @param coverage share that was taken instead, 0 to 1
     */
    record NotPlatedByHeat(String reason, double coverage) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "Plates could not be chosen by heat (%s): %.0f %% of what can be plated is covered.",
                    reason,
                    100 * coverage);
        }
    }

    /**
     * Heat and flow could not be reckoned.
     *
     * @param reason why not, a sentence part
     */
    record NoHeat(String reason) implements Remark {
        @Override
        public String words() {
            return "Heat and flow could not be reckoned: " + reason + "; the kit is whole without.";
        }
    }

    /**
     * Something would be cheaper with a little less, or dearer with a little more.
     *
     * @param near what, one or more
     */
    record JustMissed(List<Near> near) implements Remark {
        /** Copies the list. */
        public JustMissed {
            near = List.copyOf(near);
        }

        @Override
        public String words() {
            return "Just missed: " + near.stream().map(Near::words).collect(Collectors.joining("; ")) + ".";
        }
    }

    /** What was just missed. */
    sealed interface Near {
        /** A sentence part for people. */
        String words();
    }

    /**
     * A shorter coil would nearly do.
     *
     * @param over pipe too much for it
     * @param shorter its length
     * @param used pipe that is cut
     * @param saving what it would save
     * @param places of the floor that so much pipe lies on
     */
    record ShorterCoil(double over, double shorter, double used, Money saving, int places) implements Near {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "with %.2f m less pipe a coil of %s would do for the %.2f m, and save %s: %d places fewer on the floor,"
                            + " or shorter tails",
                    Math.ceil(over / 10) / 100,
                    metres(shorter),
                    used / 1000,
                    saving,
                    places);
        }
    }

    /**
     * Hardly anything of a coil is left.
     *
     * @param left what
     * @param coil its length
     * @param longer length of the next longer one
     * @param more what that costs more
     */
    record FullCoil(double left, double coil, double longer, Money more) implements Near {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "only %.0f mm of the coil of %s are left, so longer tails would take one of %s and cost %s more",
                    Math.floor(left),
                    metres(coil),
                    metres(longer),
                    more);
        }
    }

    /**
     * One plate less would nearly do.
     *
     * @param percent coverage with which it would, %
     * @param asked coverage asked, 0 to 1
     * @param saving what it would save
     */
    record PlateLess(int percent, double asked, Money saving) implements Near {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "with plates.coverage %d%% instead of %.0f%% one plate less would do, and save %s",
                    percent,
                    100 * asked,
                    saving);
        }
    }

    /**
     * There is no channel.
     *
     * @param width of the groove
     * @param thinnest the thinnest cutter of the catalog
     */
    record NoChannel(double width, double thinnest) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "No channel is drawn: it is %.1f mm wide and the thinnest cutter of the catalog is %.1f mm.",
                    width,
                    thinnest);
        }
    }

    /**
     * A plate that the job names is not used.
     *
     * @param plate which, and why
     */
    record PlateUnused(UnusedPlate plate) implements Remark {
        @Override
        public String words() {
            String reason =
                    switch (plate.why()) {
                        case WIDER -> "a narrower one is named";
                        case NO_USE ->
                            "a groove of it costs no less than one of a single plate, or it leaves its"
                                    + " neighbours no room";
                        case NONE_FOUND -> "no plan with it was found";
                        case NO_BETTER ->
                            "the best plan found with it costs as much in material and saw work, and is no"
                                    + " easier to cut";
                        case DEARER ->
                            String.format(
                                    Locale.ROOT,
                                    "the best plan found with it costs %.1f %% more in material and saw work",
                                    100 * plate.more());
                    };
            return "Plate " + plate.sku() + " is named in the job but not used: " + reason + ".";
        }
    }

    /**
     * The loop is the designer's.
     *
     * @param line how it follows what was drawn
     */
    record AsDrawn(Line line) implements Remark {
        @Override
        public String words() {
            String how =
                    switch (line) {
                        case ROUNDED -> "along the line that was drawn, with its corners rounded";
                        case NEARLY -> "along the line that was drawn, but for what is noted of it";
                        case EXACTLY -> "as it was drawn";
                    };
            return "The loop is laid " + how + ": it was checked, not improved.";
        }
    }

    /** How a loop follows what was drawn. */
    enum Line {
        /** Corners were rounded. */
        ROUNDED,
        /** Something was joined or taken for an arc, which a warning of the job says. */
        NEARLY,
        /** Nothing was changed. */
        EXACTLY
    }

    /**
     * Parts that were already routed are kept.
     *
     * @param parts how many
     * @param kept pipe in them
     * @param fresh pipe elsewhere on the floor
     */
    record PartsKept(int parts, double kept, double fresh) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "%.2f m of the pipe on the floor lie in %s already routed, %.2f m are new.",
                    kept / 1000,
                    parts == 1 ? "the part" : "the " + parts + " parts",
                    fresh / 1000);
        }
    }

    /**
     * Heated floor stays bare.
     *
     * @param floor where, why, and what would free it
     */
    record StaysBare(BareFloor floor) implements Remark {
        @Override
        public String words() {
            return floor.sentence();
        }
    }

    /**
     * Something beside the kit could not be worked out by a fault of ours.
     *
     * @param lost what
     * @param fault name of the fault
     */
    record Lost(Beside lost, String fault) implements Remark {
        @Override
        public String words() {
            String what =
                    switch (lost) {
                        case ALTERNATIVES -> "The alternatives could not be compared";
                        case PLATES -> "Plates in few lengths and for other coverages could not be compared";
                        case TEMPERATURES -> "The floor could not be shaded by temperature";
                    };
            return what + ": a fault of our own (" + fault + "); the kit is whole without.";
        }
    }

    /** What is worked out beside a kit. */
    enum Beside {
        /** Other plans of the floor. */
        ALTERNATIVES,
        /** Plates in few lengths and for other coverages. */
        PLATES,
        /** Temperatures place by place. */
        TEMPERATURES
    }

    /**
     * The kit is one of several alternatives.
     *
     * @param number which, from 1
     * @param count of how many
     * @param name what it is best at
     * @param changes the keys of the job that differ, as they would be written
     */
    record Alternative(int number, int count, String name, String changes) implements Remark {
        @Override
        public String words() {
            return String.format(
                    Locale.ROOT,
                    "This kit is alternative %d of %d (%s), planned with %s.",
                    number,
                    count,
                    name,
                    changes);
        }
    }

    private static String metres(double mm) {
        return String.format(Locale.ROOT, "%.1f", mm / 1000).replaceFirst("\\.0$", "") + " m";
    }
}
