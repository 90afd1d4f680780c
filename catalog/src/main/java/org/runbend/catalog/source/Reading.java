package org.runbend.catalog.source;

/**
 * What all values of one file share.
 *
 * @param file name for messages
 * @param faults where faults are noted
 * @param unit unit of lengths without one
 */
record Reading(String file, Faults faults, Unit unit) {}
