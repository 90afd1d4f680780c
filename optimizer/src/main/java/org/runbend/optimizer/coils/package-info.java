/** Pipe from coils: which coils are bought or opened, and which loop is cut from which. */
package org.runbend.optimizer.coils;
