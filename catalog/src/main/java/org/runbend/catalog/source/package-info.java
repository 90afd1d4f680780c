/** Reads YAML files strictly: every value knows its place, and what is wrong is said with file, line and column. Knows no product. */
package org.runbend.catalog.source;
