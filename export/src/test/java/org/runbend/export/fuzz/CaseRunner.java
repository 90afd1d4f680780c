package org.runbend.export.fuzz;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.runbend.export.CommandRun;
import org.runbend.export.JsonIn;

/** Runs a case through the command line in a folder of its own and says what is wrong with what came of it. */
final class CaseRunner implements AutoCloseable {
    /** A case that computes longer hangs; processor time, as a machine may be busy with others. */
    private static final int PATIENCE_SECONDS = 60;

    /** A case that waits longer for whatever it may be hangs too. */
    private static final int DEADLINE_SECONDS = 900;

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final String OURS =
            "{\"job\": \"old\", \"fingerprint\": \"" + "0".repeat(64) + "\", \"files\": [\"old.txt\", \"kit.json\"]}";
    private static final List<MemoryPoolMXBean> HEAP = ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .toList();

    private final Path work;
    private ExecutorService worker = Executors.newSingleThreadExecutor(this::daemon);
    private Thread thread;

    /** A runner in a folder that holds the catalog and the examples. */
    CaseRunner(Path work) {
        this.work = work;
    }

    private Thread daemon(Runnable task) {
        // A stack as large as that of a program's first thread.
        thread = new Thread(null, task, "case", 8L << 20);
        thread.setDaemon(true);
        return thread;
    }

    CaseResult run(FuzzCase c) throws IOException {
        Path folder = work.resolve("case-" + c.number());
        prepare(c, folder);
        Map<String, String> before = content(folder);
        HEAP.forEach(MemoryPoolMXBean::resetPeakUsage);
        long start = computed();
        List<String> faults = new ArrayList<>();
        CommandRun run = ended(c, () -> CommandRun.of(arguments(c, folder)), faults);
        long millis = thread == null ? 1000L * PATIENCE_SECONDS : computed() - start;
        long heap = HEAP.stream().mapToLong(p -> p.getPeakUsage().getUsed()).sum();
        if (run.code() >= 0) {
            faults.addAll(new CaseRules(c, run, before, content(folder), folder).broken());
            Path kit = folder.resolve("kit/kit.json");
            if (c.facts().isPresent() && run.code() < 2 && Files.exists(kit)) {
                faults.addAll(new KitReferee(JsonIn.read(kit), c.facts().get()).broken());
            }
        }
        remove(folder);
        return new CaseResult(c.number(), c.what(), run.code(), millis, heap, faults);
    }

    /** Processor time of the thread that runs cases, ms. */
    private long computed() {
        return thread == null
                ? 0
                : TimeUnit.NANOSECONDS.toMillis(Math.max(0, THREADS.getThreadCpuTime(thread.getId())));
    }

    private CommandRun ended(FuzzCase c, Callable<CommandRun> command, List<String> faults) {
        long start = computed();
        Future<CommandRun> future = worker.submit(command);
        try {
            for (int waited = 1;
                    waited <= DEADLINE_SECONDS && computed() - start < 1000L * PATIENCE_SECONDS;
                    waited++) {
                try {
                    return future.get(1, TimeUnit.SECONDS);
                } catch (TimeoutException e) {
                    // It is asked again.
                }
            }
            faults.add("case " + c.number() + " hangs: " + stackOfCase());
            worker.shutdownNow();
            worker = Executors.newSingleThreadExecutor(this::daemon);
            thread = null;
        } catch (ExecutionException e) {
            StringWriter text = new StringWriter();
            e.getCause().printStackTrace(new PrintWriter(text));
            faults.add("thrown: " + text.toString().lines().limit(30).toList());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
        return new CommandRun(-1, "", "");
    }

    private static String stackOfCase() {
        return Thread.getAllStackTraces().entrySet().stream()
                .filter(t -> t.getKey().getName().equals("case"))
                .map(t -> Stream.of(t.getValue()).limit(25).toList().toString())
                .toList()
                .toString();
    }

    private static String[] arguments(FuzzCase c, Path folder) {
        boolean drawing = c.command().equals("outline");
        Path input = folder.resolve(drawing ? FuzzCase.DRAWING : FuzzCase.JOB);
        List<String> arguments = new ArrayList<>(List.of(c.command(), input.toString()));
        arguments.addAll(c.options());
        if (c.files().containsKey(FuzzCase.SHELF)) {
            arguments.addAll(List.of("--shelf", folder.resolve(FuzzCase.SHELF).toString()));
        }
        switch (c.command()) {
            case "plan" -> {
                arguments.addAll(List.of("--out", folder.resolve("kit").toString()));
                if (c.number() % 2 == 0) {
                    arguments.add("--quote");
                }
            }
            case "loop" ->
                arguments.addAll(List.of("--svg", folder.resolve("loop.svg").toString()));
            case "confirm" ->
                arguments.addAll(List.of("--out", folder.resolve("confirm.pdf").toString()));
            case "outline" ->
                arguments.addAll(List.of("--out", folder.resolve("drawn.yaml").toString()));
            default -> {
                // It writes nothing.
            }
        }
        return arguments.toArray(new String[0]);
    }

    private static void prepare(FuzzCase c, Path folder) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, byte[]> file : c.files().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
        if (!c.command().equals("plan") || c.before() == FuzzCase.Before.NOTHING) {
            return;
        }
        Path kit = folder.resolve("kit");
        if (c.before() == FuzzCase.Before.A_FILE) {
            Files.writeString(kit, "not a folder\n");
            return;
        }
        Files.createDirectory(kit);
        if (c.before() != FuzzCase.Before.EMPTY_FOLDER) {
            Files.writeString(kit.resolve("notes.txt"), "mine\n");
        }
        if (c.before() == FuzzCase.Before.KIT_OF_OURS) {
            Files.writeString(kit.resolve("old.txt"), "old\n");
            Files.writeString(kit.resolve("kit.json"), OURS);
        }
    }

    /** All files and folders below a folder, with the bytes of small files; a large one by its size. */
    static Map<String, String> content(Path folder) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path f : files.skip(1).toList()) {
                boolean small = Files.isRegularFile(f) && Files.size(f) < 5_000;
                content.put(
                        folder.relativize(f).toString(),
                        small
                                ? new String(Files.readAllBytes(f), StandardCharsets.ISO_8859_1)
                                : Files.isDirectory(f) ? "folder" : "size " + Files.size(f));
            }
        }
        return content;
    }

    /** Removes a folder with all that is in it. */
    static void remove(Path folder) throws IOException {
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes a) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path dir, IOException e) throws IOException {
                Files.delete(dir);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /** Names in the working folder that are no example. */
    static Set<String> names(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            TreeSet<String> names = new TreeSet<>();
            files.forEach(f -> names.add(f.getFileName().toString()));
            return names;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        worker.shutdownNow();
    }
}
