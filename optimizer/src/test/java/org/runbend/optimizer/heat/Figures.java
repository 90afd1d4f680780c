package org.runbend.optimizer.heat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Every number inside a record, however deep, by its name. */
final class Figures {
    private final Map<String, Double> found = new TreeMap<>();

    private Figures() {}

    static Map<String, Double> of(Object value) {
        Figures f = new Figures();
        f.walk("", value);
        return f.found;
    }

    private void walk(String name, Object value) {
        if (value instanceof Double d) {
            // A valve that is not there and a throttle that is open are infinite on purpose.
            if (!name.endsWith(".kv") && !name.endsWith(".kwl")) {
                found.put(name, d);
            }
        } else if (value instanceof Optional<?> o) {
            o.ifPresent(v -> walk(name, v));
        } else if (value instanceof List<?> list) {
            for (int i = 0; i < list.size(); i++) {
                walk(name + "[" + i + "]", list.get(i));
            }
        } else if (value instanceof Record r) {
            for (RecordComponent c : r.getClass().getRecordComponents()) {
                try {
                    c.getAccessor().setAccessible(true);
                    walk(name + "." + c.getName(), c.getAccessor().invoke(r));
                } catch (IllegalAccessException | InvocationTargetException e) {
                    throw new IllegalStateException(e);
                }
            }
        }
    }
}
