/** The one door to planning, for commands, benches and whoever else asks: work begins, is waited for, or is cancelled. */
package org.runbend.optimizer.service;
