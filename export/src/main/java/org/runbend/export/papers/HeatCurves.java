package org.runbend.export.papers;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.optimizer.heat.HeatProblem;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.circuit.CircuitRun;
import org.runbend.optimizer.heat.circuit.WarmUp;
import org.runbend.optimizer.heat.flow.PumpCurve;

/** The curves of a heat report. */
final class HeatCurves {
    private final HeatProblem problem;
    private final HeatSolution heat;

    HeatCurves(HeatProblem problem, HeatSolution heat) {
        this.problem = problem;
        this.heat = heat;
    }

    /** Pump and pipes, which meet at the flow. */
    Sheet pump(PumpCurve curve) {
        List<Point> points =
                curve.points().stream().map(p -> new Point(p.flow(), p.head())).toList();
        double most = Math.max(
                1,
                curve.points().stream().mapToDouble(PumpCurve.Point::head).max().orElse(1));
        Diagram diagram = new Diagram(
                "Pump curve",
                Diagram.Axis.over("flow, l/min", 0, curve.greatest()),
                Diagram.Axis.over("head, kPa", 0, most));
        diagram.curve(Layer.PIPE, "pump", points);
        List<Point> pipes = heat.flow().pipes().stream()
                .map(p -> new Point(p.flow(), p.head()))
                .toList();
        diagram.curve(Layer.PLATE, problem.loops().size() > 1 ? "loops" : "loop", pipes);
        diagram.point(
                new Point(heat.flow().volume(), heat.flow().pumpHead()),
                HeatFigures.two(heat.flow().volume()) + " l/min at "
                        + HeatFigures.one(heat.flow().pumpHead()) + " kPa");
        return diagram.sheet();
    }

    /** The first hour from cold. */
    Sheet warmUp() {
        List<WarmUp.Point> points = heat.warmUp().points();
        Diagram diagram = overTime(
                "Warm-up",
                points.size() - 1,
                points.stream().flatMapToDouble(p -> DoubleStream.of(p.surface(), p.sensor(), p.coolant())));
        diagram.curve(Layer.PIPE, "coolant", curve(points, WarmUp.Point::minute, WarmUp.Point::coolant));
        diagram.curve(Layer.KEEP_OUT, "plates", curve(points, WarmUp.Point::minute, WarmUp.Point::sensor));
        diagram.curve(Layer.PLATE, "surface", curve(points, WarmUp.Point::minute, WarmUp.Point::surface));
        return diagram.sheet();
    }

    /** A circuit over its first hours. */
    Sheet circuit(CircuitRun run, int minutes) {
        List<CircuitRun.Point> points =
                run.points().subList(0, Math.min(run.points().size(), minutes + 1));
        Diagram diagram = overTime(
                "Circuit",
                points.size() - 1,
                points.stream()
                        .flatMapToDouble(p -> DoubleStream.of(p.surface(), p.sensor(), p.coolant(), p.cylinder())));
        diagram.curve(Layer.PIPE, "coolant", curve(points, CircuitRun.Point::minute, CircuitRun.Point::coolant));
        if (problem.circuit().cylinder().isPresent()) {
            diagram.curve(
                    Layer.UNHEATED, "cylinder", curve(points, CircuitRun.Point::minute, CircuitRun.Point::cylinder));
        }
        diagram.curve(Layer.KEEP_OUT, "plates", curve(points, CircuitRun.Point::minute, CircuitRun.Point::sensor));
        diagram.curve(Layer.PLATE, "surface", curve(points, CircuitRun.Point::minute, CircuitRun.Point::surface));
        return diagram.sheet();
    }

    private static Diagram overTime(String title, int minutes, DoubleStream temperatures) {
        var range = temperatures.summaryStatistics();
        return new Diagram(
                title,
                Diagram.Axis.over("minutes", 0, minutes),
                Diagram.Axis.over("\u00b0C", range.getMin(), Math.max(range.getMax(), range.getMin() + 1)));
    }

    private static <T> List<Point> curve(List<T> points, ToDoubleFunction<T> minute, ToDoubleFunction<T> reading) {
        return points.stream()
                .map(p -> new Point(minute.applyAsDouble(p), reading.applyAsDouble(p)))
                .toList();
    }
}
