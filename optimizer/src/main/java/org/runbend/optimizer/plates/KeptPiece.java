package org.runbend.optimizer.plates;

import org.runbend.catalog.shelf.Remnant;

/**
 * A piece that was cut for an earlier plan and may stay where it lay.
 *
 * @param piece in its place on the loops as they are now
 * @param stock the piece as it lies on the shelf
 */
public record KeptPiece(PlatePiece piece, Remnant stock) {}
