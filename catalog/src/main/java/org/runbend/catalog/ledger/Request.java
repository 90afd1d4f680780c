package org.runbend.catalog.ledger;

/**
 * Who asks, and by which id: the same id again changes nothing.
 *
 * @param id of this request alone
 * @param who asks
 * @param why in a few words; empty if nothing is to be said
 */
public record Request(String id, String who, String why) {
    /** Checks the texts. */
    public Request {
        Entry.text("request id", id, false);
        Entry.text("who", who, false);
        Entry.text("why", why, true);
    }
}
