package org.runbend.export.fuzz;

import java.util.Map;

/**
 * A generated job.
 *
 * @param tree its keys; a value is a text as it stands in the file, a list or a mapping
 * @param facts what it asked for
 */
record MadeJob(Map<String, Object> tree, FloorFacts facts) {}
