package org.runbend.export.fuzz;

import java.util.Map;

/**
 * A generated job.
 *
 * @param tree its keys; a value is a text as it stands in the file, a list or a mapping
 * @param drawn whether it brings its own loop, which need not keep to lattice, spacing and port as ours do
 * @param facts what it asked for
 */
record MadeJob(Map<String, Object> tree, boolean drawn, FloorFacts facts) {}
