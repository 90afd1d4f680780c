package org.runbend.export.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;

/** A floor as it was understood, mm, for what the page cannot read out of the job's own text: arcs, tapes, other units, bases. */
final class FloorView {
    private FloorView() {}

    static Map<String, Object> of(Job job) {
        Job.FloorPlan floor = job.floor();
        Map<String, Object> view = new LinkedHashMap<>();
        view.put("outline", points(floor.outline()));
        view.put("keepOut", floor.keepOuts().stream().map(FloorView::thing).toList());
        view.put(
                "unheated",
                floor.unheated().stream()
                        .map(u -> polygon(u.name(), u.region()))
                        .toList());
        view.put(
                "below",
                floor.below().stream().map(b -> polygon(b.name(), b.region())).toList());
        view.put(
                "supports",
                floor.supports().stream()
                        .map(s ->
                                Map.of("name", s.name(), "line", points(List.of(s.from(), s.to())), "width", s.width()))
                        .toList());
        view.put(
                "marks",
                floor.marks().stream()
                        .map(m -> Map.of("text", m.text(), "at", point(m.at())))
                        .toList());
        view.put(
                "port",
                Map.of(
                        "at", point(floor.port().at()),
                        "reach", floor.port().reach(),
                        "holes",
                                floor.port().holes().stream()
                                        .map(h -> Map.of("flow", point(h.flow()), "return", point(h.back())))
                                        .toList()));
        view.put("spacing", job.layout().spacing());
        view.put("edge", job.layout().edge());
        view.put("measured", job.measured().stream().map(FloorView::measured).toList());
        return view;
    }

    private static Map<String, Object> measured(Job.MeasuredLength m) {
        return Map.of("from", m.from(), "to", m.to(), "length", m.length(), "residual", m.residual());
    }

    private static Map<String, Object> thing(KeepOut thing) {
        Map<String, Object> view = new LinkedHashMap<>();
        view.put("name", thing.name());
        view.put("kind", thing.kind().name().toLowerCase(Locale.ROOT));
        view.put("clearance", thing.clearance());
        if (thing.bare() instanceof Shape.Circle circle) {
            view.put("circle", Map.of("centre", point(circle.centre()), "radius", circle.radius()));
        } else if (thing.bare() instanceof Shape.Spot spot) {
            view.put("circle", Map.of("centre", point(spot.at()), "radius", spot.radius()));
        } else if (thing.bare() instanceof Shape.Polygon polygon) {
            view.put("polygon", points(polygon.corners()));
        }
        return view;
    }

    private static Map<String, Object> polygon(String name, Shape.Polygon region) {
        return Map.of("name", name, "polygon", points(region.corners()));
    }

    private static List<Object> points(List<Point> points) {
        return points.stream().map(p -> (Object) point(p)).toList();
    }

    private static List<Object> point(Point p) {
        return List.of(p.x(), p.y());
    }
}
