package org.runbend.catalog.product;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;

/** Reads what a catalog says of packing. */
final class PackingReader {
    private static final int MOST = 2000;
    private static final double LONGEST = 1_000_000;
    private static final double HEAVIEST = 10_000;

    private final Set<String> skus;

    /** Part numbers that parts may name. */
    PackingReader(Set<String> skus) {
        this.skus = skus;
    }

    Optional<Packing> read(YamlMap m) {
        List<Packing.Carton> cartons = m.each("cartons", MOST, "a list of cartons", this::carton);
        List<Packing.Part> parts = m.each("parts", MOST, "a list of parts", this::part);
        Optional<Packing.Carrier> carrier = m.findMap("carrier").flatMap(PackingReader::carrier);
        LabelSheet labels = m.findMap("labels").flatMap(PackingReader::labels).orElse(LabelSheet.USUAL);
        return m.make(() -> new Packing(parts, cartons, carrier, labels));
    }

    private Optional<Packing.Part> part(YamlValue value) {
        YamlMap m = value.map();
        String sku = known(m.require("part", "a part number"));
        OptionalDouble length = m.find("length")
                .map(v -> OptionalDouble.of(v.length(0, LONGEST)))
                .orElse(OptionalDouble.empty());
        Optional<String> place = m.find("place").map(YamlValue::text);
        Optional<PackedSize> size = m.find("size").flatMap(PackingReader::size);
        List<String> instead = m.each("instead", MOST, "a list of part numbers", v -> Optional.of(known(v)));
        return m.make(() -> new Packing.Part(sku, length, place, size, instead));
    }

    private String known(YamlValue value) {
        String sku = value.text();
        if (!sku.isEmpty() && !skus.contains(sku)) {
            String nearest = Nearest.hint(sku, skus);
            value.fault("there is no part " + Plain.quoted(sku) + nearest);
        }
        return sku;
    }

    private Optional<Packing.Carton> carton(YamlValue value) {
        YamlMap m = value.map();
        YamlValue number = m.require("sku", "a part number");
        String sku = number.text();
        if (!sku.isEmpty() && !skus.add(sku)) {
            number.fault("part number " + Plain.quoted(sku) + " stands twice");
        }
        String name = m.require("name", "a name").text();
        Optional<PackedSize> inside = size(m.require("inside", "the clear sides, such as [600, 400, 300]"));
        double weight = m.require("weight", "kg").number(0, HEAVIEST);
        double most = m.require("most", "what may lie in it, kg").number(0, HEAVIEST);
        return inside.flatMap(i -> m.make(() -> new Packing.Carton(sku, name, i, weight, most)));
    }

    private static Optional<PackedSize> size(YamlValue value) {
        List<YamlValue> sides = value.list(3, 3, "a list of three sides such as [600, 400, 300]");
        if (sides.size() < 3) {
            return Optional.empty();
        }
        double a = sides.get(0).length(0, 20_000);
        double b = sides.get(1).length(0, 20_000);
        double c = sides.get(2).length(0, 20_000);
        return value.make(() -> new PackedSize(a, b, c));
    }

    private static Optional<Packing.Carrier> carrier(YamlMap m) {
        double weight = m.require("weight", "most of a parcel, kg").number(0, HEAVIEST);
        double length = m.require("length", "its longest side").length(0, 20_000);
        double girth = m.require("girth", "longest side and the way round the other two")
                .length(0, 60_000);
        return m.make(() -> new Packing.Carrier(weight, length, girth));
    }

    /** What a sheet of labels can be cut from. */
    enum Page {
        /** ISO 216. */
        A4,
        /** 8.5 x 11 inches. */
        LETTER
    }

    private static Optional<LabelSheet> labels(YamlMap m) {
        LabelSheet usual = LabelSheet.USUAL;
        Page page = m.get("page", v -> v.oneOf(Page.class), Page.A4);
        int columns = m.get("columns", v -> v.whole(1, 20), usual.columns());
        int rows = m.get("rows", v -> v.whole(1, 50), usual.rows());
        double width = m.get("width", v -> v.length(0, 300), usual.width());
        double height = m.get("height", v -> v.length(0, 300), usual.height());
        double left = m.get("left", v -> v.length(0, 100), usual.left());
        double top = m.get("top", v -> v.length(0, 100), usual.top());
        double across = m.get("stepAcross", v -> v.length(0, 300), width);
        double down = m.get("stepDown", v -> v.length(0, 300), height);
        return m.make(() -> new LabelSheet(page == Page.LETTER, columns, rows, width, height, left, top, across, down));
    }
}
