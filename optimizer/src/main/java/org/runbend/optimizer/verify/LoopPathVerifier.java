package org.runbend.optimizer.verify;

import java.util.List;
import org.locationtech.jts.geom.LineString;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;

/**
 * Holds laid loops against the floor, from records and plain geometry alone; it shares no line with what lays or breaks
 * down a loop. Sizes in mm, angles in degrees.
 *
 * <p>Rules: elements join without hole or kink, no run follows a run, equal-handed bends without a straight between are
 * one; a bend's centre, radius and turn agree with its ends and its radius is not under the pipe's; the pipe crosses
 * neither itself nor another loop; it stays inside the outline, {@code edge} from it, and its clearance off each
 * keep-out; both ends lie at the port, side by side; parallel runs keep 0.97 and pipe further along than 2.2 spacings
 * keeps 0.9 of the spacing. Loops are called A, B, ... in the order given, elements count from 0.
 *
 * <p>Tolerances: 0.05 mm for places, far over rounding and far under what a router does; 0.1 degrees for joints. Arcs are
 * measured on chords of one degree.
 */
public final class LoopPathVerifier {
    private static final double NEXT_TO_EACH_OTHER = 1.1;
    private static final double FORGIVEN = 0.05;
    /** A tenth is the last digit of many drawings: loop and wall in a turned room are each up to 0.071 off. */
    private static final double DRAWN = 0.15;

    private final List<Point> outline;
    private final double edge;
    private final List<KeepOut> keepOuts;
    private final double spacing;
    private final Point port;
    private final double reach;
    private final double leastRadius;
    private final double apart;
    private boolean drawn;
    private final LeadSizes leads;

    /** What the loops of a job are held against; those of a loop that was drawn need not end side by side. */
    public static LoopPathVerifier of(Job job) {
        double spacing = job.layout().spacing();
        double reach = job.floor().port().reach();
        return new LoopPathVerifier(
                        job.floor().outline(),
                        job.layout().edge(),
                        job.floor().keepOuts(),
                        spacing,
                        job.floor().port().at(),
                        reach,
                        job.pipe().product().fittedRadius(),
                        job.hasOwnLoop() ? reach : NEXT_TO_EACH_OTHER * spacing,
                        leads(job))
                .ofDrawn(job.hasOwnLoop());
    }

    /** Groove and least web; through a wall the web to the outline is the wall itself. */
    private static LeadSizes leads(Job job) {
        double half = job.groove().bendWidth() / 2;
        double web = job.groove().leastWeb();
        boolean wall = job.floor().port().turn() == Job.Turn.LEVEL;
        return new LeadSizes(wall ? 0 : half + web, 2 * half + web);
    }

    /**
     * What lead-ins keep.
     *
     * @param edge from centreline to outline, mm
     * @param apart from any other centreline, mm
     */
    public record LeadSizes(double edge, double apart) {}

    /**
     * What loops are held against.
     *
     * @param outline corners in order
     * @param edge least distance of centreline and outline
     * @param keepOuts what no pipe may touch
     * @param spacing centre to centre of neighbouring runs
     * @param port where flow and return come through
     * @param reach how far from the port a single loop may begin and end; each further loop may go a spacing further
     * @param leastRadius least radius of the pipe's bends
     */
    public LoopPathVerifier(
            List<Point> outline,
            double edge,
            List<KeepOut> keepOuts,
            double spacing,
            Point port,
            double reach,
            double leastRadius) {
        this(
                outline,
                edge,
                keepOuts,
                spacing,
                port,
                reach,
                leastRadius,
                NEXT_TO_EACH_OTHER * spacing,
                new LeadSizes(edge, spacing));
    }

    /**
     * What loops are held against whose ends need not lie side by side.
     *
     * @param outline corners in order
     * @param edge least distance of centreline and outline
     * @param keepOuts what no pipe may touch
     * @param spacing centre to centre of neighbouring runs
     * @param port where flow and return come through
     * @param reach how far from the port a single loop may begin and end; each further loop may go a spacing further
     * @param leastRadius least radius of the pipe's bends
     * @param apart how far the two ends of a loop may lie from each other
     * @param leads what lead-ins keep
     */
    public LoopPathVerifier(
            List<Point> outline,
            double edge,
            List<KeepOut> keepOuts,
            double spacing,
            Point port,
            double reach,
            double leastRadius,
            double apart,
            LeadSizes leads) {
        this.outline = List.copyOf(outline);
        this.edge = edge;
        this.keepOuts = List.copyOf(keepOuts);
        this.spacing = spacing;
        this.port = port;
        this.reach = reach;
        this.leastRadius = leastRadius;
        this.apart = apart;
        this.leads = leads;
    }

    /** Holds a loop as somebody drew it: near outline and keep-outs 0.15 mm are forgiven, for drawings are rounded. */
    public LoopPathVerifier ofDrawn(boolean isDrawn) {
        drawn = isDrawn;
        return this;
    }

    /** Each rule broken, with loop, element and both numbers; empty for sound loops. */
    public List<Finding> verify(List<Breakdown> loops) {
        Findings findings = new Findings();
        findings.unless(!loops.isEmpty(), "the plan has %d loops, 1 or more asked", loops.size());
        JointRules joints = new JointRules(leastRadius, findings);
        RoomRules room = new RoomRules(outline, keepOuts, findings);
        if (drawn) {
            room.forgive(DRAWN);
        }
        NearnessRules nearness = new NearnessRules(spacing, leads.apart(), findings);
        for (int i = 0; i < loops.size(); i++) {
            List<Element> elements = loops.get(i).elements();
            joints.check(i, loops.get(i));
            for (int j = 0; j < elements.size(); j++) {
                LineString pipe = Chords.of(elements.get(j));
                room.check(new Finding.Place(i, j), pipe, loops.get(i).isLead(j) ? leads.edge() : edge);
            }
            checkEnds(new Finding.Place(i, -1), loops.get(i).laid(), reach + (loops.size() - 1) * spacing, findings);
            nearness.add(i, loops.get(i));
        }
        nearness.check();
        return findings.all();
    }

    /** Whether a finding is about two runs that lie beside each other. */
    public static boolean isOfParallelRuns(Finding finding) {
        return finding.rule().equals(NearnessRules.PARALLEL_RUNS);
    }

    private void checkEnds(Finding.Place name, List<Element> elements, double allowed, Findings findings) {
        Point first = elements.get(0).from();
        Point last = elements.get(elements.size() - 1).to();
        double begin = Math.hypot(first.x() - port.x(), first.y() - port.y());
        double end = Math.hypot(last.x() - port.x(), last.y() - port.y());
        findings.unless(
                begin <= allowed + FORGIVEN, "%s: begins %.2f mm from the port, %.2f mm allowed", name, begin, allowed);
        findings.unless(
                end <= allowed + FORGIVEN, "%s: ends %.2f mm from the port, %.2f mm allowed", name, end, allowed);
        double gap = Math.hypot(first.x() - last.x(), first.y() - last.y());
        findings.unless(gap <= apart + FORGIVEN, "%s: its ends lie %.2f mm apart, %.2f mm allowed", name, gap, apart);
    }
}
