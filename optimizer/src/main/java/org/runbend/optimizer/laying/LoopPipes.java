package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.floor.Entry;
import org.runbend.optimizer.floor.EntryRoom;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.Lead;
import org.runbend.optimizer.floor.Strand;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopSolution;

/**
 * Turns loops on a lattice into pipe from hole to hole: corners rounded, lead-ins joined on, slots at the holes. Where holes
 * are chosen and the first straight is shorter than the slot, the hole moves back by what is missing.
 */
public final class LoopPipes {
    private static final double NOISE = 1e-6;

    private final Job job;
    private final double radius;
    private final Entry entry;

    /** For the loops of a job, with bends of a radius, mm. */
    public LoopPipes(Job job, double radius) {
        this.job = job;
        this.radius = radius;
        this.entry = Entry.of(job, 1);
    }

    /** The pipe of a loop on its lattice. */
    public Breakdown of(Lattice lattice, LoopSolution loop) {
        List<Point> path = oriented(lattice, loop).stream().map(lattice::at).toList();
        return of(path, leads(lattice, loop.port()));
    }

    /** The pipe of a loop laid. */
    public Breakdown of(LaidLoops.One loop) {
        return of(loop.path(), loop.leads());
    }

    /** The pipes of loops laid, in their order. */
    public List<Breakdown> of(LaidLoops laid) {
        return laid.loops().stream().map(this::of).toList();
    }

    /** Nodes of a loop in order of flow: where holes are settled, from the node of the flow's. */
    static List<Integer> oriented(Lattice lattice, LoopSolution loop) {
        List<Integer> cycle = loop.cycle();
        if (lattice.leads().isEmpty() || cycle.get(0) == flowNode(lattice, loop.port())) {
            return cycle;
        }
        List<Integer> reversed = new ArrayList<>(cycle);
        Collections.reverse(reversed);
        return reversed;
    }

    private static int flowNode(Lattice lattice, PortPair port) {
        return lattice.ports().get(indexOf(lattice, port)).from();
    }

    /** Which of the lattice's pairs a loop uses; its nodes may be named the other way round. */
    static int indexOf(Lattice lattice, PortPair port) {
        for (int i = 0; i < lattice.ports().size(); i++) {
            PortPair p = lattice.ports().get(i);
            if ((p.from() == port.from() && p.to() == port.to()) || (p.from() == port.to() && p.to() == port.from())) {
                return i;
            }
        }
        throw new IllegalStateException("no such port pair: " + port);
    }

    /** The ways to the holes of a loop's pair, if they were settled before it was laid. */
    static Optional<Lead.Pair> leads(Lattice lattice, PortPair port) {
        return lattice.leads().isEmpty()
                ? Optional.empty()
                : Optional.of(lattice.leads().get(indexOf(lattice, port)));
    }

    private Breakdown of(List<Point> path, Optional<Lead.Pair> leads) {
        Breakdown laid = new Filleting().breakDown(path, radius);
        List<Element> before;
        List<Element> after;
        if (leads.isPresent()) {
            before = elements(leads.get().flow());
            after = elements(backwards(leads.get().back()));
        } else {
            before = back(laid.elements().get(0), true);
            after = back(laid.elements().get(laid.elements().size() - 1), false);
        }
        return withSlots(laid.between(before, after));
    }

    /** The same pipe with a slot at either end. */
    public Breakdown withSlots(Breakdown pipe) {
        List<Element> whole = pipe.pipe();
        Element first = whole.get(0);
        Element last = whole.get(whole.size() - 1);
        return pipe.with(List.of(slot(first.from(), first, true), slot(last.to(), last, false)));
    }

    private Slot slot(Point hole, Element element, boolean atStart) {
        Point ahead = ahead(element, atStart);
        double length = hole.distance(ahead);
        return new Slot(
                hole,
                new Point(
                        hole.x() + entry.slot() * (ahead.x() - hole.x()) / length,
                        hole.y() + entry.slot() * (ahead.y() - hole.y()) / length),
                2 * entry.half());
    }

    /** A point straight ahead of the end of an element, inward. */
    private static Point ahead(Element e, boolean atStart) {
        if (e instanceof Element.Bend bend) {
            Point end = atStart ? bend.from() : bend.to();
            double side = Math.signum(bend.turn()) * (atStart ? 1 : -1);
            return new Point(
                    end.x() - side * (end.y() - bend.centre().y()),
                    end.y() + side * (end.x() - bend.centre().x()));
        }
        return atStart ? e.to() : e.from();
    }

    private List<Element> elements(Lead lead) {
        return lead.isNone()
                ? List.of()
                : new Filleting().breakDown(lead.corners(), entry.radius()).elements();
    }

    private static Lead backwards(Lead lead) {
        List<Point> reversed = new ArrayList<>(lead.corners());
        Collections.reverse(reversed);
        return new Lead(reversed);
    }

    /** What a slot lacks of straight pipe, straight on behind the end of a loop. */
    private List<Element> back(Element end, boolean atStart) {
        double missing = entry.slot() - (end instanceof Element.Run ? end.length() : 0);
        if (missing <= NOISE) {
            return List.of();
        }
        Point node = atStart ? end.from() : end.to();
        Point ahead = ahead(end, atStart);
        double length = node.distance(ahead);
        Point hole = new Point(
                node.x() - missing * (ahead.x() - node.x()) / length,
                node.y() - missing * (ahead.y() - node.y()) / length);
        return List.of(atStart ? new Element.Run(hole, node) : new Element.Run(node, hole));
    }

    /**
     * Which loop's hole was moved back to where none may be; empty if all have room.
     *
     * @param problem the floor that the loops were laid on
     */
    Optional<Integer> withoutRoom(FloorProblem problem, List<Breakdown> pipes, boolean settled) {
        EntryRoom room = new EntryRoom(problem);
        for (int i = 0; i < pipes.size() && !settled; i++) {
            Breakdown pipe = pipes.get(i);
            List<Element> all = pipe.elements();
            boolean start =
                    pipe.leadIn() == 0 || hasRoom(room, pipes, i, 0, all.get(0).from());
            boolean end = pipe.leadOut() == 0
                    || hasRoom(
                            room,
                            pipes,
                            i,
                            all.size() - 1,
                            all.get(all.size() - 1).to());
            if (!start || !end) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    private boolean hasRoom(EntryRoom room, List<Breakdown> pipes, int loop, int lead, Point hole) {
        List<Element> own = pipes.get(loop).elements();
        if (!room.allowsHole(hole) || !room.allows(List.of(own.get(lead)))) {
            return false;
        }
        Strand strand = new Strand(List.of(own.get(lead)));
        for (int i = 0; i < pipes.size(); i++) {
            List<Element> others = pipes.get(i).elements();
            for (int j = 0; j < others.size(); j++) {
                boolean near =
                        i == loop && along(others, lead, j) < job.layout().spacing();
                if (!near && strand.isNear(new Strand(List.of(others.get(j))), entry.apart())) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Length of pipe between two elements. */
    private static double along(List<Element> elements, int a, int b) {
        return a == b
                ? 0
                : elements.subList(Math.min(a, b) + 1, Math.max(a, b)).stream()
                        .mapToDouble(Element::length)
                        .sum();
    }

    /** Radius at which bends are laid, mm: half the spacing, or the pipe's least radius as fitted where that is larger. */
    public static double bendRadius(Job job) {
        return Math.max(job.layout().spacing() / 2, job.pipe().product().fittedRadius());
    }
}
