/** What other programs read: the kit as JSON, the cuts as CSV, and the names that all papers use for runs and stock. */
package org.runbend.export.data;
