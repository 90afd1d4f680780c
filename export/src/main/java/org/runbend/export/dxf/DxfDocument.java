package org.runbend.export.dxf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A drawing in DXF: ASCII, mm, R2000 with every table, handle and owner the format asks for, or R12 for old controllers. Declare line types
 * and layers, draw into {@link #model()}, then take {@link #toBytes()}. Equal calls give equal bytes. Not for use by
 * several threads.
 */
public final class DxfDocument {
    private final Map<String, DxfLineType> lineTypes = new LinkedHashMap<>();
    private final Map<String, DxfLayer> layers = new LinkedHashMap<>();
    private final Map<String, DimensionStyle> dimensionStyles = new LinkedHashMap<>();
    private final List<DxfBlock> blocks = new ArrayList<>();
    private final DxfVersion version;
    private final DxfBlock model;
    private final DxfBlock paper;
    private long lastHandle;
    private DxfExtent extent = new DxfExtent(0, 0, 0, 0);
    private double lineTypeScale = 1;
    private Optional<DxfBlock> sheet = Optional.empty();
    private Optional<DxfExtent> paperSize = Optional.empty();
    private String paperName = "Sheet";
    private int dimensions;
    private int views;

    /** An empty drawing in R2000 with the layer 0 and the line type Continuous. */
    public DxfDocument() {
        this(DxfVersion.R2000);
    }

    /** An empty drawing with the layer 0 and the line type Continuous. */
    public DxfDocument(DxfVersion version) {
        this.version = version;
        model = newBlock("*Model_Space", false);
        paper = newBlock("*Paper_Space", true);
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

    /**
     * A block to draw into and to insert; its name is ASCII letters, digits, {@code _ - $}, and new to the document.
     *
     * @throws IllegalArgumentException if the name will not do
     */
    public DxfBlock block(String name) {
        DxfNames.check(name);
        if (blocks.stream().anyMatch(b -> b.name.equalsIgnoreCase(name))) {
            throw new IllegalArgumentException("block " + name + " is there already");
        }
        return newBlock(name, false);
    }

    /**
     * A sheet of paper to print on, sizes in mm, its lower left corner at 0, 0: draw border and words into it, and look
     * at the model through {@link #view}. One sheet a document; R12 has none and draws nothing of it.
     *
     * <p>What lies on it stands in its block and not among the entities of the model, where LibreCAD 2.2, for one, would draw it
     * into the model.
     */
    public DxfBlock paper(String name, double width, double height) {
        DxfNames.check(name);
        if (paperSize.isPresent()) {
            throw new IllegalStateException("the drawing has its sheet of paper already");
        }
        paperName = name;
        paperSize = Optional.of(new DxfExtent(0, 0, width, height));
        DxfBlock block = paper;
        block.viewport("0", 1, paperSize.get(), width / 2, height / 2, 1);
        sheet = Optional.of(block);
        return block;
    }

    /**
     * Shows a part of the model on the paper: the window from (minX, minY) to (maxX, maxY), paper mm, around the point
     * (x, y) of the model, which is {@code scale} times as large as it shows.
     *
     * @throws IllegalStateException if there is no paper yet
     */
    public void view(
            String layer, double minX, double minY, double maxX, double maxY, double x, double y, double scale) {
        DxfBlock block = sheet.orElseThrow(() -> new IllegalStateException("a view wants a sheet of paper first"));
        views++;
        block.viewport(layer, views + 1, new DxfExtent(minX, minY, maxX, maxY), x, y, scale);
    }

    /** The file. May be asked for again after more was drawn. */
    public byte[] toBytes() {
        long drawn = lastHandle;
        Tags body = new DxfSections(this).body();
        Tags file = DxfSections.header(this, lineTypeScale, digits(), lastHandle + 1)
                .add(body);
        lastHandle = drawn; // the handles of tables and objects belong to this one file
        return file.put(0, "EOF").toString().getBytes(StandardCharsets.US_ASCII);
    }

    long nextHandle() {
        return ++lastHandle;
    }

    DxfBlock dimensionBlock() {
        dimensions++;
        return newBlock("*D" + dimensions, false);
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

    DxfVersion version() {
        return version;
    }

    /** The active layout, which stays empty. */
    DxfBlock paper() {
        return paper;
    }

    /** The sheet of paper, if there is one. */
    Optional<DxfBlock> sheet() {
        return sheet;
    }

    boolean isPaper(DxfBlock block) {
        return block == paper || sheet.filter(s -> s == block).isPresent();
    }

    Optional<DxfExtent> paperSize() {
        return paperSize;
    }

    String paperName() {
        return paperName;
    }

    private DxfBlock newBlock(String name, boolean onPaper) {
        DxfBlock block = new DxfBlock(name, this, onPaper);
        blocks.add(block);
        return block;
    }

    /** A dimension style by the height of its digits. */
    record DimensionStyle(String name, double height) {}
}
