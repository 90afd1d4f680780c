package org.runbend.export.dxf;

import java.util.List;

/** Writes the sections of a document in the order of the format. One use each: it hands out handles. */
final class DxfSections {
    private final DxfDocument document;
    private final DxfVersion version;
    private final DxfLayouts layouts;

    DxfSections(DxfDocument document) {
        this.document = document;
        this.version = document.version();
        this.layouts = new DxfLayouts(document);
    }

    static Tags header(DxfDocument document, double lineTypeScale, double digits, long seed) {
        DxfExtent extent = document.extent();
        Tags t = section(document.version(), "HEADER");
        variable(t, "$ACADVER").put(1, document.version().code());
        variable(t, "$DWGCODEPAGE").put(3, "ANSI_1252");
        if (document.version() == DxfVersion.R12) {
            variable(t, "$HANDLING").put(70, 1);
        }
        variable(t, "$HANDSEED").handle(5, seed);
        variable(t, "$INSBASE").point(10, 0, 0);
        variable(t, "$EXTMIN").point(10, extent.minX(), extent.minY());
        variable(t, "$EXTMAX").point(10, extent.maxX(), extent.maxY());
        variable(t, "$LIMMIN").coordinate(10, extent.minX()).coordinate(20, extent.minY());
        variable(t, "$LIMMAX").coordinate(10, extent.maxX()).coordinate(20, extent.maxY());
        variable(t, "$LTSCALE").coordinate(40, lineTypeScale);
        // Programs that draw dimensions anew take their sizes from here, not from the style.
        variable(t, "$DIMTXT").coordinate(40, digits);
        variable(t, "$DIMASZ").coordinate(40, 1.2 * digits);
        variable(t, "$DIMEXO").coordinate(40, 0.5 * digits);
        variable(t, "$DIMEXE").coordinate(40, 0.8 * digits);
        variable(t, "$DIMGAP").coordinate(40, 0.4 * digits);
        variable(t, "$DIMTIH").put(70, 0);
        variable(t, "$DIMTOH").put(70, 0);
        variable(t, "$DIMTAD").put(70, 1);
        variable(t, "$DIMSCALE").coordinate(40, 1);
        variable(t, "$LUNITS").put(70, 2);
        if (document.version().hasMarkers()) {
            variable(t, "$INSUNITS").put(70, 4);
            variable(t, "$MEASUREMENT").put(70, 1);
        }
        return t.put(0, "ENDSEC");
    }

    Tags body() {
        Tags t = new Tags(version);
        if (version.hasMarkers()) {
            t.add(section("CLASSES")).put(0, "ENDSEC");
        }
        t.add(section("TABLES")).add(tables()).put(0, "ENDSEC");
        t.add(section("BLOCKS")).add(blocks()).put(0, "ENDSEC");
        t.add(section("ENTITIES")).add(document.model().entities());
        if (version.hasMarkers()) {
            t.put(0, "ENDSEC");
            t.add(section("OBJECTS")).add(layouts.objects());
        }
        return t.put(0, "ENDSEC");
    }

    private Tags tables() {
        Tags t = new Tags(version);
        viewports(t);
        lineTypes(t);
        layers(t);
        textStyles(t);
        endTable(table(t, "VIEW", 0));
        endTable(table(t, "UCS", 0));
        applications(t);
        dimensionStyles(t);
        if (version.hasMarkers()) {
            blockRecords(t);
        }
        return t;
    }

    private void viewports(Tags t) {
        long table = document.nextHandle();
        table(t, "VPORT", 1, table);
        DxfExtent e = document.extent();
        double height = Math.max(1, 1.1 * Math.max(e.maxY() - e.minY(), (e.maxX() - e.minX()) / 1.5));
        record(t, "VPORT", table, "AcDbViewportTableRecord", "*ACTIVE");
        t.coordinate(10, 0).coordinate(20, 0).coordinate(11, 1).coordinate(21, 1);
        t.coordinate(12, (e.minX() + e.maxX()) / 2).coordinate(22, (e.minY() + e.maxY()) / 2);
        t.coordinate(13, 0).coordinate(23, 0).coordinate(14, 10).coordinate(24, 10);
        t.coordinate(15, 10).coordinate(25, 10);
        t.coordinate(16, 0).coordinate(26, 0).coordinate(36, 1).point(17, 0, 0);
        t.coordinate(40, height).coordinate(41, 1.5).coordinate(42, 50);
        endTable(t);
    }

    private void lineTypes(Tags t) {
        long table = document.nextHandle();
        List<DxfLineType> types = document.lineTypes();
        table(t, "LTYPE", types.size(), table);
        for (DxfLineType type : types) {
            record(t, "LTYPE", table, "AcDbLinetypeTableRecord", type.name());
            double sum = type.dashes().stream().mapToDouble(Double::doubleValue).sum();
            t.put(3, DxfText.line(type.description()))
                    .put(72, 65)
                    .put(73, type.dashes().size());
            t.coordinate(40, sum);
            for (int i = 0; i < type.dashes().size(); i++) {
                double dash = type.dashes().get(i);
                t.coordinate(49, i % 2 == 0 ? dash : -dash).since2000(74, "0");
            }
        }
        endTable(t);
    }

    private void layers(Tags t) {
        long table = document.nextHandle();
        table(t, "LAYER", document.layers().size(), table);
        for (DxfLayer layer : document.layers()) {
            record(t, "LAYER", table, "AcDbLayerTableRecord", layer.name());
            t.put(62, layer.colourIndex()).put(6, layer.lineType());
            t.since2000(370, Integer.toString(layer.lineWeight()));
        }
        endTable(t);
    }

    private void textStyles(Tags t) {
        long table = document.nextHandle();
        table(t, "STYLE", 1, table);
        record(t, "STYLE", table, "AcDbTextStyleTableRecord", "Standard");
        t.coordinate(40, 0).coordinate(41, 1).coordinate(50, 0).put(71, 0).coordinate(42, 2.5);
        t.put(3, "txt").put(4, "");
        endTable(t);
    }

    private void applications(Tags t) {
        long table = document.nextHandle();
        table(t, "APPID", 2, table);
        record(t, "APPID", table, "AcDbRegAppTableRecord", "ACAD");
        record(t, "APPID", table, "AcDbRegAppTableRecord", DxfNames.APPLICATION);
        endTable(t);
    }

    /** The one table whose records carry their handle in 105. */
    private void dimensionStyles(Tags t) {
        long table = document.nextHandle();
        List<DxfDocument.DimensionStyle> styles = document.dimensionStyles();
        table(t, "DIMSTYLE", styles.size(), table);
        if (version.hasMarkers()) {
            t.put(100, "AcDbDimStyleTable").put(71, 0);
        }
        for (DxfDocument.DimensionStyle style : styles) {
            t.put(0, "DIMSTYLE").handle(105, document.nextHandle()).owner(table);
            t.marker("AcDbSymbolTableRecord").marker("AcDbDimStyleTableRecord");
            t.put(2, style.name()).put(70, 0);
            double h = style.height();
            t.coordinate(41, 1.2 * h)
                    .coordinate(42, 0.5 * h)
                    .coordinate(44, 0.8 * h)
                    .coordinate(140, h);
            t.coordinate(147, 0.4 * h).put(73, 0).put(74, 0).put(77, 1).put(78, 8);
            t.since2000(271, "1").since2000(278, Integer.toString('.'));
        }
        endTable(t);
    }

    private void blockRecords(Tags t) {
        long table = document.nextHandle();
        table(t, "BLOCK_RECORD", document.blocks().size(), table);
        for (DxfBlock block : document.blocks()) {
            t.put(0, "BLOCK_RECORD").handle(5, block.recordHandle).handle(330, table);
            t.put(100, "AcDbSymbolTableRecord").put(100, "AcDbBlockTableRecord").put(2, block.name);
            layouts.of(block).ifPresent(layout -> t.handle(340, layout));
        }
        endTable(t);
    }

    private Tags blocks() {
        Tags t = new Tags(version);
        for (DxfBlock block : document.blocks()) {
            boolean model = block == document.model();
            if ((model || document.isPaper(block)) && version == DxfVersion.R12) {
                continue;
            }
            blockPart(t, "BLOCK", block.beginHandle, block, "AcDbBlockBegin");
            t.put(2, block.name).put(70, block.name.startsWith("*D") ? 1 : 0);
            t.point(10, 0, 0).put(3, block.name).put(1, "");
            if (!model) {
                t.add(block.entities());
            }
            blockPart(t, "ENDBLK", block.endHandle, block, "AcDbBlockEnd");
        }
        return t;
    }

    private void blockPart(Tags t, String type, long handle, DxfBlock block, String subclass) {
        t.put(0, type).handle(5, handle).owner(block.recordHandle).marker("AcDbEntity");
        if (document.isPaper(block)) {
            t.put(67, 1);
        }
        t.put(8, "0").marker(subclass);
    }

    private Tags section(String name) {
        return section(version, name);
    }

    private static Tags section(DxfVersion version, String name) {
        return new Tags(version).put(0, "SECTION").put(2, name);
    }

    private static Tags variable(Tags t, String name) {
        return t.put(9, name);
    }

    private Tags table(Tags t, String name, int count) {
        return table(t, name, count, document.nextHandle());
    }

    private static Tags table(Tags t, String name, int count, long handle) {
        t.put(0, "TABLE").put(2, name).handle(5, handle).owner(0);
        return t.marker("AcDbSymbolTable").put(70, count);
    }

    private static void endTable(Tags t) {
        t.put(0, "ENDTAB");
    }

    private void record(Tags t, String type, long table, String subclass, String name) {
        t.put(0, type).handle(5, document.nextHandle()).owner(table);
        t.marker("AcDbSymbolTableRecord").marker(subclass).put(2, name).put(70, 0);
    }
}
