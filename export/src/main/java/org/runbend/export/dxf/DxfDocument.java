package org.runbend.export.dxf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A drawing in DXF: AC1015 (R2000), ASCII, mm, with every table, handle and owner the format asks for. Declare line types
 * and layers, draw into {@link #model()}, then take {@link #toBytes()}. Equal calls give equal bytes. Not for use by
 * several threads.
 */
public final class DxfDocument {
    private final Map<String, DxfLineType> lineTypes = new LinkedHashMap<>();
    private final Map<String, DxfLayer> layers = new LinkedHashMap<>();
    private final Map<String, DimensionStyle> dimensionStyles = new LinkedHashMap<>();
    private final List<DxfBlock> blocks = new ArrayList<>();
    private final DxfBlock model;
    private long lastHandle;
    private DxfExtent extent = new DxfExtent(0, 0, 0, 0);
    private double lineTypeScale = 1;

    /** An empty drawing with the layer 0 and the line type Continuous. */
    public DxfDocument() {
        model = newBlock("*Model_Space");
        newBlock("*Paper_Space");
        lineType(new DxfLineType("ByBlock", "", List.of()));
        lineType(new DxfLineType("ByLayer", "", List.of()));
        lineType(new DxfLineType("Continuous", "Solid line", List.of()));
        layer(new DxfLayer("0", 7, "Continuous", 25));
        dimensionStyles.put("", new DimensionStyle("Standard", 2.5));
    }

    /** Declares a line type. */
    public void lineType(DxfLineType lineType) {
        lineTypes.put(lineType.name(), lineType);
    }

    /** Declares a layer; its line type must be there already. */
    public void layer(DxfLayer layer) {
        if (!lineTypes.containsKey(layer.lineType())) {
            throw new IllegalArgumentException(
                    "layer " + layer.name() + ": line type (" + layer.lineType() + ") is not declared");
        }
        layers.put(layer.name(), layer);
    }

    /** The box of the drawing, mm: what a program shows when it opens the file. */
    public void extent(double minX, double minY, double maxX, double maxY) {
        extent = new DxfExtent(minX, minY, maxX, maxY);
    }

    /** Factor on the dashes of all line types. */
    public void lineTypeScale(double scale) {
        lineTypeScale = scale;
    }

    /** Where to draw. */
    public DxfBlock model() {
        return model;
    }

    /** The file. May be asked for again after more was drawn. */
    public byte[] toBytes() {
        long drawn = lastHandle;
        Tags body = new DxfSections(this).body();
        Tags file = DxfSections.header(extent, lineTypeScale, digits(), lastHandle + 1)
                .add(body);
        lastHandle = drawn; // the handles of tables and objects belong to this one file
        return file.put(0, "EOF").toString().getBytes(StandardCharsets.US_ASCII);
    }

    long nextHandle() {
        return ++lastHandle;
    }

    DxfBlock dimensionBlock() {
        return newBlock("*D" + (blocks.size() - 1));
    }

    /** The name of the dimension style for digits of that height. */
    String dimensionStyle(double height) {
        return dimensionStyles
                .computeIfAbsent(
                        Tags.coordinate(height), key -> new DimensionStyle("DIM_" + dimensionStyles.size(), height))
                .name();
    }

    void requireLayer(String name) {
        if (!layers.containsKey(name)) {
            throw new IllegalArgumentException("layer (" + name + ") is not declared");
        }
    }

    List<DxfLineType> lineTypes() {
        return List.copyOf(lineTypes.values());
    }

    List<DxfLayer> layers() {
        return List.copyOf(layers.values());
    }

    List<DimensionStyle> dimensionStyles() {
        return List.copyOf(dimensionStyles.values());
    }

    List<DxfBlock> blocks() {
        return List.copyOf(blocks);
    }

    DxfExtent extent() {
        return extent;
    }

    /** Height of the digits of the first dimension. */
    private double digits() {
        return dimensionStyles().get(dimensionStyles.size() > 1 ? 1 : 0).height();
    }

    private DxfBlock newBlock(String name) {
        DxfBlock block = new DxfBlock(name, this);
        blocks.add(block);
        return block;
    }

    /** A dimension style by the height of its digits. */
    record DimensionStyle(String name, double height) {}
}
