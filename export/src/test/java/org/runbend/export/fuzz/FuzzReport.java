package org.runbend.export.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Adds results up: how many of which kind came to which exit code, the slowest and the largest cases, all faults. */
final class FuzzReport {
    private static final int WORST = 10;

    private final Map<String, Map<Integer, Integer>> codes = new TreeMap<>();
    private final Map<String, Long> millis = new TreeMap<>();
    private final List<CaseResult> faulty = new ArrayList<>();
    private List<CaseResult> slowest = List.of();
    private List<CaseResult> largest = List.of();
    private int cases;

    void add(CaseResult r) {
        cases++;
        String kind = r.what().endsWith(".yaml") ? "mutated example" : r.what();
        codes.computeIfAbsent(kind, k -> new TreeMap<>()).merge(r.code(), 1, Integer::sum);
        millis.merge(kind, r.millis(), Long::sum);
        slowest = worst(slowest, r, Comparator.comparingLong(CaseResult::millis));
        largest = worst(largest, r, Comparator.comparingLong(CaseResult::heap));
        if (!r.faults().isEmpty()) {
            faulty.add(r);
        }
    }

    private static List<CaseResult> worst(List<CaseResult> worst, CaseResult r, Comparator<CaseResult> by) {
        List<CaseResult> more = new ArrayList<>(worst);
        more.add(r);
        more.sort(by.reversed());
        return List.copyOf(more.subList(0, Math.min(WORST, more.size())));
    }

    int cases() {
        return cases;
    }

    /** How many cases came to an exit code. */
    int count(int code) {
        return codes.values().stream().mapToInt(c -> c.getOrDefault(code, 0)).sum();
    }

    /** Cases with faults. */
    List<CaseResult> faulty() {
        return List.copyOf(faulty);
    }

    /** All figures as text. */
    String text() {
        StringBuilder text = new StringBuilder();
        long sum = millis.values().stream().mapToLong(m -> m).sum();
        line(
                text,
                "%d cases, %.1f s of processor time, exit codes 0: %d, 1: %d, 2: %d, other: %d, with faults: %d",
                cases,
                sum / 1000.0,
                count(0),
                count(1),
                count(2),
                cases - count(0) - count(1) - count(2),
                faulty.size());
        codes.forEach((kind, c) -> line(text, "  %-16s %s, %.1f s", kind, c, millis.get(kind) / 1000.0));
        line(text, "slowest, in processor time:");
        slowest.forEach(r -> line(text, "  %8d ms  case %d (%s, code %d)", r.millis(), r.number(), r.what(), r.code()));
        line(text, "most heap, with what was not collected yet:");
        largest.forEach(r -> line(text, "  %8.1f MiB case %d (%s)", r.heap() / 1048576.0, r.number(), r.what()));
        line(text, "process at its largest: %s", largestProcess());
        faulty.forEach(r -> line(text, "FAULT case %d (%s): %s", r.number(), r.what(), r.faults()));
        return text.toString();
    }

    /** Highest resident memory of this process, solvers outside the heap included; where the system tells. */
    private static String largestProcess() {
        Path status = Path.of("/proc/self/status");
        try {
            return Files.exists(status)
                    ? Files.readAllLines(status).stream()
                            .filter(l -> l.startsWith("VmHWM"))
                            .findFirst()
                            .orElse("not told")
                    : "not told";
        } catch (IOException e) {
            return "not told";
        }
    }

    private static void line(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
