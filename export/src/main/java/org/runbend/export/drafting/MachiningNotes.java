package org.runbend.export.drafting;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.runbend.export.drawing.Decimals;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Mark;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.channel.Passes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Says how a drawing is cut: what each layer is, in the order of the work, how deep, in what and how exactly. The side and
 * the depth of a cut have no standard in drawings, so words carry them; they stand in model space and on the sheet alike.
 */
final class MachiningNotes {
    /** What a router holds on a panel, mm: common practice. */
    private static final String TOLERANCE = "tolerance of cutting +-0.5 mm (common practice)";

    /** Of a fingerprint, so many letters tell two plans apart. */
    private static final int FINGERPRINT = 12;

    private final KitPlan plan;
    private final GrooveForm form;
    private final Set<Layer> layers = EnumSet.noneOf(Layer.class);

    MachiningNotes(KitPlan plan, GrooveForm form, List<Mark> marks) {
        this.plan = plan;
        this.form = form;
        marks.forEach(m -> layers.add(m.layer()));
    }

    /** Layer by layer, those that are cut in the order of the work, a line each. */
    List<String> lines() {
        List<String> cuts = new ArrayList<>();
        if (layers.contains(Layer.CHANNEL) || form == GrooveForm.CENTRE) {
            plan.channel().ifPresent(c -> cuts.add(channel(c)));
        }
        if (layers.contains(Layer.SLOT)) {
            cuts.add("SLOT: pocket, tool inside the line, falling from the groove down to its hole");
        }
        if (layers.contains(Layer.HOLE)) {
            cuts.add("HOLE: through, tool inside the line, or drilled: " + HoleMarks.sizes(plan));
        }
        cuts.add("FLOOR: through, tool outside the line, last of all, as it frees the part" + innerCorners());
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < cuts.size(); i++) {
            lines.add((cuts.size() > 1 ? "cut " + (i + 1) + ": " : "cut: ") + cuts.get(i));
        }
        HoleMarks.uncut(plan.job()).ifPresent(lines::add);
        HoleMarks.standing(plan.job()).ifPresent(lines::add);
        lines.add(uncut());
        lines.add(material());
        lines.add(TOLERANCE + "; datum: the ringed cross at 0, 0" + datum());
        return lines;
    }

    /** Which plan and which revision of it this is. */
    static String identity(Job job) {
        String plan = "plan "
                + job.fingerprint()
                        .substring(0, Math.min(FINGERPRINT, job.fingerprint().length()));
        return job.revision().map(r -> plan + ", revision " + r).orElse(plan);
    }

    private String channel(ChannelPlan channel) {
        ChannelSize size = channel.size();
        Passes passes = channel.passes();
        String depth = passes.down() + " passes down of " + mm(passes.layer());
        String pads = passes.rings() == 0
                ? ""
                : form == GrooveForm.CENTRE
                        ? ", rings in pads of dia " + mm(size.pad())
                        : ", pads dia " + mm(size.pad()) + " in " + passes.rings() + " rings of "
                                + mm(passes.ringStep());
        if (form == GrooveForm.CENTRE) {
            String beside =
                    passes.across() == 1 ? "PIPE" + (passes.rings() == 0 ? "" : " and CHANNEL") : "PIPE and CHANNEL";
            return beside + ": tool on the line, all of them" + pads + ", " + depth + "; groove " + size(size);
        }
        String across = passes.across() == 1
                ? "1 pass"
                : passes.across() + " passes side by side, step-over " + mm(passes.stepOver()) + " mm";
        return "CHANNEL: pocket, tool inside, cleared whole: " + across + pads + ", " + depth + "; " + size(size);
    }

    /** A tool outside the line rounds the corners that point into the part. */
    private String innerCorners() {
        Optional<Double> cutter = plan.channel().map(c -> c.size().cutter());
        return cutter.isEmpty() || !Measures.hasInnerCorner(plan.job())
                ? ""
                : "; inner corners stay round by the cutter's radius, " + mm(cutter.get() / 2) + " with dia "
                        + mm(cutter.get());
    }

    private String uncut() {
        Set<Layer> uncut = EnumSet.copyOf(layers);
        uncut.addAll(Set.of(Layer.NOTE, Layer.TITLE));
        uncut.removeAll(Set.of(Layer.FLOOR, Layer.CHANNEL, Layer.SLOT, Layer.HOLE));
        if (form == GrooveForm.CENTRE) {
            uncut.remove(Layer.PIPE);
        }
        return "not cut: "
                + uncut.stream().map(l -> l.name() + meaning(l).orElse("")).collect(Collectors.joining(", "));
    }

    private Optional<String> meaning(Layer layer) {
        return Optional.ofNullable(
                switch (layer) {
                    case KEEP_OUT -> " (things; the outer line is as near as the middle of the pipe may come)";
                    case UNHEATED -> " (no heat wanted)";
                    case PLATE -> " (spreader plates, numbered as in the lists)";
                    case SENSOR -> " (sensor under a plate, middle of its conduit)";
                    case PIPE -> " (centreline, bend radius " + mm(plan.bendRadius()) + ")";
                    default -> null;
                });
    }

    /** The board that the job names; else it lies on the foam, or is foam itself with what the job asks under the pipe. */
    private String material() {
        Optional<Double> depth = plan.channel().map(c -> c.size().depth());
        Optional<Job.RoutedBoard> given = plan.job().build().flatMap(Job.Build::board);
        if (given.isPresent() && depth.isPresent()) {
            Job.RoutedBoard b = given.get();
            return "board: " + b.board().name() + ", " + mm(b.thickness()) + " mm; groove " + mm(depth.get())
                    + " deep from its top, " + mm(b.rest()) + " left";
        }
        if (depth.isEmpty()) {
            return "board: as thick as the pipe and what lies round it; no groove is drawn";
        }
        double under = plan.job().build().map(Job.Build::insulation).orElse(0.0);
        String board = "depth from the top of the board, which is foam or board, ";
        return under > 0
                ? board + mm(depth.get() + under) + " thick in all: " + mm(depth.get()) + " of groove, " + mm(under)
                        + " of insulation under the pipe"
                : board + "over " + mm(depth.get()) + " thick";
    }

    private String datum() {
        return OriginMark.isShown(plan.job()) ? "" : ", which lies off the floor and is not drawn";
    }

    private static String size(ChannelSize size) {
        return TitleBlock.channel(size);
    }

    private static String mm(double value) {
        return Decimals.of(value, 1);
    }
}
