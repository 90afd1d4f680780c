package org.runbend.export.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Days of orders, one at a time; a request that comes twice begins one. */
final class DayRuns implements AutoCloseable {
    private static final String PLAIN = "[\\p{L}\\p{N}_()+,-][\\p{L}\\p{N}_. ()+,-]{0,79}";
    private static final int KEPT = 8;

    private final StockAccess access;
    private final StartFolder folder;
    private final Path work;
    private final int heap;
    private final Map<String, DayRun> runs = new LinkedHashMap<>();

    /**
     * Days.
     *
     * @param work a folder of ours for what processes print
     * @param heap megabytes that a process may use
     */
    DayRuns(StockAccess access, StartFolder folder, Path work, int heap) {
        this.access = access;
        this.folder = folder;
        this.work = work;
        this.heap = heap;
    }

    /** Folders below the start folder that hold job files, with how many. */
    List<Object> folders() {
        List<Object> found = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder.path())) {
            for (Path path : all.filter(p -> Files.isDirectory(p, LinkOption.NOFOLLOW_LINKS))
                    .sorted()
                    .toList()) {
                long jobs = jobs(path);
                if (jobs > 0 && path.getFileName().toString().matches(PLAIN)) {
                    found.add(Map.of(
                            "name", new Json.Raw(Json.quoted(path.getFileName().toString())), "jobs", jobs));
                }
            }
        } catch (IOException e) {
            return List.of();
        }
        return found;
    }

    private static long jobs(Path path) {
        try (Stream<Path> files = Files.list(path)) {
            return files.filter(f -> f.getFileName().toString().matches("(?i)[^.].*\\.ya?ml"))
                    .count();
        } catch (IOException e) {
            return 0;
        }
    }

    /**
     * Begins a day.
     *
     * @param orders name of the folder of job files
     * @param name of the day, and of the folder it is written to
     */
    synchronized DayRun begin(String orders, String name, String request) {
        for (DayRun before : runs.values()) {
            if (before.request().equals(request)) {
                return before;
            }
        }
        if (isBusy()) {
            throw new Refused(409, "a day is being planned already; wait for its end, or stop it");
        }
        Path from = place(orders);
        Path out = place(name);
        if (!Files.isDirectory(from, LinkOption.NOFOLLOW_LINKS)) {
            throw new Refused(404, "there is no folder " + orders + " here");
        }
        if (from.equals(out)) {
            throw new Refused(400, "the day needs a name other than that of the folder with its orders");
        }
        DayRun run = new DayRun(request, from, out, folder);
        runs.put(run.id(), run);
        forget();
        Thread thread = new Thread(() -> run.run(command(from, out), work), "day");
        thread.setDaemon(true);
        thread.start();
        return run;
    }

    private Path place(String name) {
        if (!name.matches(PLAIN)) {
            throw new Refused(400, "a folder of the day is named by letters and digits");
        }
        return folder.path().resolve(name);
    }

    private List<String> command(Path from, Path out) {
        List<String> command = new ArrayList<>(PlanProcess.java(heap));
        command.addAll(access.batch());
        command.add(from.toString());
        command.addAll(List.of("--out", out.toString(), "--resume"));
        command.addAll(access.place().words());
        command.addAll(List.of("--keep-pipe", mm(access.keeping().coil())));
        command.addAll(List.of("--keep-plate", mm(access.keeping().plate())));
        return command;
    }

    private static String mm(long hundredths) {
        return hundredths / 100 + "." + hundredths / 10 % 10 + hundredths % 10 + " mm";
    }

    private void forget() {
        for (DayRun old : List.copyOf(runs.values())) {
            if (runs.size() > KEPT && old.isOver()) {
                runs.remove(old.id());
            }
        }
    }

    synchronized DayRun find(String id) {
        DayRun run = runs.get(id);
        if (run == null) {
            throw new Refused(404, "this day is not known any more");
        }
        return run;
    }

    synchronized boolean isBusy() {
        return runs.values().stream().anyMatch(r -> !r.isOver());
    }

    @Override
    public synchronized void close() {
        runs.values().forEach(DayRun::stop);
    }
}
