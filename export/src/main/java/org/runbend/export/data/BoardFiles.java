package org.runbend.export.data;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;

/** What the drawings of stock boards are called: material and number, in letters that every file system takes. */
public final class BoardFiles {
    /** The sub-folder of a kit that they lie in. */
    public static final String FOLDER = "boards";

    private static final int LONGEST = 40;
    private static final String NAMELESS = "board";

    private BoardFiles() {}

    /**
     * The names, without folder and ending, layer by layer and board by board: {@code birch-ply-01} and so on, counted on over
     * layers of one material.
     */
    public static List<List<String>> names(BoardsPlan plan) {
        Map<String, Integer> numbers = new TreeMap<>();
        List<List<String>> all = new ArrayList<>();
        for (LayerPlan layer : plan.layers()) {
            String material = plain(layer.layer().material());
            List<String> names = new ArrayList<>();
            for (int b = 0; b < layer.boards(); b++) {
                names.add(String.format(Locale.ROOT, "%s-%02d", material, numbers.merge(material, 1, Integer::sum)));
            }
            all.add(names);
        }
        return all;
    }

    /** The file of a board in a kit, as {@code kit.json} lists it. */
    public static String path(String name) {
        return FOLDER + "/" + name + ".dxf";
    }

    /**
     * A part number as part of a file's name: small letters, digits and single dashes. Others become dashes, so two materials
     * may share a name; their boards are counted on.
     */
    static String plain(String material) {
        String plain = material.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        String cut = plain.length() > LONGEST ? plain.substring(0, LONGEST) : plain;
        String bare = cut.replaceAll("^-|-$", "");
        return bare.isEmpty() ? NAMELESS : bare;
    }
}
