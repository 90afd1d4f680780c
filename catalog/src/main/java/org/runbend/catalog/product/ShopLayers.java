package org.runbend.catalog.product;

import java.util.EnumMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.runbend.catalog.source.Plain;

/**
 * How a shop calls the layers of drawings that are cut from: the operation, the tool and the depth are in the name, as no
 * standard says where else they stand.
 *
 * @param form letters, digits, {@code _ - $} and the fields {@code {operation}}, {@code {tool}} and {@code {depth}}; a decimal
 *     point is written P
 * @param styles own names, colours and line types; ours for the rest
 */
public record ShopLayers(String form, Map<Operation, Style> styles) {
    /** What programs of machines take as a name at least (AC1009: 31 characters). */
    private static final int LONGEST = 31;

    private static final Pattern PLAIN = Pattern.compile("[A-Za-z0-9_$-]*");

    /** Operation, diameter of the tool, depth: POCKET_D12_Z16P5. */
    public static final ShopLayers OURS = new ShopLayers("{operation}_D{tool}_Z{depth}", Map.of());

    /** How lines of a layer are drawn. */
    public enum Line {
        /** One stroke. */
        CONTINUOUS,
        /** Strokes and gaps. */
        DASHED,
        /** Strokes with a dot between. */
        DASHDOT
    }

    /**
     * A layer.
     *
     * @param name of the operation
     * @param colour index 1 to 255
     * @param line line type
     */
    public record Style(String name, int colour, Line line) {
        /** Checks name and colour. */
        public Style {
            Require.that(
                    !name.isEmpty() && PLAIN.matcher(name).matches() && name.length() <= 20,
                    "layers: name %s: 1 to 20 letters, digits, or _ - $ without accents",
                    Plain.quoted(name));
            Require.that(colour >= 1 && colour <= 255, "layers: colour %s must be 1 to 255", colour);
        }
    }

    /** Checks the form; no two operations may have one name. */
    public ShopLayers {
        String rest = form.replace("{operation}", "").replace("{tool}", "").replace("{depth}", "");
        Require.that(
                PLAIN.matcher(rest).matches() && form.contains("{operation}"),
                "layers: form %s: letters, digits, _ - $ and the fields {operation}, {tool}, {depth}; {operation} must be there",
                Plain.quoted(form));
        EnumMap<Operation, Style> all = new EnumMap<>(Operation.class);
        for (Operation o : Operation.values()) {
            all.put(o, styles.getOrDefault(o, new Style(o.name(), o.colour(), Line.CONTINUOUS)));
        }
        Require.that(
                all.values().stream()
                                .map(s -> s.name().toUpperCase(java.util.Locale.ROOT))
                                .distinct()
                                .count()
                        == all.size(),
                "layers: two operations have one name");
        String longest = form.replace("{tool}", "00P00").replace("{depth}", "000P00");
        for (Style s : all.values()) {
            String name = longest.replace("{operation}", s.name());
            Require.that(
                    name.length() <= LONGEST,
                    "layers: %s is longer than the %s letters of a layer's name",
                    name,
                    LONGEST);
        }
        styles = Map.copyOf(all);
    }

    /** How an operation is drawn. */
    public Style style(Operation operation) {
        return styles.get(operation);
    }

    /** The name of the layer of an operation with a tool's diameter and a depth, mm; of words and letters the name alone. */
    public String name(Operation operation, double tool, double depth) {
        String name = style(operation).name();
        return operation.isMilled()
                ? form.replace("{operation}", name)
                        .replace("{tool}", number(tool))
                        .replace("{depth}", number(depth))
                : name;
    }

    private static String number(double mm) {
        return Plain.number(Math.round(mm * 100) / 100.0).replace('.', 'P');
    }
}
