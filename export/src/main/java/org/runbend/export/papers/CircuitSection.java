package org.runbend.export.papers;

import static org.runbend.export.papers.HeatFigures.one;
import static org.runbend.export.papers.HeatFigures.three;
import static org.runbend.export.papers.HeatFigures.whole;

import java.util.Locale;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.optimizer.heat.CircuitParts;
import org.runbend.optimizer.heat.FlowRequest;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.Cylinder;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;

/** What else is in the circuit and what becomes of it over a night: parts, balance, valve, floor sensor, a valve stuck open. */
final class CircuitSection {
    private static final double CURVE_HEIGHT = 58;
    private static final int DRAWN = 180;

    private final HeatProblem problem;
    private final HeatSolution heat;
    private final HeatCurves curves;
    private final CircuitParts parts;

    CircuitSection(HeatProblem problem, HeatSolution heat, HeatCurves curves) {
        this.problem = problem;
        this.heat = heat;
        this.curves = curves;
        parts = problem.circuit();
    }

    /** Nothing where the job says nothing of a circuit. */
    void write(PdfFlow flow) {
        if (parts.source().isEmpty()
                && parts.cylinder().isEmpty()
                && parts.sensor().isEmpty()) {
            return;
        }
        flow.heading("Circuit and floor sensor").table(table());
        heat.circuit().ifPresent(run -> {
            flow.table(balance(run));
            flow.paragraph(inTheLongRun(run));
            heat.stuck().ifPresent(stuck -> flow.paragraph(stuckOpen(stuck)));
            flow.drawing(curves.circuit(run, DRAWN), CURVE_HEIGHT);
        });
    }

    private PdfTable table() {
        PdfTable table = new PdfTable(Column.left("part", 2), Column.left("what was reckoned with", 9));
        parts.source().ifPresent(s -> table.row("source", source(s)));
        if (problem.supply().highest() > heat.usedSupply()) {
            table.row(
                    "mixing valve",
                    "mixes " + one(problem.supply().highest()) + " \u00b0C down to " + one(heat.usedSupply())
                            + " \u00b0C before the floor"
                            + (heat.held().isPresent()
                                    ? ", the highest that keeps every limit, not the "
                                            + one(heat.flow().supply()) + " asked for"
                                    : ""));
        }
        table.row("pump", pump());
        if (parts.blowers() > 0) {
            table.row("blowers", three(parts.blowers()) + " W while the coolant is over 40 \u00b0C");
        }
        parts.cylinder().ifPresent(c -> table.row("hot water", cylinder(c)));
        table.row("diverter valve", valve());
        parts.sensor().ifPresent(s -> table.row("floor sensor", sensor(s)));
        table.row(
                "coolant",
                one(heat.filling().rest()) + " l beside loops and tails, "
                        + (parts.closed() ? "closed to the air" : "open to the air by a header tank"));
        return table;
    }

    private String source(HeatSource source) {
        if (source instanceof HeatSource.Heater h) {
            return String.format(
                    Locale.ROOT,
                    "heater of its own, %s to %s W, set to %s \u00b0C, starts again %s K under it",
                    three(h.least()),
                    three(h.most()),
                    one(h.setting()),
                    one(h.band()));
        }
        if (source instanceof HeatSource.EngineExchanger e) {
            return String.format(
                    Locale.ROOT,
                    "engine coolant of %s \u00b0C (it may reach %s; from memory: 82 to 105) by an exchanger of %s W/K%s",
                    one(e.engine()),
                    one(e.highest()),
                    three(e.transfer()),
                    problem.supply()
                            .source()
                            .filter(limit -> limit < e.highest())
                            .map(limit -> ", held to " + one(limit) + " \u00b0C by a limiter, as the job says")
                            .orElse(""));
        }
        HeatSource.MainsElement m = (HeatSource.MainsElement) source;
        return String.format(
                Locale.ROOT,
                "mains element of %s W in the cylinder, up to %s \u00b0C: it warms water alone, not the floor",
                three(m.power()),
                one(m.setting()));
    }

    private String pump() {
        String at = String.format(
                Locale.ROOT,
                "%s l/min at %s kPa",
                HeatFigures.two(heat.flow().volume()),
                one(heat.flow().pumpHead()));
        if (problem.supply().flow() instanceof FlowRequest.ByPump) {
            return at + ", where its curve meets that of the pipes";
        }
        return at + ", a flow that is "
                + (problem.supply().flow() instanceof FlowRequest.ByVolume ? "given" : "wanted");
    }

    private String cylinder(Cylinder c) {
        return one(c.litres()) + " l of " + one(c.start()) + " \u00b0C at first, coil of " + three(c.transfer())
                + " W/K"
                + (parts.walls().isPresent()
                        ? ", "
                                + (parts.walls().getAsInt() == 1
                                        ? "one wall"
                                        : parts.walls().getAsInt() + " walls") + " between coolant and drinking water"
                        : "");
    }

    private String valve() {
        if (parts.sensor().isEmpty()) {
            return "none: the floor is open all the time";
        }
        return "to the floor while the sensor asks for heat and the coolant is warmer than the plates, else "
                + (parts.cylinder().isPresent() ? "back by the cylinder" : "past the floor");
    }

    private String sensor(FloorSensor s) {
        HeatSolution.Sensor setting = heat.sensor().orElse(null);
        String words = String.format(
                Locale.ROOT,
                "under a plate, it feels the plates, not the surface: opens under %s \u00b0C, closes over %s \u00b0C (set to %s,"
                        + " hysteresis %s K)",
                one(s.setting() - s.hysteresis() / 2),
                one(s.setting() + s.hysteresis() / 2),
                one(s.setting()),
                one(s.hysteresis()));
        return setting == null
                ? words
                : words
                        + String.format(
                                Locale.ROOT,
                                "; the floor's top over the plates then has %s \u00b0C. It may be set to %s \u00b0C at most",
                                one(setting.top()),
                                whole(Math.floor(setting.highest())));
    }

    private PdfTable balance(CircuitRun run) {
        PdfTable table =
                new PdfTable(Column.left("in the long run", 4), Column.right("W", 2), Column.left("remark", 8));
        boolean starts =
                parts.source().filter(HeatSource.Heater.class::isInstance).isPresent();
        table.row(
                "source gives",
                three(run.source()),
                starts ? "starts " + run.starts() + " times in " + one(last(run) / 60.0) + " hours" : "");
        table.row("floor takes", three(run.floor()), whole(100 * run.floorShare()) + " % of it");
        if (parts.cylinder().isPresent()) {
            table.row("cylinder takes", whole(run.cylinder()), "while nobody draws water");
        }
        if (parts.blowers() > 0) {
            table.row("blowers take", three(run.blowers()), "");
        }
        table.row("coolant keeps", whole(run.kept()), "what it is warmer at the end of that time than at its begin");
        return table;
    }

    /** Minutes of the last third, over which means are taken. */
    private static int last(CircuitRun run) {
        int minutes = run.points().size() - 1;
        return minutes - 2 * minutes / 3;
    }

    private static String inTheLongRun(CircuitRun run) {
        String first = run.firstOpen().isEmpty()
                ? "No coolant gets to the floor."
                : run.firstOpen().getAsInt() == 0
                        ? "Coolant goes to the floor from the start."
                        : "Coolant first goes to the floor in minute "
                                + run.firstOpen().getAsInt() + "; before that it is no warmer than the floor.";
        return String.format(
                Locale.ROOT,
                "%s In the last third of eight hours the valve is open to the floor for %s %% of the time and opens %d times; the"
                        + " plates have %s \u00b0C and the surface over them %s \u00b0C in the mean, and the surface swings by %s K.",
                first,
                whole(100 * run.duty()),
                run.openings(),
                one(run.plates()),
                one(run.surface()),
                one(run.swing()));
    }

    private static String stuckOpen(CircuitRun stuck) {
        return String.format(
                Locale.ROOT,
                "With the valve stuck open and nothing mixed the plates reach %s \u00b0C and the surface over them %s \u00b0C. A floor sensor"
                        + " with an on/off valve is control, not a safety limit.",
                one(stuck.hottestPlates()),
                one(stuck.hottestSurface()));
    }
}
