package org.runbend.catalog.product;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;

/** Reads what lies in the standard kits of a workshop. */
final class KitReader {
    private static final int MOST = 200;
    private static final int MOST_EACH = 10_000;
    private static final double LONGEST = 1_000_000;

    private final Set<String> pipes;
    private final Set<String> plates;
    private final Set<String> items;

    /** A reader that knows the part numbers sold. */
    KitReader(Set<String> pipes, Set<String> plates, Set<String> items) {
        this.pipes = pipes;
        this.plates = plates;
        this.items = items;
    }

    /** The coils of a kit. */
    List<StandardKit.Coils> coils(YamlMap kit) {
        return kit.each("coils", MOST, "a list of coils", this::coils);
    }

    /** The stock plates of a kit. */
    List<StandardKit.Plates> plates(YamlMap kit) {
        return kit.each("plates", MOST, "a list of stock plates", this::plates);
    }

    /** The items of a kit. */
    List<StandardKit.Parts> parts(YamlMap kit) {
        return kit.each("items", MOST, "a list of items", this::parts);
    }

    private Optional<StandardKit.Coils> coils(YamlValue value) {
        YamlMap m = value.map();
        String pipe = known(m.require("pipe", "the part number of a pipe"), "pipe", pipes);
        double length = m.require("length", "the coil's length").length(0, LONGEST);
        int count = count(m);
        return m.make(() -> new StandardKit.Coils(pipe, length, count));
    }

    private Optional<StandardKit.Plates> plates(YamlValue value) {
        YamlMap m = value.map();
        String plate = known(m.require("plate", "the part number of a plate"), "plate", plates);
        double length = m.require("length", "the stock length").length(0, LONGEST);
        int count = count(m);
        return m.make(() -> new StandardKit.Plates(plate, length, count));
    }

    private Optional<StandardKit.Parts> parts(YamlValue value) {
        YamlMap m = value.map();
        String sku = known(m.require("item", "the part number of an item or a pump"), "item", items);
        int count = count(m);
        return m.make(() -> new StandardKit.Parts(sku, count));
    }

    private static int count(YamlMap m) {
        return m.get("count", v -> v.whole(1, MOST_EACH), 1);
    }

    private static String known(YamlValue value, String what, Set<String> sold) {
        String sku = value.text();
        if (!sku.isEmpty() && !sold.contains(sku)) {
            String nearest = Nearest.hint(sku, sold);
            value.fault("the catalog sells no " + what + " " + Plain.quoted(sku) + nearest);
        }
        return sku;
    }
}
