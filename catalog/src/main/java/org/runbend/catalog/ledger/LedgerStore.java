package org.runbend.catalog.ledger;

import java.util.function.Function;

/** Where the ledger is kept. */
public interface LedgerStore extends AutoCloseable {
    /**
     * Does some work in one transaction that nobody else's comes between. It may be done over when another's came between, so it
     * must do nothing but with the books.
     *
     * @throws LedgerRefused if the store cannot be used; nothing was changed
     * @throws CommitLost if nobody knows whether it was done
     */
    <T> T change(Function<Books, T> work);

    /** Looks at the books as they are at one moment. */
    <T> T look(Function<Books, T> work);

    @Override
    void close();

    /** The line broke while the work was being made lasting. */
    final class CommitLost extends RuntimeException {
        /** With what broke it. */
        public CommitLost(Throwable cause) {
            super("the line broke at the end of a change", cause);
        }
    }
}
