package org.runbend.export.fuzz;

import java.util.List;

/**
 * What a case came to.
 *
 * @param number of the case
 * @param what how it was made
 * @param code exit code; -1 if it never ended
 * @param millis processor time
 * @param heap highest use of the heap, bytes, with what was not yet collected
 * @param faults what is wrong with it; empty if nothing is
 */
record CaseResult(long number, String what, int code, long millis, long heap, List<String> faults) {
    CaseResult {
        faults = List.copyOf(faults);
    }
}
