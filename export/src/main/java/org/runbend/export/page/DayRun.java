package org.runbend.export.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A day's orders planned and nested by {@code runbend batch} in a process of its own. How far it is is told by the kits that
 * lie there, what came of it by {@code day.json} and what the command printed.
 */
final class DayRun {
    private static final long LOOK = 400;
    private static final int DEEP = 2;

    private final String id = Secrets.fresh();
    private final String request;
    private final Path orders;
    private final Path out;
    private final StartFolder folder;
    private final EventLog events = new EventLog();
    private Process process;
    private boolean stopped;

    DayRun(String request, Path orders, Path out, StartFolder folder) {
        this.request = request;
        this.orders = orders;
        this.out = out;
        this.folder = folder;
    }

    String id() {
        return id;
    }

    String request() {
        return request;
    }

    EventLog events() {
        return events;
    }

    boolean isOver() {
        return events.isClosed();
    }

    /**
     * Runs it to its end.
     *
     * @param command all words of the process
     * @param work where its output goes
     */
    void run(List<String> command, Path work) {
        Map<String, Object> over = new LinkedHashMap<>();
        Path told = work.resolve(id + ".out");
        Path faults = work.resolve(id + ".err");
        try {
            FileTime since = newest();
            Process made = new ProcessBuilder(command)
                    .directory(folder.path().toFile())
                    .redirectOutput(told.toFile())
                    .redirectError(faults.toFile())
                    .start();
            synchronized (this) {
                process = made;
                if (stopped) {
                    made.destroyForcibly();
                }
            }
            follow(made, since);
            result(made.exitValue(), lines(told), lines(faults), over);
        } catch (IOException | UncheckedIOException e) {
            over.put("words", "The day could not be begun: is the disk full?");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            over.put("words", "The page has ended.");
        } finally {
            PlanQueue.remove(told);
            PlanQueue.remove(faults);
            events.add("over", over);
            events.close();
        }
    }

    private void follow(Process made, FileTime since) throws InterruptedException {
        int all = count(orders, 1, "[^.].*\\.ya?ml", FileTime.fromMillis(0));
        int last = -1;
        boolean ended;
        do {
            ended = made.waitFor(LOOK, TimeUnit.MILLISECONDS);
            int done = Math.min(all, count(out.resolve("orders"), DEEP, "kit\\.json", since));
            if (done != last) {
                last = done;
                events.add("step", Map.of("at", done, "of", all));
            }
        } while (!ended);
    }

    /** When a job file of the day was written last: kits from before that are planned anew. */
    private FileTime newest() throws IOException {
        try (Stream<Path> all = Files.list(orders)) {
            return all.filter(Files::isRegularFile)
                    .map(DayRun::when)
                    .max(FileTime::compareTo)
                    .orElse(FileTime.fromMillis(0));
        }
    }

    private static FileTime when(Path file) {
        try {
            return Files.getLastModifiedTime(file);
        } catch (IOException e) {
            return FileTime.fromMillis(0);
        }
    }

    private static int count(Path folder, int deep, String name, FileTime since) {
        if (!Files.isDirectory(folder)) {
            return 0;
        }
        try (Stream<Path> found = Files.find(
                folder,
                deep,
                (p, a) -> a.isRegularFile()
                        && p.getFileName().toString().matches(name)
                        && a.lastModifiedTime().compareTo(since) >= 0)) {
            return (int) found.count();
        } catch (IOException | UncheckedIOException e) {
            return 0; // a kit is just being put in its place
        }
    }

    private List<String> lines(Path file) throws IOException {
        return folder.shortened(Files.readString(file, StandardCharsets.UTF_8))
                .lines()
                .toList();
    }

    private void result(int code, List<String> told, List<String> faults, Map<String, Object> over) throws IOException {
        List<String> leftOut = new ArrayList<>(faults);
        synchronized (this) {
            if (stopped) {
                over.put("words", "Stopped. Kits that were done are kept: start the same day again to go on.");
                return;
            }
        }
        Path day = out.resolve("day.json");
        if (code <= 1 && Files.isRegularFile(day)) {
            over.put("folder", folder.path().relativize(out).toString());
            over.put("told", told);
            over.put("day", Json.read(Files.readAllBytes(day)));
            over.put("words", "");
        } else {
            over.put("words", faults.isEmpty() ? "A fault of our own: the day ended without an answer." : "");
        }
        over.put("leftOut", leftOut);
    }

    /** Ends it. */
    synchronized void stop() {
        stopped = true;
        if (process != null) {
            process.destroyForcibly();
        }
    }
}
