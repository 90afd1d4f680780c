/** Stretches to be covered by pieces whose lengths are free: lengths and cuts are one problem; in any lengths or in few. */
package org.runbend.optimizer.cutting.cover;
