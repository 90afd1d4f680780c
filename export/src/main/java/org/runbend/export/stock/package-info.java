/** {@code runbend stock}: the ledger on the command line. Commands are thin: they read, call, and print. */
package org.runbend.export.stock;
