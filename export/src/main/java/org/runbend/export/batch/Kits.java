package org.runbend.export.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.catalog.source.KeyPlace;
import org.runbend.export.data.DayKit;
import org.runbend.export.dxf.DxfVersion;
import org.runbend.export.folder.KitFiles;
import org.runbend.export.folder.OutputFolder;
import org.runbend.export.papers.PaperForm;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.laying.LoopLaying;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.service.PlanService;
import org.runbend.optimizer.service.Running;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.KitVerifier;
import org.runbend.optimizer.work.Memory;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/**
 * The kits of a day, each in a folder of its own. Equal floors with equal wishes are planned once, and a floor that was laid before, turned
 * or mirrored, is not laid again; what comes of either passes all verifiers again under each order.
 */
public final class Kits {
    private static final KitFiles.DrawingForm FORM = new KitFiles.DrawingForm(DxfVersion.R2000, true, false);

    private final Path folder;
    private final boolean resume;
    private final PaperForm papers;
    private final Listener listener;
    private final KnownAnswers known;
    private final List<String> faults = new ArrayList<>();
    private final Map<String, DayKit> kits = new LinkedHashMap<>();
    private int floors;
    private int laid;

    /**
     * Kits in a folder.
     *
     * @param resume whether those that an earlier run wrote for the same files are taken as they are
     * @param papers what papers look like
     * @param known what was laid before
     * @param listener hears how far it is
     */
    public Kits(Path folder, boolean resume, PaperForm papers, KnownAnswers known, Listener listener) {
        this.folder = folder;
        this.resume = resume;
        this.papers = papers;
        this.known = known;
        this.listener = listener;
    }

    /** Hears how far it is. */
    public interface Listener {
        /** So many orders of all are done, this one last. */
        void done(String order, int done, int all);
    }

    /** Orders that could not be planned, or whose plan failed, a line each. */
    public List<String> faults() {
        return List.copyOf(faults);
    }

    /** How many different floors there were to plan. */
    public int floors() {
        return floors;
    }

    /** For how many of them a loop was laid that was not known from an equal floor or its mirror image. */
    public synchronized int laid() {
        return laid;
    }

    private synchronized void countLaid() {
        laid++;
    }

    /** What is known, for one floor: it is counted once if it lays anything. */
    private final class Counting implements Memory {
        private boolean counted;

        @Override
        public <T extends Record> T recall(Record question, Class<T> kind, Supplier<T> answer) {
            return known.recall(question, kind, () -> {
                count(question);
                return answer.get();
            });
        }

        private synchronized void count(Record question) {
            if (question instanceof LoopLaying.Floor && !counted) {
                counted = true;
                countLaid();
            }
        }
    }

    /** Plans and writes; the kits that can be cut, in the order of the book. */
    public List<DayKit> make(List<OrderBook.Order> orders, int threads) {
        List<OrderBook.Order> left = new ArrayList<>();
        int done = 0;
        for (OrderBook.Order order : orders) {
            Optional<DayKit> before = resume ? order.kitIn(folder) : Optional.empty();
            if (before.isPresent()) {
                take(before.get());
                listener.done(order.number(), ++done, orders.size());
            } else {
                left.add(order);
            }
        }
        plan(OrderBook.byFloor(left), threads, done, orders.size());
        return kits(orders);
    }

    /**
     * Plans those orders anew whose pipe is cut from coils of the shelf instead of going into the box as a whole coil; what was laid for
     * them is known. The kits that can be cut, in the order of the book.
     */
    public List<DayKit> cutFrom(Shop shop, List<OrderBook.Order> orders) {
        Map<String, Shelf> coils = orders.isEmpty()
                ? Map.of()
                : new ShelfCoils(shop, orders.get(0).job().catalog()).allot(kits(orders));
        try (PlanService service = new PlanService(1)) {
            for (OrderBook.Order order : orders) {
                Shelf shelf = coils.get(order.number());
                if (shelf != null) {
                    kits.remove(order.number());
                    one(order, service.plan(order.job().with(shelf), new Work(Progress.SILENT, 1, known)));
                }
            }
        }
        return kits(orders);
    }

    private List<DayKit> kits(List<OrderBook.Order> orders) {
        return orders.stream()
                .map(OrderBook.Order::number)
                .filter(kits::containsKey)
                .map(kits::get)
                .toList();
    }

    private void plan(Map<Job, List<OrderBook.Order>> floors, int threads, int before, int all) {
        int done = before;
        this.floors = floors.size();
        try (PlanService service = new PlanService(threads)) {
            Map<Job, Running<KitPlan>> running = new LinkedHashMap<>();
            floors.forEach((floor, same) ->
                    running.put(floor, service.plan(same.get(0).job(), new Work(Progress.SILENT, 1, new Counting()))));
            for (Map.Entry<Job, List<OrderBook.Order>> floor : floors.entrySet()) {
                Running<KitPlan> plan = running.remove(floor.getKey());
                for (OrderBook.Order order : floor.getValue()) {
                    one(order, plan);
                    listener.done(order.number(), ++done, all);
                }
            }
        }
    }

    private void one(OrderBook.Order order, Running<KitPlan> running) {
        try {
            KitPlan plan = running.get().forOrder(order.job());
            List<Finding> wrong = KitVerifier.verify(plan);
            if (!wrong.isEmpty()) {
                throw new IllegalStateException(order.number() + ": " + wrong.get(0));
            }
            Path kit = folder.resolve(order.folder());
            OutputFolder out = new OutputFolder(kit);
            out.checkOurs();
            out.write(KitFiles.of(
                    plan,
                    Optional.empty(),
                    Optional.empty(),
                    FORM,
                    new KitFiles.PaperWish(papers, Optional.empty()),
                    Map.of()));
            take(order.kitIn(folder)
                    .orElseThrow(() -> new IllegalStateException(kit + " was written and cannot be read")));
        } catch (Unbuildable e) {
            faults.add(KeyPlace.fault(order.file(), e.key(), e.lines().get(0)).text());
        }
    }

    private void take(DayKit kit) {
        if (kit.failed().isEmpty()) {
            kits.put(kit.order(), kit);
        } else {
            faults.add("order " + kit.order() + ": DO NOT CUT, its plan failed " + String.join(", ", kit.failed())
                    + "; it is left out");
        }
    }
}
