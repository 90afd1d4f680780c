package org.runbend.export.page;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is to be planned.
 *
 * @param name name of the job file in the start folder, which other files are named from
 * @param text its text
 * @param alternatives whether to plan the floor in several ways too
 * @param temperatures whether to reckon the temperatures of the floor
 */
record PlanRequest(String name, String text, boolean alternatives, boolean temperatures) {
    static PlanRequest of(Map<String, Object> tree) {
        return new PlanRequest(
                String.valueOf(tree.getOrDefault("name", "")),
                String.valueOf(tree.getOrDefault("text", "")),
                "true".equals(tree.get("alternatives")),
                "true".equals(tree.get("temperatures")));
    }

    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", name);
        tree.put("text", text);
        tree.put("alternatives", alternatives);
        tree.put("temperatures", temperatures);
        return tree;
    }
}
