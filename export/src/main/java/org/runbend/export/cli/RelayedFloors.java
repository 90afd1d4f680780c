package org.runbend.export.cli;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import org.runbend.export.batch.Kits;
import org.runbend.export.batch.KnownAnswers;
import org.runbend.export.batch.OrderBook;
import org.runbend.export.relay.FloorText;
import org.runbend.export.relay.Relay;
import org.runbend.optimizer.job.read.LoopDrawings;

/** Floors of a day handed to whoever has time, and their loops taken back. A floor whose files mean nothing elsewhere is laid later, here. */
final class RelayedFloors {
    private static final long PAUSE = 200;

    private final Relay relay;
    private final String batch;
    private final LoopDrawings drawings;

    RelayedFloors(Relay relay, String batch, LoopDrawings drawings) {
        this.relay = relay;
        this.batch = batch;
        this.drawings = drawings;
    }

    /** Orders of one floor, and what laying it reads. */
    private record Floor(FloorText text, List<OrderBook.Order> orders) {}

    /**
     * Waits until all floors are laid or given up, laying some in this process.
     *
     * @param known takes what was found
     * @return why, for each order whose floor was given up
     */
    @SuppressWarnings("try") // a worker is there to be closed
    Map<OrderBook.Order, String> lay(List<OrderBook.Order> orders, KnownAnswers known, Kits.Listener listener) {
        Map<String, Floor> floors = floors(orders);
        Map<String, FloorText> texts = new TreeMap<>();
        floors.forEach((name, floor) -> texts.put(name, floor.text()));
        relay.put(batch, texts);
        Map<OrderBook.Order, String> lost = new LinkedHashMap<>();
        int threads = Runtime.getRuntime().availableProcessors();
        try (Relay.Worker worker = relay.work(threads, WorkerCommand.name(), WorkerCommand::lay, word -> {})) {
            Set<String> told = new HashSet<>();
            while (!floors.isEmpty()) {
                for (Map.Entry<String, Relay.Result> result : new TreeMap<>(relay.results(batch, told)).entrySet()) {
                    Floor floor = floors.remove(result.getKey());
                    told.add(result.getKey());
                    if (floor != null) {
                        known.add(result.getValue().answers());
                        result.getValue().fault().ifPresent(f -> floor.orders().forEach(o -> lost.put(o, f)));
                        listener.done(floor.orders().get(0).number(), texts.size() - floors.size(), texts.size());
                    }
                }
                pause(floors.isEmpty() ? 0 : PAUSE);
            }
        }
        relay.forget(batch);
        return lost;
    }

    private Map<String, Floor> floors(List<OrderBook.Order> orders) {
        Map<String, Floor> floors = new LinkedHashMap<>();
        for (List<OrderBook.Order> same : OrderBook.byFloor(orders).values()) {
            OrderBook.Order first = same.get(0);
            Optional<FloorText> text = FloorText.of(first.file(), drawings);
            text.ifPresent(t -> floors.put(name(first.job().fingerprint()), new Floor(t, same)));
        }
        return floors;
    }

    /** A name for a floor of the same files. */
    private static String name(String fingerprint) {
        return UUID.nameUUIDFromBytes(fingerprint.getBytes(StandardCharsets.UTF_8))
                .toString();
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("ended while floors were laid elsewhere");
        }
    }
}
