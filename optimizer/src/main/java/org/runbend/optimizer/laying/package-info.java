/** Lays the loops of a job: from floor and wishes to loops on a lattice and to pipe from hole to hole. */
package org.runbend.optimizer.laying;
