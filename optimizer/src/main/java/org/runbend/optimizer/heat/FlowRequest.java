package org.runbend.optimizer.heat;

import org.runbend.optimizer.heat.flow.PumpCurve;
import org.runbend.optimizer.heat.quantity.Within;

/** What sets the flow. */
public sealed interface FlowRequest {
    /** A pump with its curve. */
    record ByPump(PumpCurve curve) implements FlowRequest {}

    /** A flow through all loops together, l/min. */
    record ByVolume(double flow) implements FlowRequest {
        /** Checks the flow; 0 is a pump that stands. */
        public ByVolume {
            Within.range("flow", flow, 0, 1000, "l/min");
        }
    }

    /** A drop of temperature along each loop, K. */
    record BySpread(double kelvin) implements FlowRequest {
        /** 5 K keep a floor even (common practice). */
        public static final BySpread USUAL = new BySpread(5);

        /** Checks the drop. */
        public BySpread {
            Within.range("spread", kelvin, 0.1, 60, "K");
        }
    }
}
