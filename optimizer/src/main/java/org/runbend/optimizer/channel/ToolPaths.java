package org.runbend.optimizer.channel;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.job.Point;

/**
 * Where the middle of the cutter goes beside the centreline of a pipe so that the channel gets its width: open lines from
 * end to end, which step aside where a straight meets a wider bend, and rings in the pads.
 */
public final class ToolPaths {
    private static final double SAME = 1e-6;

    private final ChannelSize size;
    private final Passes passes;
    private final List<Element> elements;

    private ToolPaths(ChannelSize size, Breakdown loop) {
        this.size = size;
        passes = Passes.of(size);
        elements = loop.elements();
    }

    /**
     * A ring in a pad.
     *
     * @param centre middle of the pad
     * @param radius of the way of the cutter's middle, mm
     */
    public record Ring(Point centre, double radius) {}

    /** The lines beside the centreline, each open, as corners with bulges; none where the cutter is as wide as the channel. */
    public static List<List<Corner>> lines(ChannelSize size, Breakdown loop) {
        return new ToolPaths(size, loop).lines();
    }

    /** The rings of both pads, the inner ones first. */
    public static List<Ring> rings(ChannelSize size, Breakdown loop) {
        return new ToolPaths(size, loop).rings();
    }

    private List<List<Corner>> lines() {
        List<List<Corner>> lines = new ArrayList<>();
        for (int i = 1; i <= passes.beside(); i++) {
            double share = (double) i / passes.beside();
            lines.add(line(share));
            lines.add(line(-share));
        }
        return lines;
    }

    private List<Ring> rings() {
        List<Ring> rings = new ArrayList<>();
        for (Point end : List.of(
                elements.get(0).from(), elements.get(elements.size() - 1).to())) {
            for (int i = 1; i <= passes.rings(); i++) {
                rings.add(new Ring(end, i * passes.ringStep()));
            }
        }
        return rings;
    }

    /** A line by its share of the room on the left of the pipe (negative: on its right). */
    private List<Corner> line(double share) {
        List<Corner> line = new ArrayList<>();
        for (Element e : elements) {
            Corner[] part = e instanceof Element.Bend bend ? along(bend, share) : along((Element.Run) e, share);
            int last = line.size() - 1;
            if (last >= 0 && line.get(last).at().distance(part[0].at()) < SAME) {
                line.remove(last);
            }
            line.add(part[0]);
            line.add(part[1]);
        }
        return line;
    }

    private Corner[] along(Element.Run run, double share) {
        double left = share * (size.width() - size.cutter()) / 2;
        double ux = (run.to().x() - run.from().x()) / run.length();
        double uy = (run.to().y() - run.from().y()) / run.length();
        return new Corner[] {
            new Corner(new Point(run.from().x() - left * uy, run.from().y() + left * ux), 0),
            new Corner(new Point(run.to().x() - left * uy, run.to().y() + left * ux), 0)
        };
    }

    private Corner[] along(Element.Bend bend, double share) {
        double left = share * (size.bendWidth() - size.cutter()) / 2;
        double scale = 1 - Math.signum(bend.turn()) * left / bend.radius();
        double bulge = StrictMath.tan(Math.toRadians(bend.turn()) / 4);
        return new Corner[] {
            new Corner(towards(bend.centre(), bend.from(), scale), bulge),
            new Corner(towards(bend.centre(), bend.to(), scale), 0)
        };
    }

    private static Point towards(Point centre, Point p, double share) {
        return new Point(centre.x() + (p.x() - centre.x()) * share, centre.y() + (p.y() - centre.y()) * share);
    }
}
