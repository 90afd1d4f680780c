package org.runbend.optimizer.job.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.job.DrawnLoop;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.PlacePrice;

/** Reads how the loop is to be laid and checks it against the pipe. */
final class LayoutReader {
    static final double SPACING = 150;
    private static final double LEAST_SPACING = 100;
    private static final double MOST_SPACING = 300;
    private static final double EDGE = 75;
    private static final double MOST_EDGE = 1000;
    /**
     * What {@code auto} means until heat and labour work it out: pipe without a plate gives under a third of what pipe in a
     * plate gives, so to serve a place by bends is worth little.
     */
    private static final PlacePrice LEFT_OUT_PRICE = PlacePrice.turns(1);

    /** At a price of 0 the least square would be the best loop of any floor. */
    private static final double LEAST_PRICE = 0.1;

    private static final int MOST_PRICE = 10_000;
    private static final int MOST_LOOPS = 6;

    private final Optional<Pipe> pipe;
    private final LoopReader loops;
    private double spacing = SPACING;

    /**
     * A reader.
     *
     * @param pipe the pipe wanted, if it is known
     * @param loops reads a drawn loop
     */
    LayoutReader(Optional<Pipe> pipe, LoopReader loops) {
        this.pipe = pipe;
        this.loops = loops;
    }

    /** The spacing that was read, mm; NaN if it was wrong, the default if there was none. */
    double spacing() {
        return spacing;
    }

    /** The layout; all defaults if the job has none; empty if something was wrong. */
    Optional<Job.Layout> layout(Optional<YamlMap> map) {
        if (map.isEmpty()) {
            return Optional.of(
                    new Job.Layout(Job.Grid.free(SPACING, EDGE), new Job.Aim(LEFT_OUT_PRICE, Job.Prefer.LONG_RUNS)));
        }
        YamlMap m = map.get();
        Optional<YamlValue> written = m.find("spacing");
        spacing = written.map(v -> v.length(LEAST_SPACING, MOST_SPACING)).orElse(SPACING);
        pipe.ifPresent(p -> checkSpacing(p, written.orElse(m.self())));
        double edge = m.find("edge").map(this::edge).orElse(EDGE);
        Direction along = m.find("along").map(LayoutReader::along).orElse(Direction.FREE);
        PlacePrice price = m.find("leftOutPrice").map(LayoutReader::price).orElse(LEFT_OUT_PRICE);
        Job.Prefer prefer = m.find("prefer").map(v -> v.oneOf(Job.Prefer.class)).orElse(Job.Prefer.LONG_RUNS);
        Optional<YamlValue> number = m.find("loops");
        OptionalInt count = number.map(LayoutReader::count).orElse(OptionalInt.of(1));
        Optional<YamlValue> fitting = m.find("fit");
        boolean fit = fitting.map(LayoutReader::isCoil).orElse(false);
        double radius = Math.max(spacing / 2, pipe.map(Pipe::fittedRadius).orElse(0.0));
        List<PipeRule.Kept> kept = WishReader.kept(m, along.angle(), spacing, radius);
        List<PipeRule> pipeRules = new ArrayList<>(kept);
        pipeRules.addAll(WishReader.pipeRules(m, along.angle(), kept));
        DrawnLoop loop = loops.loop(m);
        if (!loop.isEmpty() && !count.equals(OptionalInt.of(1))) {
            number.orElseThrow().fault("collides with layout.loop, which is one loop; leave one of the two out");
        }
        if (!loop.isEmpty() && fit) {
            fitting.orElseThrow().fault("collides with layout.loop, which is not shortened; leave one of the two out");
        }
        return m.make(() -> new Job.Layout(
                new Job.Grid(spacing, edge, along.angle(), along.axis()),
                new Job.Aim(price, prefer),
                pipeRules,
                loop,
                new Job.Count(count, fit)));
    }

    private void checkSpacing(Pipe p, YamlValue place) {
        double least = p.fittedRadius();
        if (spacing < least) {
            place.fault("spacing " + Plain.number(spacing) + " mm: pipe " + p.sku() + " bends no tighter than "
                    + Plain.number(p.fittedRadius()) + " mm, so the least spacing is " + Plain.number(least) + " mm");
        }
    }

    private double edge(YamlValue value) {
        double edge = value.length(0, MOST_EDGE);
        pipe.filter(p -> edge < p.outer() / 2)
                .ifPresent(p -> value.fault("edge " + Plain.number(edge) + " mm: pipe " + p.sku()
                        + " would stick out of the floor, at least half of its " + Plain.number(p.outer())
                        + " mm is needed"));
        return edge;
    }

    private static boolean isCoil(YamlValue value) {
        String text = value.text();
        if (!text.isEmpty() && !text.equals("coil") && !text.equals("none")) {
            value.wrong("coil or none");
        }
        return text.equals("coil");
    }

    private static PlacePrice price(YamlValue value) {
        return value.isText("auto") ? LEFT_OUT_PRICE : PlacePrice.of(value.number(LEAST_PRICE, MOST_PRICE));
    }

    /** A number of loops; empty for as few as the pipe allows. */
    private static OptionalInt count(YamlValue value) {
        String text = value.text();
        if (text.equals("auto")) {
            return OptionalInt.empty();
        }
        if (text.matches("[1-" + MOST_LOOPS + "]")) {
            return OptionalInt.of(Integer.parseInt(text));
        }
        if (!text.isEmpty()) {
            value.wrong("a number of loops from 1 to " + MOST_LOOPS + ", or auto,");
        }
        return OptionalInt.of(1);
    }

    /**
     * A direction of the lattice and of its runs.
     *
     * @param angle degrees from the x axis, 0 to under 90; empty: free
     * @param axis axis of the lattice along which runs are wanted
     */
    private record Direction(OptionalDouble angle, Job.RunAxis axis) {
        static final Direction FREE = new Direction(OptionalDouble.empty(), Job.RunAxis.FREE);

        /** The direction of runs at so many degrees from the x axis; a line has no front, so 180 degrees are 0. */
        static Direction of(double degrees) {
            double half = ((degrees % 180) + 180) % 180;
            return new Direction(OptionalDouble.of(half % 90), half < 90 ? Job.RunAxis.X : Job.RunAxis.Y);
        }
    }

    private static Direction along(YamlValue value) {
        String text = value.text();
        return switch (text) {
            case "free", "" -> Direction.FREE;
            case "x" -> Direction.of(0);
            case "y" -> Direction.of(90);
            default -> degrees(value, text);
        };
    }

    private static Direction degrees(YamlValue value, String text) {
        if (!text.matches("-?\\d{1,3}(\\.\\d{1,6})?") || Math.abs(Double.parseDouble(text)) > 360) {
            value.wrong("free, x, y or an angle from -360 to 360 degrees");
            return Direction.FREE;
        }
        return Direction.of(Double.parseDouble(text));
    }
}
