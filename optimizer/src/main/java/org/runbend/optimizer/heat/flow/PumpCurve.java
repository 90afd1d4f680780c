package org.runbend.optimizer.heat.flow;

import java.util.List;
import org.runbend.catalog.product.Pump;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Head over flow of a pump, straight between points.
 *
 * @param points flow in l/min, rising; head in kPa, not rising
 */
public record PumpCurve(List<Point> points) {
    /** A point of the curve: flow in l/min and head in kPa. */
    public record Point(double flow, double head) {
        /** Checks ranges. */
        public Point {
            Within.range("flow of a pump", flow, 0, 10_000, "l/min");
            Within.range("head of a pump", head, 0, 10_000, "kPa");
        }
    }

    /** Checks that flow rises and head does not: a curve that rises has no one operating point. */
    public PumpCurve {
        points = List.copyOf(points);
        Within.rule(points.size() >= 2, "pump curve: two points or more are needed, not %s", points.size());
        for (int i = 1; i < points.size(); i++) {
            Within.rule(
                    points.get(i).flow() > points.get(i - 1).flow()
                            && points.get(i).head() <= points.get(i - 1).head(),
                    "pump curve: along it flow must rise and head must not (point %s)",
                    i + 1);
        }
    }

    /** The curve of a pump of the catalog. */
    public static PumpCurve of(Pump pump) {
        return new PumpCurve(
                pump.curve().stream().map(p -> new Point(p.flow(), p.head())).toList());
    }

    /** The greatest flow that the curve shows, l/min. */
    public double greatest() {
        return points.get(points.size() - 1).flow();
    }

    /** Head at a flow, kPa: before the first point that of the first; after the last one 0. */
    public double head(double flow) {
        if (flow <= points.get(0).flow()) {
            return points.get(0).head();
        }
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (flow <= b.flow()) {
                return a.head() + (b.head() - a.head()) * (flow - a.flow()) / (b.flow() - a.flow());
            }
        }
        return 0;
    }
}
