package org.runbend.export.papers;

import static org.runbend.export.papers.HeatFigures.figure;
import static org.runbend.export.papers.HeatFigures.one;
import static org.runbend.export.papers.HeatFigures.three;
import static org.runbend.export.papers.HeatFigures.two;
import static org.runbend.export.papers.HeatFigures.whole;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.runbend.export.pdf.Paper;
import org.runbend.export.pdf.PdfDocument;
import org.runbend.export.pdf.PdfFlow;
import org.runbend.export.pdf.PdfTable;
import org.runbend.export.pdf.PdfTable.Column;
import org.runbend.export.pdf.TextStyle;
import org.runbend.optimizer.heat.FlowRequest;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.LoopHeat;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.flow.BalanceSolution;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.heat.need.SpaceLoss;
import org.runbend.optimizer.heat.output.FloorOutput;
import org.runbend.optimizer.heat.output.StripOutput;
import org.runbend.optimizer.job.Job;

/**
 * The heat report of a floor: what it gives, flow and pump, circuit and floor sensor, limits, warm-up, what was assumed. Every figure can
 * be followed from those printed with it; the last section has what is needed for that alone.
 */
public final class HeatPaper {
    private static final double CURVE_HEIGHT = 52;
    /** The table of minutes, which stands under its curve. */
    private static final double MINUTES_HEIGHT = 31;

    private static final List<String> CAUTIONS = List.of(
            "These are figures of a floor as it is drawn; a floor badly built is colder, or hotter in places.",
            "Coolant gets hot: let the system cool down before you open it.",
            "Work on the heater, on gas, fuel and mains is for licensed people.",
            "Local codes and the instructions of the makers go before this paper.");

    private final Job job;
    private final HeatProblem problem;
    private final HeatSolution heat;
    private final String warning;
    private final HeatCurves curves;

    private HeatPaper(Job job, HeatProblem problem, HeatSolution heat, String warning) {
        this.job = job;
        this.problem = problem;
        this.heat = heat;
        this.warning = warning;
        curves = new HeatCurves(problem, heat);
    }

    /** The paper, a PDF; {@code warning} stands over every page, may be empty. */
    public static byte[] bytes(Job job, HeatProblem problem, HeatSolution heat, String warning, Paper paper) {
        return new HeatPaper(job, problem, heat, warning).bytes(paper);
    }

    private byte[] bytes(Paper paper) {
        String name = "Heat report " + job.order();
        try (PdfDocument document = Letterhead.document(job, name, paper.upright(), warning.isEmpty())) {
            PdfFlow flow = new PdfFlow(document);
            flow.title(name).paragraph(job.title() + ", from " + job.catalog().workshop());
            output(flow);
            limits(flow);
            list(flow, "What a fitter must know", heat.notes());
            flowOf(flow);
            new CircuitSection(problem, heat, curves).write(flow);
            warmUp(flow);
            list(flow, "What was assumed", heat.assumptions());
            list(flow, "Take care", CAUTIONS);
            new FollowSection(problem, heat).write(flow);
            return document.toBytes();
        }
    }

    private void output(PdfFlow flow) {
        HeatSolution.Output o = heat.output();
        flow.heading("What the floor gives");
        tooHot(flow);
        flow.paragraph(String.format(
                Locale.ROOT,
                "%s%s W into a room of %s degrees C (%s to %s W for 0.2 to 0 mm of air between pipe and plate), %s W to the"
                        + " outside at %s degrees C. Surface %s degrees C in the mean, %s at its hottest where the loop begins.",
                heat.isTooHot() ? "At the " + figure(heat.flow().supply()) + " degrees C asked for: " : "",
                three(o.upward()),
                one(problem.surroundings().room()),
                three(o.upwardLeast()),
                three(o.upwardMost()),
                three(o.downward()),
                one(problem.surroundings().outside()),
                one(o.surfaceMean()),
                one(o.surfacePeak())));
        need(flow);
        flow.table(zones());
        flow.paragraph(
                "W up = up x (coolant - room) + through x (outside - room), for each m2; coolant: its mean there.",
                TextStyle.SMALL);
        o.standard()
                .ifPresent(b -> flow.paragraph(
                        String.format(
                                Locale.ROOT,
                                "Beside it, EN 1264-2 type B for the plated floor, without film and gap: %s W/m2 for each kelvin of"
                                        + " the logarithmic mean%s%s.",
                                two(b.up()),
                                b.valid() ? "" : ", out of the range of the standard",
                                b.extrapolated() ? ", beyond its tables" : ""),
                        TextStyle.SMALL));
    }

    /** Figures of a supply that must not be used are not mistaken for what the floor will give. */
    private void tooHot(PdfFlow flow) {
        if (!heat.isTooHot()) {
            return;
        }
        String broken = String.format(
                Locale.ROOT,
                "The job asks for %s degrees C into the floor; over %s a limit is broken: %s. ",
                figure(heat.flow().supply()),
                one(heat.highestSupply().celsius()),
                heat.highestSupply().name());
        flow.caution(broken
                + heat.held()
                        .map(h -> String.format(
                                Locale.ROOT,
                                "Held down to %s the floor gives %s W (%s to %s), its surface %s degrees C in the mean and %s at its"
                                        + " hottest. That is what may be promised. The tables of floors, of limits and of flow are those at"
                                        + " %s.",
                                whole(h.supply()),
                                three(h.upward()),
                                three(h.upwardLeast()),
                                three(h.upwardMost()),
                                one(h.surfaceMean()),
                                one(h.surfacePeak()),
                                figure(heat.flow().supply())))
                        .orElse("No supply that is warmer than the room keeps it, so no heat may be promised."));
    }

    private void need(PdfFlow flow) {
        heat.need().ifPresent(n -> {
            SpaceLoss space = problem.surroundings().space().orElseThrow();
            List<String> parts = new ArrayList<>();
            for (SpaceLoss.Surface s : space.surfaces()) {
                parts.add(s.name() + " " + two(s.area()) + " m2 of " + two(s.transmittance()));
            }
            if (space.volume() > 0) {
                parts.add("0.34 x " + two(space.airChanges()) + " changes an hour of " + two(space.volume())
                        + " m3 of air");
            }
            if (space.bridges() > 0 && !parts.isEmpty()) {
                parts.add("bridges " + two(space.bridges()) + " W/K");
            }
            flow.paragraph(String.format(
                    Locale.ROOT,
                    "The room loses %s W/K%s: it needs %s W. The floor covers %s %%%s, %s W remain for air heating.",
                    figure(space.perKelvin()),
                    parts.isEmpty() ? "" : " (" + String.join("; ", parts) + ")",
                    three(n.need()),
                    whole(100 * n.share()),
                    heat.held()
                            .map(h -> " at " + whole(h.supply()) + " degrees C")
                            .orElse(""),
                    three(n.remaining())));
        });
    }

    private PdfTable zones() {
        boolean several = heat.loops().size() > 1;
        List<Column> columns = new ArrayList<>();
        if (several) {
            columns.add(Column.left("loop", 2));
        }
        columns.addAll(List.of(
                Column.left("floor", 4.6),
                Column.right("m2", 1.6),
                Column.right("coolant \u00b0C", 2.2),
                Column.right("up W/m2K", 2),
                Column.right("down W/m2K", 2.1),
                Column.right("through W/m2K", 2.4),
                Column.right("W up per m2", 2.1),
                Column.right("mean \u00b0C", 1.9),
                Column.right("peak \u00b0C", 1.9)));
        PdfTable table = new PdfTable(columns);
        int told = 0;
        for (LoopHeat loop : heat.loops()) {
            loop.zones().forEach(z -> table.row(zone(several, loop.name(), z)));
            told += loop.zones().size();
        }
        heat.output().zones().stream().skip(told).forEach(z -> table.row(zone(several, "", z)));
        return table;
    }

    private static List<String> zone(boolean several, String loop, FloorOutput.ZoneOutput z) {
        StripOutput s = z.zone().output();
        List<String> row = new ArrayList<>();
        if (several) {
            row.add(loop);
        }
        row.addAll(List.of(
                z.zone().words(),
                two(z.zone().area()),
                one(z.coolant()),
                two(s.up()),
                two(s.down()),
                two(s.exchange()),
                one(z.upward()),
                one(z.surfaceMean()),
                one(z.surfacePeak())));
        return row;
    }

    private void flowOf(PdfFlow flow) {
        flow.heading("Flow and pump");
        boolean several = heat.balance().isPresent();
        List<Column> columns = new ArrayList<>(List.of(
                Column.left("loop", 2.3),
                Column.right("l/min", 2),
                Column.right("m/s", 2),
                Column.right("Reynolds", 2.9),
                Column.right("in \u00b0C", 2),
                Column.right("out \u00b0C", 2),
                Column.right("kPa", 2),
                Column.right("W up", 2),
                Column.right("W down", 2.3)));
        if (several) {
            columns.add(Column.right("throttle kPa", 2.4));
            columns.add(Column.right("its Kv m3/h", 2.4));
        }
        PdfTable table = new PdfTable(columns);
        for (int i = 0; i < heat.loops().size(); i++) {
            LoopHeat l = heat.loops().get(i);
            List<String> row = new ArrayList<>(List.of(
                    l.name(),
                    two(l.losses().flow()),
                    two(l.losses().velocity()),
                    three(l.losses().reynolds()),
                    one(l.supply()),
                    one(l.back()),
                    one(l.losses().total()),
                    three(l.upward()),
                    three(l.downward())));
            int at = i;
            heat.balance().ifPresent(b -> {
                row.add(one(b.settings().get(at).throttled()));
                row.add(kv(b.settings().get(at)));
            });
            table.row(row);
        }
        flow.table(table);
        flow.paragraph(String.format(
                Locale.ROOT,
                "Coolant: %s, %s l in all, %s l of glycol in it. It grows by %s l when warm; %s. Flush with %s l/min or more a loop.",
                problem.supply().mixture().words(),
                two(heat.filling().litres()),
                two(heat.filling().glycol()),
                two(heat.expansion().litres()),
                problem.circuit().closed()
                        ? "a vessel of " + one(heat.expansion().room()) + " l or more for a relief valve of "
                                + whole(problem.circuit().relief()) + " kPa; fill cold to "
                                + whole(heat.standing().fill()) + " kPa at the lowest point"
                        : "the header tank needs " + two(heat.expansion().room()) + " l over its cold mark",
                one(heat.flow().flushing())));
        if (problem.supply().flow() instanceof FlowRequest.ByPump pump) {
            flow.drawing(curves.pump(pump.curve()), CURVE_HEIGHT);
        }
    }

    private void limits(PdfFlow flow) {
        PdfTable table = new PdfTable(
                Column.left("limit", 7),
                Column.right("found", 1.5),
                Column.right("limit", 1.4),
                Column.left("unit", 1.4),
                Column.left("verdict", 1.8),
                Column.left("limit from", 9.3));
        for (Finding f : heat.findings()) {
            table.row(
                    f.name(),
                    f.unit().equals("walls") ? whole(f.value()) : figure(f.value()),
                    f.unit().equals("walls") ? whole(f.limit()) : figure(f.limit()),
                    f.unit().replace("degrees C", "\u00b0C"),
                    f.verdict().name().toLowerCase(Locale.ROOT),
                    f.source());
        }
        flow.heading("Limits")
                .lead(String.format(
                        Locale.ROOT,
                        "Highest supply that keeps every limit: %s degrees C (%s).",
                        one(heat.highestSupply().celsius()),
                        heat.highestSupply().name()))
                .table(table);
    }

    private void warmUp(PdfFlow flow) {
        flow.heading("Warm-up from cold");
        flow.lead("With " + figure(heat.usedSupply()) + " degrees C into the floor"
                + (heat.held().isPresent()
                        ? ", the highest whole degree that keeps every limit."
                        : heat.isTooHot() ? ", though that breaks a limit." : ".")
                + (heat.circuit().isPresent() ? " 'Coolant' is that of the source, before anything is mixed." : ""));
        if (heat.circuit().isEmpty()) {
            flow.keep(CURVE_HEIGHT + MINUTES_HEIGHT);
            flow.drawing(curves.warmUp(), CURVE_HEIGHT);
        }
        List<WarmUp.Point> told = heat.warmUp().points().stream()
                .filter(p -> p.minute() % 10 == 0)
                .toList();
        List<Column> columns = new ArrayList<>(List.of(Column.left("\u00b0C after minutes", 4)));
        told.forEach(p -> columns.add(Column.right(Integer.toString(p.minute()), 1.4)));
        PdfTable table = new PdfTable(columns);
        table.row(readings("coolant", told, WarmUp.Point::coolant));
        table.row(readings("plates", told, WarmUp.Point::sensor));
        table.row(readings("surface over them", told, WarmUp.Point::surface));
        flow.table(table);
    }

    private static List<String> readings(String of, List<WarmUp.Point> points, ToDoubleFunction<WarmUp.Point> reading) {
        List<String> row = new ArrayList<>(List.of(of));
        points.forEach(p -> row.add(one(reading.applyAsDouble(p))));
        return row;
    }

    private static void list(PdfFlow flow, String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            flow.heading(heading);
            lines.forEach(line -> flow.item("\u2022", 5, line));
        }
    }

    private static String kv(BalanceSolution.Setting setting) {
        return Double.isInfinite(setting.kv()) ? "open" : two(setting.kv());
    }
}
