package org.runbend.catalog.source;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the faults of one reading, so that a person hears of all of them at once. Not for several threads. */
public final class Faults {
    /** More than this many help nobody. */
    private static final int MOST = 100;

    private final List<Fault> found = new ArrayList<>();
    private int count;

    /** Notes a fault; the same line is noted once, and of very many only the first hundred. */
    public void add(Fault fault) {
        count++;
        if (found.size() < MOST && !found.contains(fault)) {
            found.add(fault);
        }
    }

    /** Notes all faults of an exception. */
    public void addAll(BadInput bad) {
        bad.faults().forEach(this::add);
    }

    /** How often {@link #add} was called so far. */
    public int count() {
        return count;
    }

    /** Throws {@link BadInput} if anything was noted: files in order of reading, places from top to bottom. */
    public void throwIfAny() {
        if (!found.isEmpty()) {
            List<String> files = found.stream().map(Fault::file).distinct().toList();
            throw new BadInput(found.stream()
                    .sorted(Comparator.comparingInt((Fault f) -> files.indexOf(f.file()))
                            .thenComparingInt(Fault::line)
                            .thenComparingInt(Fault::column))
                    .toList());
        }
    }
}
