package org.runbend.export.papers;

import static org.runbend.export.papers.HeatFigures.figure;
import static org.runbend.export.papers.HeatFigures.one;
import static org.runbend.export.papers.HeatFigures.thousandths;
import static org.runbend.export.papers.HeatFigures.three;
import static org.runbend.export.papers.HeatFigures.two;
import static org.runbend.export.papers.HeatFigures.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.heat.BareFloor;
import org.runbend.optimizer.heat.FlowRequest;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatReckoning;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.HeatedLoop;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.PipeStrip;
import org.runbend.optimizer.heat.circuit.FloorMass;
import org.runbend.optimizer.heat.coolant.CoolantProperties;
import org.runbend.optimizer.heat.flow.Bend;
import org.runbend.optimizer.heat.flow.LoopLosses;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Stack;

/** What somebody needs who wants to work the figures of a heat report out again. */
final class FollowSection {
    private final HeatProblem problem;
    private final HeatSolution heat;

    FollowSection(HeatProblem problem, HeatSolution heat) {
        this.problem = problem;
        this.heat = heat;
    }

    void write(PdfFlow flow) {
        flow.heading("To work it out again");
        for (String line : lines()) {
            flow.paragraph(line, TextStyle.SMALL);
        }
    }

    private List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(layers());
        lines.addAll(strips());
        lines.add(hottest());
        lines.addAll(pressures());
        if (problem.supply().flow() instanceof FlowRequest.ByPump pump) {
            lines.add("Pump, l/min and kPa, straight between: "
                    + pump.curve().points().stream()
                            .map(p -> one(p.flow()) + " " + one(p.head()))
                            .collect(Collectors.joining(", "))
                    + ".");
        }
        lines.add(filling());
        lines.add(storing());
        return lines;
    }

    private String layers() {
        Stack k = problem.build().stack();
        PipeWall pipe = problem.build().pipe();
        return String.format(
                Locale.ROOT,
                "Layers: surface %s W/(m2 K), finish %s m2K/W, cover %s mm of %s W/(m K); foam %s mm of %s W/(m K) under the pipe,"
                        + " %s m2K/W to the air outside. So %s W/(m2 K) from the plates up and %s down, through foam beside and under"
                        + " the pipe. Pipe %s x %s mm of %s W/(m K).",
                one(k.surface()),
                thousandths(k.finish()),
                one(k.cover()),
                two(k.coverConductivity()),
                one(k.foam()),
                thousandths(k.foamConductivity()),
                two(k.outer()),
                thousandths(k.up()),
                thousandths(k.down(pipe.outer())),
                one(pipe.outer()),
                one(pipe.wall()),
                two(pipe.conductivity()));
    }

    /** What lies how beside the pipe. */
    private List<String> strips() {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < problem.loops().size(); i++) {
            HeatedLoop loop = problem.loops().get(i);
            List<String> parts = new ArrayList<>();
            for (PipeStrip s : loop.strips()) {
                if (s.length() > 0) {
                    parts.add(two(s.length() / 1000) + " m " + strip(s));
                }
            }
            lines.add(String.format(
                    Locale.ROOT,
                    "%s: %s. Film of the coolant %s W/(m2 K) (Gnielinski 1976), %s mm of air between pipe and plate.",
                    loop.name(),
                    String.join("; ", parts),
                    three(heat.loops().get(i).film()),
                    one(HeatReckoning.USUAL_GAP)));
        }
        lines.add(
                "In a plate: fins of plate and cover on both sides (Hottel, Whillier, Bliss); 0.545 of the pipe's girth passes heat, 1.2"
                        + " times the film's resistance, air over 0.8 of half the girth, 12 % more down: fitted to finite elements. Without"
                        + " one: a fin of the cover on 1.7 pipes' width behind 2.36 m K/W, wall and film; down also 0.33 of the shape factor"
                        + " of a row of buried pipes, of which 0.155 less comes through (VDI Heat Atlas, E1, from memory).");
        for (BareFloor bare : problem.bare()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%s: %s m2 along %s m of warm floor; the cover is a fin that begins with what the warm floor has at its edge in"
                            + " the mean.",
                    bare.kind().words(),
                    two(bare.area()),
                    two(bare.edge())));
        }
        return lines;
    }

    private static String strip(PipeStrip s) {
        String width = two(s.pitch() / 1000 * s.length() / 1000) + " m2";
        return s.plate()
                .map(p -> String.format(
                        Locale.ROOT,
                        "in plates%s %s mm thick of %s W/(m K), %s of the floor's %s to each side (%s)",
                        s.name().isEmpty() ? "" : " " + s.name() + ",",
                        one(p.thickness()),
                        whole(p.conductivity()),
                        sides(s.left().plate(), s.right().plate()),
                        sides(s.left().reach(), s.right().reach()),
                        width))
                .orElseGet(() ->
                        s.kind().words().replace("pipe ", "") + ", " + one(s.pitch()) + " mm wide (" + width + ")");
    }

    private static String sides(double left, double right) {
        return one(left).equals(one(right)) ? one(left) + " mm" : one(left) + " and " + one(right) + " mm";
    }

    private String hottest() {
        HeatSolution.Hottest h = heat.hottest();
        return String.format(
                Locale.ROOT,
                "Hottest floor, pipe and plate touching, no film: up %s, through %s W/(m2 K), peak %s times the mean: room + (up x"
                        + " peak x (supply - room) + through x (outside - room)) / %s = %s degrees C at %s.",
                two(h.up()),
                two(h.exchange()),
                thousandths(h.peak()),
                one(h.surface()),
                one(h.celsius()),
                one(problem.supply().temperature()));
    }

    /** What the pressure of each loop is made of. */
    private List<String> pressures() {
        CoolantProperties c = heat.flow().coolant();
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "Coolant at its mean: %s kg/m3, %s J/(kg K), %s mPa s, %s W/(m K) (Melinder 2010).",
                whole(c.density()),
                whole(c.heatCapacity()),
                thousandths(1000 * c.viscosity()),
                thousandths(c.conductivity())));
        for (int i = 0; i < heat.loops().size(); i++) {
            LoopHeat loop = heat.loops().get(i);
            LoopPath path = problem.loops().get(i).path();
            LoopLosses l = loop.losses();
            List<String> bends = new ArrayList<>();
            for (Bend b : path.bends()) {
                bends.add(b.count() + " of " + whole(b.angle()) + " degrees at " + one(b.radius()) + " mm");
            }
            lines.add(String.format(
                    Locale.ROOT,
                    "%s: %s m straight, tails with it, in a bore of %s mm, %s mm rough, at a friction factor of %s take %s kPa; bends %s (%s);"
                            + " fittings %s (%s velocity heads). Darcy and Weisbach; Churchill 1977, White 1929, Rennels 2012.",
                    loop.name(),
                    two(path.straight() / 1000),
                    one(path.bore()),
                    thousandths(path.roughness()),
                    String.format(Locale.ROOT, "%.4f", l.friction()),
                    two(l.straights()),
                    two(l.bends()),
                    bends.isEmpty() ? "none" : String.join(", ", bends),
                    two(l.fittings()),
                    one(path.fittings())));
        }
        return lines;
    }

    private String filling() {
        return String.format(
                Locale.ROOT,
                "Filling: %s l in the loops, %s l in the tails, %s l in the rest. From the coldest to %s degrees C its density falls"
                        + " from %s to %s kg/m3; %s. Boiling at %s degrees C.",
                two(heat.filling().loop()),
                two(heat.filling().tails()),
                two(heat.filling().rest()),
                one(problem.supply().highest()),
                one(heat.expansion().cold()),
                one(heat.expansion().hot()),
                problem.circuit().closed()
                        ? "vessel by Boyle's law up to 90 % of the relief valve's pressure"
                        : "half as much again is the tank's headroom",
                one(heat.standing().boiling()));
    }

    private String storing() {
        FloorMass m = heat.mass();
        String alike = heat.circuit()
                .map(run -> " The floor takes as much as " + two(run.area()) + " m2 of it.")
                .orElse("");
        return String.format(
                Locale.ROOT,
                "Warm-up, a square metre of plated floor: plates hold %s J/(m2 K), cover %s and foam %s kJ/(m3 K); %s m2K/W from coolant"
                        + " to plates; explicit differences over six layers each of cover and foam.%s",
                three(m.plate()),
                figure(m.cover() / 1000),
                figure(m.foam() / 1000),
                String.format(Locale.ROOT, "%.4f", m.toPlane()),
                alike);
    }
}
