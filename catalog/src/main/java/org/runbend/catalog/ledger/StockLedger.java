package org.runbend.catalog.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BiConsumer;
import java.util.function.Function;

/**
 * The stock ledger. Each call is one movement in one transaction, or nothing: a {@link LedgerRefused} says in one line why.
 * A request whose id came before changes nothing; with other content it is refused.
 */
public final class StockLedger {
    private final LedgerStore store;
    private final InstantSource clock;

    /** A ledger kept in a store; the clock tells when movements were made, and nothing else. */
    public StockLedger(LedgerStore store, InstantSource clock) {
        this.store = store;
        this.clock = clock;
    }

    /** Goods came. */
    public Outcome receive(Request request, List<Received> delivery) {
        return move(request, MovementKind.RECEIVE, "", delivery, (p, o) -> Counting.receive(p, delivery));
    }

    /** A stock-take: what was counted is true, and the difference is a movement. */
    public Outcome count(Request request, List<Counted> take) {
        return move(request, MovementKind.COUNT, "", take, (p, o) -> Counting.count(p, take));
    }

    /** An order was quoted. */
    public Outcome quote(Request request, String order, String fingerprint) {
        Entry.text("fingerprint", fingerprint, false);
        return move(request, MovementKind.QUOTE, order, fingerprint, (p, o) -> Orders.quote(p, o, fingerprint));
    }

    /** Keeps what a plan needs for its order; what was kept for it before is given back. Once for each plan. */
    public Outcome reserve(Request request, KitUse use) {
        return move(request, MovementKind.RESERVE, use.order(), use, (p, o) -> Orders.reserve(p, o, use));
    }

    /** Gives back what is kept for an order. */
    public Outcome release(Request request, String order) {
        return move(request, MovementKind.RELEASE, order, "", Orders::release);
    }

    /**
     * An order was cut by its plan: what was cut is gone, what is left and long enough is back with an id. Once for each plan;
     * under the fingerprint of a changed plan what was cut before is used again or comes back.
     */
    public Outcome confirm(Request request, KitUse use) {
        return move(request, MovementKind.CONFIRM, use.order(), use, (p, o) -> Orders.confirm(p, o, use));
    }

    /** Pieces were cut wrong and cut again from something else; what that is, is no part of what was asked. */
    public Outcome spoil(Request request, Spoiled spoiled) {
        List<Object> asked = List.of(spoiled.cuts(), spoiled.rests(), spoiled.keeping());
        return move(request, MovementKind.SPOIL, spoiled.order(), asked, (p, o) -> Orders.spoil(p, o, spoiled));
    }

    /** Whether a request came before. */
    public boolean hasSeen(Request request) {
        return store.look(books -> books.findRequest(request.id()).isPresent());
    }

    /** What an order got came back: its pieces have new ids, its items are on the shelf. */
    public Outcome takeBack(Request request, String order, Keeping keeping) {
        return move(request, MovementKind.RETURN, order, keeping, (p, o) -> Orders.takeBack(p, o, keeping));
    }

    /** An order is in its box. */
    public Outcome pack(Request request, String order) {
        return move(request, MovementKind.PACK, order, "", Orders::pack);
    }

    /** An order is on its way. */
    public Outcome send(Request request, String order) {
        return move(request, MovementKind.SEND, order, "", Orders::send);
    }

    /** Sets when a product is to be ordered anew. */
    public Outcome reorderPoint(Request request, ReorderPoint point) {
        return move(request, MovementKind.POINT, "", point, (p, o) -> p.books().reorderPoint(p.movement(), point));
    }

    /** Takes a movement back as if it had never been; refused where a later one needs it. */
    public Outcome undo(Request request, long number) {
        String hash = hash(MovementKind.UNDO, "", number);
        return run(request, MovementKind.UNDO, hash, books -> {
            Movement wrong =
                    books.findMovement(number).orElseThrow(() -> new LedgerRefused("there is no movement " + number));
            if (wrong.undoneBy().isPresent()) {
                throw new LedgerRefused(wrong.words() + " was undone by movement "
                        + wrong.undoneBy().getAsLong() + " already");
            }
            if (wrong.kind() == MovementKind.UNDO) {
                throw new LedgerRefused(wrong.words() + " takes another back: do that one anew instead");
            }
            Posting posting = begin(books, request, MovementKind.UNDO, wrong.order(), hash, OptionalLong.of(number));
            Undoing.undo(posting, wrong);
            return made(posting);
        });
    }

    /** Looks at the books as they are at one moment. */
    public <T> T look(Function<Books, T> work) {
        return store.look(work);
    }

    private Outcome move(
            Request request, MovementKind kind, String order, Object content, BiConsumer<Posting, OrderRecord> work) {
        if (kind != MovementKind.RECEIVE && kind != MovementKind.COUNT && kind != MovementKind.POINT) {
            Entry.text("order", order, false);
        }
        String hash = hash(kind, order, content);
        return run(request, kind, hash, books -> {
            Optional<Movement> same =
                    content instanceof KitUse use ? samePlan(books, kind, use, hash) : Optional.empty();
            return same.map(m -> done(books, m)).orElseGet(() -> {
                OrderRecord now = order.isEmpty() ? OrderRecord.unknown("") : books.order(order);
                Posting posting = begin(books, request, kind, order, hash, OptionalLong.empty());
                work.accept(posting, now);
                return made(posting);
            });
        });
    }

    private Outcome run(Request request, MovementKind kind, String hash, Function<Books, Outcome> work) {
        try {
            return store.change(books -> {
                Optional<Movement> before = books.findRequest(request.id());
                before.ifPresent(m -> checkSame(request, m, kind, hash));
                return before.map(m -> done(books, m)).orElseGet(() -> work.apply(books));
            });
        } catch (LedgerStore.CommitLost lost) {
            return afterLoss(request, lost);
        }
    }

    private static void checkSame(Request request, Movement before, MovementKind kind, String hash) {
        if (before.kind() != kind || !before.content().equals(hash)) {
            throw new LedgerRefused("request " + request.id() + " came before as " + before.words()
                    + " with other content: nothing was changed; give each request an id of its own");
        }
    }

    /**
     * The line broke at the end: the books know whether the request came through. Looked at as a change is made, which waits for what
     * the broken line may still be doing.
     */
    private Outcome afterLoss(Request request, LedgerStore.CommitLost lost) {
        Optional<Outcome> found = store.change(books ->
                books.findRequest(request.id()).map(m -> new Outcome(m, true, books.madeBy(m.number()), List.of())));
        return found.orElseThrow(
                () -> new LedgerRefused("the line to the ledger broke and nothing was changed: try again", lost));
    }

    private static Outcome made(Posting posting) {
        Movement made = posting.books().findMovement(posting.movement()).orElseThrow();
        return new Outcome(made, true, posting.books().madeBy(made.number()), posting.notes());
    }

    private static Outcome done(Books books, Movement before) {
        return new Outcome(
                before,
                false,
                books.madeBy(before.number()),
                List.of("done before as " + before.words() + ", nothing was changed"));
    }

    /** An order is reserved, and cut, once for each plan. */
    private static Optional<Movement> samePlan(Books books, MovementKind kind, KitUse use, String hash) {
        OrderRecord now = books.order(use.order());
        boolean reached = kind == MovementKind.RESERVE
                ? now.state() == OrderState.CONFIRMED
                : now.state().isCut();
        if (!reached || !now.fingerprint().equals(use.fingerprint())) {
            return Optional.empty();
        }
        Optional<Movement> before = books.lastOfOrder(use.order(), Optional.of(kind));
        before.filter(m -> !m.content().equals(hash)).ifPresent(m -> {
            throw new LedgerRefused(
                    "order " + use.order() + " is " + now.state().word() + " by " + m.words()
                            + " under the same fingerprint, but the plan takes other stock: plan it anew");
        });
        return before;
    }

    private Posting begin(
            Books books, Request request, MovementKind kind, String order, String content, OptionalLong undoes) {
        Movement head = new Movement(
                0,
                kind,
                order,
                request.why(),
                request.who(),
                clock.instant().truncatedTo(ChronoUnit.SECONDS).toString(),
                request.id(),
                content,
                undoes,
                OptionalLong.empty());
        return new Posting(books, books.begin(head), order);
    }

    private static String hash(MovementKind kind, String order, Object content) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String text = kind.word() + "\n" + order + "\n" + content;
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
