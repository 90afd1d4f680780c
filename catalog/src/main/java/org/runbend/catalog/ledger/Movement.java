package org.runbend.catalog.ledger;

import java.util.OptionalLong;

/**
 * The head of a movement.
 *
 * @param number from 1, without a gap
 * @param kind why stock moved
 * @param order for which order; empty if for none
 * @param why in the words of who did it
 * @param who did it
 * @param at when, UTC, as ISO 8601 writes it
 * @param request id of the request
 * @param content SHA-256 of what was asked, hexadecimal
 * @param undoes the movement that it takes back
 * @param undoneBy the movement that took it back
 */
public record Movement(
        long number,
        MovementKind kind,
        String order,
        String why,
        String who,
        String at,
        String request,
        String content,
        OptionalLong undoes,
        OptionalLong undoneBy) {
    /** Whether it still counts for what comes after: it was not taken back and takes nothing back. */
    public boolean isLive() {
        return undoes.isEmpty() && undoneBy.isEmpty();
    }

    /** As messages name it. */
    public String words() {
        return "movement " + number + " (" + kind.word() + (order.isEmpty() ? "" : " " + order) + ")";
    }
}
