/** Linear and integer programs as plain records, and the solver behind them. Native objects never leave the call that made them. */
package org.runbend.optimizer.mip;
