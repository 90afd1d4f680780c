package org.runbend.export.dxf.read;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a file says, before anything is placed. */
final class Parsed {
    String version = "";
    String page = "ANSI_1252";
    Optional<DrawingUnit> unit = Optional.empty();
    Optional<Boolean> metric = Optional.empty();
    final Map<String, Layer> layers = new HashMap<>();
    final Map<String, Block> blocks = new HashMap<>();
    final List<Raw> model = new ArrayList<>();
    final TreeMap<String, Integer> counts = new TreeMap<>();
    int paper;
    int invisible;

    /** Names are compared without case. */
    static String key(String name) {
        return name.toUpperCase(Locale.ROOT);
    }

    /** A layer of the table. */
    record Layer(String name, boolean frozen, boolean off) {}

    /** A block: its base point and what is in it. */
    record Block(String name, double x, double y, double z, boolean foreign, List<Raw> content) {}
}
