package org.runbend.optimizer.job.read;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;
import org.runbend.optimizer.heat.CircuitParts;
import org.runbend.optimizer.heat.HeatRequest;
import org.runbend.optimizer.heat.circuit.Cylinder;
import org.runbend.optimizer.heat.circuit.FloorSensor;
import org.runbend.optimizer.heat.circuit.HeatSource;
import org.runbend.optimizer.heat.limits.Sleeping;
import org.runbend.optimizer.heat.need.BuildUp;
import org.runbend.optimizer.heat.need.BuildUpLayer;
import org.runbend.optimizer.heat.need.Iso6946;
import org.runbend.optimizer.heat.need.SpaceLoss;

/**
 * Reads what a job says of heat beyond coolant, temperatures and pump: more keys of {@code heating}, {@code space} (a plain loss, or
 * surfaces with areas and build-ups) and {@code circuit} (heater or engine, cylinder, blowers, floor sensor, heights).
 */
final class HeatRequestReader {
    private static final int MOST_SURFACES = 50;
    private static final int MOST_LAYERS = 20;

    /** How a question is answered. */
    enum Answer {
        /** It is so. */
        YES,
        /** It is not so. */
        NO
    }

    /** Keys of the mapping {@code heating}; to be asked before that mapping is made. */
    HeatRequest heating(YamlMap heating, Optional<SpaceLoss> space, CircuitParts circuit) {
        return new HeatRequest(
                number(heating, "source", -60, 150),
                number(heating, "volumeFlow", 0, 1000),
                number(heating, "spread", 0.1, 60),
                number(heating, "start", -60, 80),
                number(heating, "wanted", 0, 1e6),
                heating.find("humidity")
                        .map(v -> v.share(0.01, 1))
                        .filter(n -> !n.isNaN())
                        .orElse(HeatRequest.USUAL_HUMIDITY),
                isSo(heating, "timber", false),
                isSo(heating, "bath", false),
                heating.find("sleeping")
                        .map(v -> v.oneOf(Answer.class) == Answer.YES ? Sleeping.YES : Sleeping.NO)
                        .orElse(Sleeping.UNSAID),
                isSo(heating, "metalUnder", true),
                space,
                circuit);
    }

    /** The mapping {@code space}. */
    Optional<SpaceLoss> space(YamlMap m) {
        Optional<YamlValue> plain = m.find("loss");
        double bridges =
                plain.map(v -> v.number(0, 10_000)).orElseGet(() -> m.get("bridges", v -> v.number(0, 10_000), 0.0));
        List<SpaceLoss.Surface> surfaces =
                m.each("surfaces", MOST_SURFACES, "a list of surfaces", v -> surface(v.map()));
        double volume = m.get("volume", v -> v.number(0, 10_000), 0.0);
        double airChanges = m.get("airChanges", v -> v.number(0, 100), 0.5);
        if (plain.isPresent() && (!surfaces.isEmpty() || volume > 0)) {
            plain.get().fault("a plain loss in W/K holds the whole space: leave it out, or surfaces and volume");
        }
        if (plain.isEmpty() && m.find("surfaces").isEmpty()) {
            m.self().fault("a space needs its loss in W/K, or surfaces");
        }
        return m.make(() -> new SpaceLoss(surfaces, volume, airChanges, bridges));
    }

    private static Optional<SpaceLoss.Surface> surface(YamlMap m) {
        String name = m.get("name", YamlValue::text, "surface");
        double area = m.require("area", "an area in m2").number(0, 10_000);
        BuildUp.HeatFlow flow = m.get("flow", v -> v.oneOf(BuildUp.HeatFlow.class), BuildUp.HeatFlow.SIDEWAYS);
        List<Section> layers = m.each("layers", MOST_LAYERS, "a list of layers", v -> layer(v.map()));
        double ribs = m.get("ribs", v -> v.share(0, 0.9), 0.0);
        Optional<Double> given = m.find("transmittance").map(v -> v.number(0, 100));
        if (given.isEmpty() && m.find("layers").isEmpty()) {
            m.self().fault("a surface needs its transmittance in W/(m2 K), or layers");
        }
        if (ribs > 0 && layers.stream().allMatch(l -> l.between().equals(l.ribs()))) {
            m.find("ribs")
                    .ifPresent(v -> v.fault("ribs go through a layer: give it rib, their conductivity in W/(m K)"));
        }
        if (given.isPresent()) {
            return m.make(() -> new SpaceLoss.Surface(name, area, given.get()));
        }
        return m.make(() -> {
            BuildUp buildUp = new BuildUp(flow, sections(layers, ribs), Iso6946.OUTER);
            Iso6946 standard = new Iso6946();
            return new SpaceLoss.Surface(name, area, standard.transmittance(buildUp), standard.isBridged(buildUp));
        });
    }

    /** A layer between ribs and where they go through it; the same where none do. */
    private record Section(BuildUpLayer between, BuildUpLayer ribs) {}

    private static List<BuildUp.Section> sections(List<Section> layers, double ribs) {
        List<BuildUpLayer> between = layers.stream().map(Section::between).toList();
        if (!(ribs > 0)) {
            return List.of(new BuildUp.Section(1, between));
        }
        return List.of(
                new BuildUp.Section(1 - ribs, between),
                new BuildUp.Section(ribs, layers.stream().map(Section::ribs).toList()));
    }

    private static Optional<Section> layer(YamlMap m) {
        double thickness = m.require("thickness", "a thickness").length(0, 2000);
        double conductivity =
                m.require("conductivity", "a conductivity in W/(m K)").number(0.002, 500);
        double rib = m.get("rib", v -> v.number(0.002, 500), conductivity);
        return m.make(() -> new Section(new BuildUpLayer(thickness, conductivity), new BuildUpLayer(thickness, rib)));
    }

    /** The mapping {@code circuit}. */
    Optional<CircuitParts> circuit(YamlMap m) {
        Optional<HeatSource> source = source(m);
        double litres = m.get("litres", v -> v.number(0, 10_000), 0.0);
        Optional<YamlMap> cylinder = m.findMap("cylinder");
        OptionalInt walls = cylinder.map(c -> OptionalInt.of(c.get("walls", v -> v.whole(1, 2), 1)))
                .orElse(OptionalInt.empty());
        Optional<Cylinder> water = cylinder.flatMap(HeatRequestReader::cylinder);
        double blowers = m.get("blowers", v -> v.number(0, 1e5), 0.0);
        Optional<FloorSensor> sensor = m.findMap("sensor").flatMap(HeatRequestReader::sensor);
        boolean closed = isSo(m, "closed", false);
        double relief = m.get("relief", v -> v.number(closed ? 60 : 0, 1000), closed ? 300.0 : 0.0);
        double rise = m.get("rise", v -> v.number(0, 30), 0.0);
        double head = m.get("head", v -> v.number(-5, 30), 0.0);
        return m.make(
                () -> new CircuitParts(source, litres, water, walls, blowers, sensor, closed, relief, rise, head));
    }

    private static Optional<HeatSource> source(YamlMap m) {
        Optional<HeatSource> heater = m.findMap("heater").flatMap(HeatRequestReader::heater);
        Optional<HeatSource> engine = m.findMap("engine").flatMap(HeatRequestReader::engine);
        Optional<HeatSource> element = m.findMap("element").flatMap(HeatRequestReader::element);
        if (heater.isPresent() && engine.isPresent()) {
            m.self().fault("heater and engine: one source of the two is reckoned, leave the other out");
        }
        return heater.or(() -> engine).or(() -> element);
    }

    private static Optional<HeatSource> heater(YamlMap m) {
        double least = m.get("least", v -> v.number(0, 1e6), 0.0);
        double most = m.require("most", "a power in W").number(1, 1e6);
        double setting = m.require("setting", "a temperature in degrees C").number(0, 150);
        double band = m.get("band", v -> v.number(0.1, 60), 8.0);
        return m.make(() -> new HeatSource.Heater(least, most, setting, band));
    }

    private static Optional<HeatSource> engine(YamlMap m) {
        double transfer = m.require("transfer", "W/K of the exchanger").number(0.1, 1e5);
        double temperature = m.get("temperature", v -> v.number(-60, 130), 90.0);
        return m.make(() -> new HeatSource.EngineExchanger(transfer, temperature));
    }

    private static Optional<HeatSource> element(YamlMap m) {
        double power = m.require("power", "a power in W").number(1, 1e5);
        double setting = m.get("setting", v -> v.number(0, 95), 60.0);
        return m.make(() -> new HeatSource.MainsElement(power, setting));
    }

    private static Optional<Cylinder> cylinder(YamlMap m) {
        double litres = m.require("litres", "litres of water").number(0.1, 2000);
        double transfer = m.get("transfer", v -> v.number(0.1, 1e5), 150.0);
        double start = m.get("start", v -> v.number(0, 100), 10.0);
        return m.make(() -> new Cylinder(litres, transfer, start));
    }

    private static Optional<FloorSensor> sensor(YamlMap m) {
        double setting = m.require("setting", "a temperature in degrees C").number(5, 60);
        double hysteresis = m.get("hysteresis", v -> v.number(0.1, 20), 2.0);
        return m.make(() -> new FloorSensor(setting, hysteresis));
    }

    private static OptionalDouble number(YamlMap m, String key, double least, double most) {
        Optional<Double> value = m.find(key).map(v -> v.number(least, most)).filter(n -> !n.isNaN());
        return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
    }

    private static boolean isSo(YamlMap m, String key, boolean otherwise) {
        return m.get(key, v -> v.oneOf(Answer.class), otherwise ? Answer.YES : Answer.NO) == Answer.YES;
    }
}
