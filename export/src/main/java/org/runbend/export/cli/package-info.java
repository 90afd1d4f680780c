/** The command line: parses, calls, prints, returns a code. No rule of the trade lives here. */
package org.runbend.export.cli;
