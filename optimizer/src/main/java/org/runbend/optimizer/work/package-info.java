/** What long work runs under: who hears how far it is, how many threads it may use, and how it is ended from outside. */
package org.runbend.optimizer.work;
