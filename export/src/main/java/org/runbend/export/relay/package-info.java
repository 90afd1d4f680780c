/** Floors of a day handed to whoever has time to lay them, over the database of the shelf. */
package org.runbend.export.relay;
