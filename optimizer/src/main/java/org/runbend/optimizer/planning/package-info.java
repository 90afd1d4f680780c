/** Puts the steps together: from a job to one immutable kit plan, verified before it leaves. */
package org.runbend.optimizer.planning;
