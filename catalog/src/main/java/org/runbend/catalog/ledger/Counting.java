package org.runbend.catalog.ledger;

import java.util.List;
import java.util.Optional;

/** Deliveries and stock-takes. */
final class Counting {
    private Counting() {}

    static void receive(Posting posting, List<Received> delivery) {
        Entry.that(!delivery.isEmpty(), "nothing is received");
        for (Received r : delivery) {
            Received.Thing thing = r.spec();
            if (!thing.kind().isPiece()) {
                posting.move(lot(posting, thing.withId("")), r.amount(), 0);
            } else if (thing.id().isPresent()) {
                String id = thing.id().get();
                posting.books().findPiece(id).ifPresent(p -> {
                    throw new LedgerRefused("id " + id + " was given before, to "
                            + p.spec().words() + (p.amount() > 0 ? ", which is on the shelf" : ", which is gone")
                            + ": give it another");
                });
                Entry.that(!id.startsWith("was-"), "ids that begin with was- are for pieces that were cut before");
                Entry.that(!id.startsWith("whole "), "ids that begin with 'whole ' are for unopened coils");
                posting.bring(thing.withId(id), r.amount(), r.uncertainty());
            } else {
                posting.bring(thing.kind(), thing.product(), thing.batch(), thing.label(), r.amount(), r.uncertainty());
            }
        }
    }

    private static Holding lot(Posting posting, Holding.Spec spec) {
        return posting.books().ofProduct(spec.kind(), spec.product()).stream()
                .filter(h -> h.spec().equals(spec))
                .findFirst()
                .orElseGet(() -> posting.books().holding(posting.books().create(spec, posting.movement())));
    }

    static void count(Posting posting, List<Counted> take) {
        Entry.that(!take.isEmpty(), "nothing was counted");
        Entry.that(
                take.stream().map(c -> c.id() + c.lot()).distinct().count() == take.size(),
                "something was counted twice in one stock-take");
        for (Counted c : take) {
            Holding holding = c.lot().map(spec -> lot(posting, spec)).orElseGet(() -> piece(posting, c.id()));
            makeRoom(posting, holding, c.amount());
            long doubt = holding.kind().isPiece() ? MetreMarks.uncertainty(holding.kind(), c.amount()) : 0;
            posting.move(holding, c.amount() - holding.amount(), doubt - holding.uncertainty());
            if (c.amount() != holding.amount()) {
                posting.note(holding.spec().words() + ": " + Held.amount(holding.kind(), holding.amount())
                        + " in the ledger, " + Held.amount(holding.kind(), c.amount()) + " counted");
            }
        }
    }

    private static Holding piece(Posting posting, String id) {
        Optional<Holding> piece = posting.books().findPiece(id);
        return piece.orElseThrow(() -> new LedgerRefused("no piece " + id + " was ever on the shelf: receive it"));
    }

    /** What is there counts: orders it no longer suffices for lose their reservations, the last first. */
    private static void makeRoom(Posting posting, Holding holding, long amount) {
        while (posting.books().holding(holding.key()).reserved() > amount) {
            String order = posting.books().holdersOf(holding.key()).get(0);
            Days.lose(posting, order);
            posting.note("order " + order + " has lost its reservation, as "
                    + holding.spec().words() + " no longer suffices: plan it anew and reserve");
        }
    }
}
