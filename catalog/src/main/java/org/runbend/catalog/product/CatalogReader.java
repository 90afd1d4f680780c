package org.runbend.catalog.product;

import java.nio.file.Path;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import org.runbend.catalog.source.Faults;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SourceFile;
import org.runbend.catalog.source.YamlDocument;
import org.runbend.catalog.source.YamlMap;
import org.runbend.catalog.source.YamlValue;

/** Reads a workshop's catalog. Lengths are mm unless the file says {@code units: in}; money is written in major units. */
public final class CatalogReader {
    private static final int MOST = 2000;
    private static final double LONGEST = 1_000_000;
    private static final double HEAVIEST = 10_000;

    private final YamlMap root;
    private final int digits;
    private final Set<String> skus = new HashSet<>();
    private final Set<String> itemSkus = new LinkedHashSet<>();
    private final Set<String> pipeSkus = new LinkedHashSet<>();
    private final Set<String> plateSkus = new LinkedHashSet<>();
    private final Set<String> pumpSkus = new LinkedHashSet<>();
    private final Map<String, YamlValue> aids = new LinkedHashMap<>();

    private CatalogReader(YamlMap root, int digits) {
        this.root = root;
        this.digits = digits;
    }

    /**
     * Reads a catalog.
     *
     * @throws org.runbend.catalog.source.BadInput with every fault that was found
     */
    public static Catalog read(Path file) {
        return read(SourceFile.read(file));
    }

    /** Reads a catalog from a file that is in memory already. Errors as with {@link #read(Path)}. */
    public static Catalog read(SourceFile file) {
        Faults faults = new Faults();
        YamlMap root = YamlDocument.open(file, faults).inOwnUnit();
        String currency =
                root.require("currency", "a code of ISO 4217 such as EUR").text();
        Optional<Catalog> catalog = new CatalogReader(root, digitsOf(root, currency)).catalog(currency);
        faults.throwIfAny();
        return catalog.orElseThrow();
    }

    private static int digitsOf(YamlMap root, String currency) {
        if (currency.isEmpty()) {
            return 2;
        }
        try {
            return Money.decimals(Currency.getInstance(currency).getCurrencyCode());
        } catch (IllegalArgumentException e) {
            root.find("currency").ifPresent(v -> v.wrong("a code of ISO 4217 such as EUR"));
            return 2;
        }
    }

    private Optional<Catalog> catalog(String currency) {
        String workshop = root.require("workshop", "the workshop's name").text();
        List<Pipe> pipes = root.each("pipes", MOST, "a list of pipes", this::pipe);
        List<SpreaderPlate> plates = root.each("plates", MOST, "a list of plates", this::plate);
        List<Item> items = root.each("items", MOST, "a list of items", this::item);
        checkAids();
        List<Coolant> coolants = root.each("coolants", MOST, "a list of coolants", this::coolant);
        List<Pump> pumps = root.each("pumps", MOST, "a list of pumps", this::pump);
        List<Board> boards = root.each("boards", MOST, "a list of boards", this::board);
        Routing routing =
                root.findMap("routing").flatMap(CatalogReader::routing).orElse(Routing.USUAL);
        Optional<Labour> labour = root.findMap("labour").flatMap(this::labour);
        ShopLayers layers =
                root.findMap("layers").flatMap(CatalogReader::layers).orElse(ShopLayers.OURS);
        PanelCutting panels =
                root.findMap("panels").flatMap(CatalogReader::panels).orElse(PanelCutting.USUAL);
        Sales sales =
                root.findMap("sales").flatMap(new SalesReader(digits)::sales).orElse(Sales.PLAIN);
        List<StandardKit> kits = root.each("kits", MOST, "a list of standard kits", this::kit);
        Packing packing =
                root.findMap("packing").flatMap(new PackingReader(skus)::read).orElse(Packing.USUAL);
        return root.make(() -> new Catalog(
                workshop, currency, pipes, plates, items, coolants, pumps, boards, routing, labour, layers, panels,
                sales, kits, packing));
    }

    private static Optional<PanelCutting> panels(YamlMap m) {
        PanelCutting usual = PanelCutting.USUAL;
        double kerf = m.get("kerf", v -> v.length(0, 30), usual.kerf());
        double trim = m.get("trim", v -> v.length(0, 100), usual.trim());
        double least = m.get("leastPart", v -> v.length(20, 500), usual.leastPart());
        Tolerances tolerances =
                m.findMap("tolerances").flatMap(CatalogReader::tolerances).orElse(usual.tolerances());
        List<Double> screws = m.each("screws", 40, "a list of lengths", v -> Optional.of(v.length(5, 300)));
        return m.make(
                () -> new PanelCutting(kerf, trim, least, tolerances, screws.isEmpty() ? usual.screws() : screws));
    }

    private static Optional<Tolerances> tolerances(YamlMap m) {
        Tolerances usual = Tolerances.USUAL;
        double foam = m.get("foam", v -> v.length(0, 10), usual.foam());
        double wood = m.get("wood", v -> v.length(0, 10), usual.wood());
        double pipe = m.get("pipe", v -> v.length(0, 10), usual.pipe());
        double depth = m.get("depth", v -> v.length(0, 10), usual.depth());
        return m.make(() -> new Tolerances(foam, wood, pipe, depth));
    }

    private static Optional<ShopLayers> layers(YamlMap m) {
        String form = m.get("form", YamlValue::text, ShopLayers.OURS.form());
        EnumMap<Operation, ShopLayers.Style> styles = new EnumMap<>(Operation.class);
        style(m.findMap("cut"), Operation.CUT, styles);
        style(m.findMap("hole"), Operation.HOLE, styles);
        style(m.findMap("pocket"), Operation.POCKET, styles);
        style(m.findMap("ramp"), Operation.RAMP, styles);
        style(m.findMap("label"), Operation.LABEL, styles);
        style(m.findMap("note"), Operation.NOTE, styles);
        return m.make(() -> new ShopLayers(form, styles));
    }

    private static void style(Optional<YamlMap> map, Operation operation, Map<Operation, ShopLayers.Style> styles) {
        ShopLayers.Style ours = ShopLayers.OURS.style(operation);
        map.flatMap(m -> {
                    String name = m.get("name", YamlValue::text, ours.name());
                    int colour = m.get("colour", v -> v.whole(1, 255), ours.colour());
                    ShopLayers.Line line = m.get("linetype", v -> v.oneOf(ShopLayers.Line.class), ours.line());
                    return m.make(() -> new ShopLayers.Style(name, colour, line));
                })
                .ifPresent(s -> styles.put(operation, s));
    }

    private Optional<Labour> labour(YamlMap m) {
        double cut = m.get("cut", v -> v.number(0, Labour.LONGEST), 0.0);
        double stop = m.get("stopSetting", v -> v.number(0, Labour.LONGEST), 0.0);
        double coil = m.get("coilChange", v -> v.number(0, Labour.LONGEST), 0.0);
        OptionalLong hour =
                m.find("hour").map(v -> OptionalLong.of(v.money(digits))).orElse(OptionalLong.empty());
        Labour usual = Labour.USUAL;
        double bend = m.get("bend", v -> v.number(0, Labour.LONGEST), usual.bend());
        double groove = m.get("groove", v -> v.number(0, Labour.LONGEST), usual.groove());
        double plate = m.get("plate", v -> v.number(0, Labour.LONGEST), usual.plate());
        double watt = m.get("watt", v -> v.number(0.1, Labour.LONGEST), usual.watt());
        return m.make(() -> new Labour(cut, stop, coil, bend, groove, plate, watt, hour));
    }

    private static Optional<Routing> routing(YamlMap m) {
        Routing usual = Routing.USUAL;
        List<Double> cutters = m.each("cutters", 20, "a list of diameters", v -> Optional.of(v.length(0, 50)));
        double play = m.get("play", v -> v.length(0, 10), usual.play());
        double bendPlay = m.get("bendPlay", v -> v.length(0, 20), usual.bendPlay());
        double pad = m.get("pad", v -> v.length(0, 200), usual.pad());
        double depthPlay = m.get("depthPlay", v -> v.length(0, 5), usual.depthPlay());
        double web = m.get("leastWeb", v -> v.length(0, 200), usual.leastWeb());
        double rest = m.get("leastRest", v -> v.length(0, 200), usual.leastRest());
        List<GuideBush> bushes = m.each("bushes", 20, "a list of guide bushes", CatalogReader::bush);
        double guide = m.get("guideThickness", v -> v.length(0, 50), usual.guideThickness());
        return m.make(() -> new Routing(
                cutters.isEmpty() ? usual.cutters() : cutters,
                play,
                bendPlay,
                depthPlay,
                pad,
                web,
                rest,
                bushes.isEmpty() ? usual.bushes() : bushes,
                guide));
    }

    private static Optional<GuideBush> bush(YamlValue value) {
        YamlMap m = value.map();
        double outer = m.require("outer", "the outside diameter of the collar").length(0, 150);
        double bore = m.require("bore", "the clear inside diameter").length(0, 150);
        double collar = m.get("collar", v -> v.length(0, 50), 8.0);
        return m.make(() -> new GuideBush(outer, bore, collar));
    }

    private void checkAids() {
        aids.forEach((aid, place) -> {
            if (!itemSkus.contains(aid)) {
                String nearest = Nearest.hint(aid, itemSkus);
                place.fault("there is no item " + Plain.quoted(aid) + nearest);
            }
        });
    }

    private Optional<Pipe> pipe(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        pipeSkus.add(sku);
        String name = name(m);
        double outer = m.require("outer", "the outside diameter").length(0, 100);
        double wall = m.require("wall", "the wall thickness").length(0, 50);
        String material = m.require("material", "a word such as pe-rt").text();
        YamlMap radius = m.require("leastRadius", "a mapping such as {fitted: 55, byHand: 80}")
                .map();
        double fitted =
                radius.require("fitted", "the least bend radius as fitted").length(0, 2000);
        double byHand =
                radius.require("byHand", "the least bend radius by hand").length(0, 2000);
        radius.make(() -> fitted);
        Optional<String> aid = m.find("aid").map(YamlValue::text);
        m.find("aid")
                .filter(v -> aid.filter(a -> !a.isEmpty()).isPresent())
                .ifPresent(v -> aids.putIfAbsent(aid.orElseThrow(), v));
        double weight = m.require("weightPerMetre", "kg per metre").number(0, 100);
        List<Coil> coils = m.require("coils", "a list of coils").list(1, 100, "a list of coils").stream()
                .flatMap(v -> coil(v).stream())
                .toList();
        OptionalDouble warmest = m.find("maxTemperature")
                .map(v -> OptionalDouble.of(v.number(20, 150)))
                .orElse(OptionalDouble.empty());
        Pipe.Supply supply =
                m.find("supply").map(v -> v.oneOf(Pipe.Supply.class)).orElse(Pipe.Supply.WHOLE);
        Optional<PressureTest> test = m.findMap("test").flatMap(CatalogReader::pressureTest);
        return m.make(() ->
                new Pipe(sku, name, outer, wall, material, fitted, byHand, aid, weight, coils, warmest, supply, test));
    }

    private static Optional<PressureTest> pressureTest(YamlMap m) {
        double pressure = m.require("pressure", "bar").number(0, 20);
        double minutes = m.require("minutes", "how long it is watched").number(0, 2880);
        OptionalDouble drop =
                m.find("drop").map(v -> OptionalDouble.of(v.number(0, 20))).orElse(OptionalDouble.empty());
        return m.make(() -> new PressureTest(pressure, minutes, drop));
    }

    private Optional<Coil> coil(YamlValue value) {
        YamlMap m = value.map();
        double length = m.require("length", "the coil's length").length(0, LONGEST);
        long cost = cost(m);
        long price = price(m);
        return m.make(() -> new Coil(length, cost, price));
    }

    private Optional<SpreaderPlate> plate(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        plateSkus.add(sku);
        String name = name(m);
        double width = m.require("width", "the width across the groove").length(0, 2000);
        int grooves = m.get("grooves", v -> v.whole(1, 2), 1);
        double centres = m.get("centres", v -> v.length(0, 1000), 0.0);
        double diameter = m.require("grooveDiameter", "the pipe diameter that the groove takes")
                .length(0, 100);
        double thickness = m.require("thickness", "the sheet thickness").length(0, 100);
        String material = m.require("material", "a word such as aluminium").text();
        double weight = m.require("weightPerMetre", "kg per metre").number(0, 100);
        double kerf = m.get("kerf", v -> v.length(0, 100), 0.0);
        double step = m.get("step", v -> v.length(0, 1000), 10.0);
        double trim = m.get("trim", v -> v.length(0, 100), 0.0);
        List<PlateStock> stock =
                m.require("stock", "a list of stock lengths").list(1, 100, "a list of stock lengths").stream()
                        .flatMap(v -> stock(v).stream())
                        .toList();
        return m.make(() -> new SpreaderPlate(
                sku, name, width, grooves, centres, diameter, thickness, material, weight, kerf, step, stock, trim));
    }

    private Optional<PlateStock> stock(YamlValue value) {
        YamlMap m = value.map();
        double length = m.require("length", "the stock length").length(0, LONGEST);
        long cost = cost(m);
        long price = price(m);
        return m.make(() -> new PlateStock(length, cost, price));
    }

    private Optional<Item> item(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        itemSkus.add(sku);
        String name = name(m);
        String unit = m.get("unit", YamlValue::text, "piece");
        long cost = cost(m);
        long price = price(m);
        double weight = m.require("weight", "kg").number(0, HEAVIEST);
        Item.Per per =
                m.require("per", "what the rule counts, such as kit or loop,").oneOf(Item.Per.class);
        double amount = m.get("amount", v -> v.number(0, 1000), 1.0);
        List<String> pipes = m.each("pipes", MOST, "a list of part numbers", v -> Optional.of(v.text()));
        OptionalDouble cable = m.find("cable")
                .map(v -> OptionalDouble.of(v.length(0, LONGEST)))
                .orElse(OptionalDouble.empty());
        return m.make(() -> new Item(sku, name, unit, cost, price, weight, per, amount, pipes, cable));
    }

    private Optional<Coolant> coolant(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        String name = name(m);
        Coolant.Base base = m.require("base", "what it is made from").oneOf(Coolant.Base.class);
        double share = m.get("share", v -> v.share(0, 1), base == Coolant.Base.WATER ? 0.0 : 1.0);
        double freezes = m.get("freezes", v -> v.number(-100, 0), 0.0);
        Optional<Coolant.Litre> litre = m.findMap("litre").flatMap(this::litre);
        return m.make(() -> new Coolant(sku, name, base, share, freezes, litre));
    }

    private Optional<Coolant.Litre> litre(YamlMap m) {
        long cost = cost(m);
        long price = price(m);
        double weight = m.require("weight", "kg").number(0, 10);
        return m.make(() -> new Coolant.Litre(cost, price, weight));
    }

    private Optional<Pump> pump(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        pumpSkus.add(sku);
        String name = name(m);
        long cost = cost(m);
        long price = price(m);
        double weight = m.require("weight", "kg").number(0, HEAVIEST);
        double power = m.require("power", "electrical power in W").number(0, 10_000);
        String wanted = "a list of 2 or more points [l/min, kPa]";
        List<Pump.Point> curve = m.require("curve", wanted).list(2, 100, wanted).stream()
                .flatMap(v -> curvePoint(v).stream())
                .toList();
        return m.make(() -> new Pump(sku, name, curve, power, cost, price, weight));
    }

    private static Optional<Pump.Point> curvePoint(YamlValue value) {
        List<YamlValue> pair = value.list(2, 2, "a point [l/min, kPa]");
        return pair.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Pump.Point(pair.get(0).number(0, 1000), pair.get(1).number(0, 10_000)));
    }

    private Optional<Board> board(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        String name = name(m);
        Board.Kind kind = m.require("kind", "cover or insulation").oneOf(Board.Kind.class);
        double conductivity = m.require("conductivity", "W/(m K)").number(0, 10);
        double density = m.require("density", "kg/m3").number(0, 10_000);
        List<Board.BoardSheet> sheets =
                m.require("sheets", "a list of sheets").list(1, 100, "a list of sheets").stream()
                        .flatMap(v -> sheet(v).stream())
                        .toList();
        return m.make(() -> new Board(sku, name, kind, conductivity, density, sheets));
    }

    private Optional<Board.BoardSheet> sheet(YamlValue value) {
        YamlMap m = value.map();
        double length = m.require("length", "the sheet's length").length(0, 20_000);
        double width = m.require("width", "the sheet's width").length(0, 20_000);
        double thickness = m.require("thickness", "the sheet's thickness").length(0, 1000);
        long cost = cost(m);
        long price = price(m);
        return m.make(() -> new Board.BoardSheet(length, width, thickness, cost, price));
    }

    private Optional<StandardKit> kit(YamlValue value) {
        YamlMap m = value.map();
        String sku = sku(m);
        String name = name(m);
        long cost = cost(m);
        long price = price(m);
        Set<String> parts = new LinkedHashSet<>(itemSkus);
        parts.addAll(pumpSkus);
        KitReader reader = new KitReader(pipeSkus, plateSkus, parts);
        List<StandardKit.Coils> coils = reader.coils(m);
        List<StandardKit.Plates> plates = reader.plates(m);
        List<StandardKit.Parts> items = reader.parts(m);
        return m.make(() -> new StandardKit(sku, name, cost, price, coils, plates, items));
    }

    private String sku(YamlMap m) {
        YamlValue value = m.require("sku", "a part number");
        String sku = value.text();
        if (!sku.isEmpty() && !skus.add(sku)) {
            value.fault("part number " + Plain.quoted(sku) + " stands twice");
        }
        return sku;
    }

    private static String name(YamlMap m) {
        return m.require("name", "a name").text();
    }

    private long cost(YamlMap m) {
        return m.require("cost", "what the workshop pays").money(digits);
    }

    private long price(YamlMap m) {
        return m.require("price", "what the customer pays").money(digits);
    }
}
