package org.runbend.export.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.Fault;
import org.runbend.catalog.source.SourceFile;
import org.runbend.export.data.DayKit;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.job.read.LoopDrawings;

/**
 * The orders of a folder: its job files in the order of their names. Catalogs and shelves that lie beside them are none.
 *
 * @param orders those that could be read
 * @param faults the others, a line each
 */
public record OrderBook(List<Order> orders, List<String> faults) {
    private static final Pattern NO_ORDER = Pattern.compile("(?m)^(workshop|remnants|pipes)\\s*:");
    private static final int MOST = 10_000;

    /** Copies the lists. */
    public OrderBook {
        orders = List.copyOf(orders);
        faults = List.copyOf(faults);
    }

    /**
     * An order.
     *
     * @param file its job file
     * @param job what was read
     */
    public record Order(Path file, Job job) {
        /** Its number. */
        public String number() {
            return job.order().strip();
        }

        /** The name of its folder: the number, other letters than those of plain names replaced. */
        public String folder() {
            String plain = number().replaceAll("[^A-Za-z0-9._-]+", "_").replaceFirst("^\\.+", "");
            return plain.isEmpty() ? "order" : plain;
        }

        /** Its kit among those in a folder, if one is there that was made of the same files. */
        public Optional<DayKit> kitIn(Path kits) {
            return DayKit.find(kits.resolve(folder()), Optional.of(job.fingerprint()));
        }
    }

    /**
     * Reads a folder.
     *
     * @throws BadInput if there is none, or it holds no job file
     */
    public static OrderBook read(Path folder, LoopDrawings drawings) {
        if (!Files.isDirectory(folder)) {
            throw bad(
                    folder, Files.exists(folder) ? "is a file, the folder of the orders is wanted" : "no such folder");
        }
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.filter(f -> f.getFileName().toString().matches("(?i)[^.].*\\.ya?ml"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw bad(folder, "cannot be read");
        }
        List<Order> orders = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        Map<String, Path> seen = new HashMap<>();
        for (Path file : files) {
            if (isOrder(file)) {
                order(file, drawings, faults)
                        .filter(o -> isNew(o, seen, faults))
                        .ifPresent(orders::add);
            }
        }
        if (orders.isEmpty() && faults.isEmpty()) {
            throw bad(folder, "holds no job file: one order is one file *.yaml");
        }
        if (orders.size() > MOST) {
            throw bad(folder, "holds more than " + MOST + " orders");
        }
        return new OrderBook(orders, faults);
    }

    private static boolean isOrder(Path file) {
        try {
            return !NO_ORDER.matcher(SourceFile.read(file).text()).find();
        } catch (BadInput e) {
            return true; // it will be said what is wrong with it
        }
    }

    /** Orders by their floor: those of one list are planned alike but for whose they are; in the order of the first of each. */
    public static Map<Job, List<Order>> byFloor(List<Order> orders) {
        Map<Job, List<Order>> floors = new LinkedHashMap<>();
        orders.forEach(o -> floors.computeIfAbsent(o.job().withoutOrder(), j -> new ArrayList<>())
                .add(o));
        return floors;
    }

    private static Optional<Order> order(Path file, LoopDrawings drawings, List<String> faults) {
        try {
            return Optional.of(new Order(file, JobReader.read(file, Optional.empty(), drawings)));
        } catch (BadInput e) {
            int more = e.faults().size() - 1;
            faults.add(e.getMessage() + (more > 0 ? " (and " + more + " more)" : ""));
            return Optional.empty();
        }
    }

    private static boolean isNew(Order order, Map<String, Path> seen, List<String> faults) {
        Path other = seen.putIfAbsent(order.folder(), order.file());
        if (other != null) {
            faults.add(order.file() + ": order " + order.number() + " is that of " + other
                    + " too: give it another number");
        }
        return other == null;
    }

    private static BadInput bad(Path folder, String message) {
        return new BadInput(Fault.ofFile(folder.toString(), message));
    }
}
