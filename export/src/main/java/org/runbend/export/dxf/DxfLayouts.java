package org.runbend.export.dxf;

import java.util.Optional;

/** The objects of a document: the dictionaries it must have, and, if it has a sheet of paper, its layouts. */
final class DxfLayouts {
    /** The whole plot area, lineweights shown, as the layout is set: bits 4, 5, 7 and 9 (DXF reference, PLOTSETTINGS 70). */
    private static final int PLOT_FLAGS = 16 + 32 + 128 + 512;

    /** As above for model space, bit 10: its plot settings are those of a model. */
    private static final int MODEL_FLAGS = PLOT_FLAGS + 1024;

    private final DxfDocument document;
    private final long modelLayout;
    private final long paperLayout;

    DxfLayouts(DxfDocument document) {
        this.document = document;
        boolean has = document.paperSize().isPresent();
        modelLayout = has ? document.nextHandle() : 0;
        paperLayout = has ? document.nextHandle() : 0;
    }

    /** The layout that shows a block, if it has one. */
    Optional<Long> of(DxfBlock block) {
        if (document.paperSize().isEmpty()) {
            return Optional.empty();
        }
        if (block == document.model()) {
            return Optional.of(modelLayout);
        }
        return document.isPaper(block) ? Optional.of(paperLayout) : Optional.empty();
    }

    Tags objects() {
        long root = document.nextHandle();
        long groups = document.nextHandle();
        Tags t = new Tags(document.version());
        dictionary(t, root, 0).put(3, "ACAD_GROUP").handle(350, groups);
        if (document.paperSize().isEmpty()) {
            return dictionary(t, groups, root);
        }
        long layouts = document.nextHandle();
        t.put(3, "ACAD_LAYOUT").handle(350, layouts);
        dictionary(t, groups, root);
        dictionary(t, layouts, root).put(3, "Model").handle(350, modelLayout);
        t.put(3, document.paperName()).handle(350, paperLayout);
        layout(t, modelLayout, layouts, "Model", 0, MODEL_FLAGS, document.extent(), document.model());
        DxfExtent size = document.paperSize().get();
        DxfBlock sheet = document.sheet().orElseThrow();
        layout(t, paperLayout, layouts, document.paperName(), 1, PLOT_FLAGS, size, sheet);
        return t;
    }

    private void layout(
            Tags t, long handle, long owner, String name, int tab, int flags, DxfExtent box, DxfBlock block) {
        DxfExtent size = document.paperSize().orElseThrow();
        t.put(0, "LAYOUT").handle(5, handle).handle(330, owner).put(100, "AcDbPlotSettings");
        t.put(1, "").put(2, "none_device").put(4, "").put(6, "");
        t.coordinate(40, 0).coordinate(41, 0).coordinate(42, 0).coordinate(43, 0);
        t.coordinate(44, size.maxX())
                .coordinate(45, size.maxY())
                .coordinate(46, 0)
                .coordinate(47, 0);
        t.coordinate(48, 0).coordinate(49, 0).coordinate(140, 0).coordinate(141, 0);
        t.coordinate(142, 1)
                .coordinate(143, 1)
                .put(70, flags)
                .put(72, 1)
                .put(73, 0)
                .put(74, 5)
                .put(7, "");
        t.put(75, 16).coordinate(147, 1).coordinate(148, 0).coordinate(149, 0);
        t.put(100, "AcDbLayout").put(1, name).put(70, 1).put(71, tab);
        t.coordinate(10, box.minX())
                .coordinate(20, box.minY())
                .coordinate(11, box.maxX())
                .coordinate(21, box.maxY());
        t.point(12, 0, 0).point(14, box.minX(), box.minY()).point(15, box.maxX(), box.maxY());
        t.coordinate(146, 0).point(13, 0, 0);
        t.coordinate(16, 1)
                .coordinate(26, 0)
                .coordinate(36, 0)
                .coordinate(17, 0)
                .coordinate(27, 1)
                .coordinate(37, 0);
        t.put(76, 0).handle(330, block.recordHandle);
    }

    private static Tags dictionary(Tags t, long handle, long owner) {
        return t.put(0, "DICTIONARY")
                .handle(5, handle)
                .handle(330, owner)
                .put(100, "AcDbDictionary")
                .put(281, 1);
    }
}
