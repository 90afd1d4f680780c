/** Benches, run by hand from the command line; nothing here is part of a test. */
package org.runbend.export.bench;
