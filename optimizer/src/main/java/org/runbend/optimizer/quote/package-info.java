/** What a customer is asked for a plan: a quotation by the workshop's terms, and whether a standard kit would be cheaper. */
package org.runbend.optimizer.quote;
