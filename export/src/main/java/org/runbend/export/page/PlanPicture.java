package org.runbend.export.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.runbend.export.data.CutList;
import org.runbend.export.drafting.FloorDrafting;
import org.runbend.export.drafting.GrooveForm;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.svg.SvgBackend;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlatePiece;

/** A plan as the page draws it: the drawing of the files, and the corners of each piece of plate for what is pointed at. */
final class PlanPicture {
    private PlanPicture() {}

    static Map<String, Object> of(KitPlan plan) {
        Map<String, Object> picture = new LinkedHashMap<>();
        picture.put("svg", svg(new FloorDrafting(GrooveForm.NONE).drawWithoutWords(plan)));
        Map<PlatePiece, String> bars = CutList.plateStock(plan);
        List<Object> pieces = new ArrayList<>();
        for (PlatePiece piece : plan.plates().pieces()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("product", piece.product());
            one.put("length", piece.length());
            one.put("bar", bars.getOrDefault(piece, ""));
            one.put(
                    "corners",
                    plan.body(piece).stream().map(p -> List.of(p.x(), p.y())).toList());
            pieces.add(one);
        }
        picture.put("pieces", pieces);
        picture.put("bars", CutList.plates(plan).stream().map(PlanPicture::bar).toList());
        picture.put("sound", plan.isSound());
        return picture;
    }

    private static Map<String, Object> bar(CutList.StockPiece stock) {
        return Map.of(
                "id", stock.id(),
                "product", stock.product(),
                "length", stock.length(),
                "leftover", stock.leftover(),
                "cuts",
                        stock.cuts().stream()
                                .map(c -> Map.of("length", c.length(), "goesTo", c.goesTo()))
                                .toList());
    }

    /** A sheet for the page, whose policy takes no style from a text. */
    static String svg(Sheet sheet) {
        return SvgBackend.svg(sheet).replaceFirst(" style=\"[^\"<>]*\"", "");
    }

    /** The box around a floor. */
    static Extent extent(KitPlan plan) {
        return Extent.around(plan.job().floor().outline().stream()
                .map(p -> new Point(p.x(), p.y()))
                .toList());
    }
}
