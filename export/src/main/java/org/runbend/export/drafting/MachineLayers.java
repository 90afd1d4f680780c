package org.runbend.export.drafting;

import java.util.LinkedHashMap;
import java.util.Map;
import org.runbend.catalog.product.Operation;
import org.runbend.catalog.product.ShopLayers;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.LineStyle;

/**
 * The layers of drawings that machines cut from: which of the model's layers stands for which operation, and how the shop
 * calls it. In order of work: pockets and holes before the outline frees the part.
 */
public final class MachineLayers {
    private final ShopLayers shop;
    private final Map<Layer, Named> layers = new LinkedHashMap<>();

    /** No layers yet. */
    MachineLayers(ShopLayers shop) {
        this.shop = shop;
    }

    /**
     * A layer by its name in the file.
     *
     * @param name plain ASCII
     * @param colour index 1 to 255
     * @param style how its lines are drawn
     */
    public record Named(String name, int colour, LineStyle style) {}

    /** Gives a layer of the model an operation with a tool and a depth, mm; none of both for letters and words. */
    MachineLayers with(Layer layer, Operation operation, double tool, double depth) {
        ShopLayers.Style style = shop.style(operation);
        LineStyle line =
                switch (style.line()) {
                    case CONTINUOUS -> LineStyle.CONTINUOUS;
                    case DASHED -> LineStyle.DASHED;
                    case DASHDOT -> LineStyle.DASH_DOT;
                };
        layers.put(layer, new Named(shop.name(operation, tool, depth), style.colour(), line));
        return this;
    }

    /** The layers in order of work. */
    public Map<Layer, Named> named() {
        return new LinkedHashMap<>(layers);
    }

    /** The name of a layer. */
    String name(Layer layer) {
        return layers.get(layer).name();
    }
}
