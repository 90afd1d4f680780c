package org.runbend.export.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.catalog.ledger.Keeping;
import org.runbend.catalog.ledger.OrderRecord;
import org.runbend.catalog.source.BadInput;
import org.runbend.export.data.KitUses;

/** Kits and days that lie in folders of the start folder; each is read once for as long as it does not change. */
final class KitsAtHand {
    private static final int DEEPEST = 2;
    private static final int MOST = 2000;
    private static final int NAMES = 99;
    /** How the ledger marks a day of which only what lies on the shelf is kept. */
    private static final String SHELF_ALONE = "/shelf";

    private final Path folder;
    private final Keeping keeping;
    private final Map<Path, Seen> seen = new HashMap<>();

    private record Seen(FileTime when, Optional<KitUses> uses) {}

    /**
     * A kit that an order can be cut by.
     *
     * @param folder its folder
     * @param uses what it takes
     */
    record Kit(Path folder, KitUses uses) {}

    KitsAtHand(Path folder, Keeping keeping) {
        this.folder = folder;
        this.keeping = keeping;
    }

    /** The kit of the plan that the ledger has of an order. */
    Optional<Kit> of(OrderRecord order) {
        String fingerprint = order.fingerprint().replace(SHELF_ALONE, "");
        return all().stream()
                .filter(k -> k.uses().use().order().equals(order.order())
                        && k.uses().use().fingerprint().equals(fingerprint))
                .findFirst();
    }

    /** The kit that an order was cut by: its own, or the day's. */
    Optional<Kit> cutBy(OrderRecord order) {
        return of(order).or(() -> all().stream()
                .filter(k -> order.fingerprint().equals(k.uses().use().orders().get(order.order())))
                .findFirst());
    }

    /** Whether the ledger keeps for a day only what lay on the shelf. */
    static boolean isShelfAlone(OrderRecord order) {
        return order.fingerprint().endsWith(SHELF_ALONE);
    }

    /** Where the kit of an order is put: the folder that has one of it, or a new one. */
    Path place(String order) {
        String plain = order.replaceAll("[^A-Za-z0-9._-]+", "_");
        for (int i = 1; i <= NAMES; i++) {
            Path place = folder.resolve("kit-" + plain + (i == 1 ? "" : "-" + i));
            Path file = place.resolve("kit.json");
            boolean own = read(file).filter(u -> u.use().order().equals(order)).isPresent();
            if (own || !Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
                return place;
            }
        }
        throw new Refused(409, "no folder is free for the kit of order " + order);
    }

    private synchronized List<Kit> all() {
        List<Kit> kits = new ArrayList<>();
        for (Path file : files()) {
            read(file).ifPresent(uses -> kits.add(new Kit(file.getParent(), uses)));
        }
        return kits;
    }

    private List<Path> files() {
        try (Stream<Path> all = Files.find(
                folder,
                DEEPEST,
                (p, a) -> a.isRegularFile() && p.getFileName().toString().matches("(?:kit|day)\\.json"))) {
            return all.sorted().limit(MOST).toList();
        } catch (IOException | UncheckedIOException e) {
            return List.of(); // a folder that nobody may read hides the others
        }
    }

    private synchronized Optional<KitUses> read(Path file) {
        try {
            FileTime when = Files.getLastModifiedTime(file);
            Seen before = seen.get(file);
            if (before != null && before.when().equals(when)) {
                return before.uses();
            }
            Seen now = new Seen(when, uses(file));
            seen.put(file, now);
            return now.uses();
        } catch (IOException e) {
            seen.remove(file);
            return Optional.empty();
        }
    }

    private Optional<KitUses> uses(Path file) {
        try {
            return Optional.of(KitUses.read(file, keeping));
        } catch (BadInput e) {
            return Optional.empty(); // another's file of that name
        }
    }
}
