package org.runbend.optimizer.heat.circuit;

import org.runbend.optimizer.heat.quantity.Within;

/** What warms the coolant. */
public sealed interface HeatSource {
    /** Highest temperature it can bring the coolant to, degrees C. */
    double highest();

    /** The same source with something that holds the coolant it sends to a temperature, degrees C. */
    default HeatSource heldTo(double celsius) {
        return this;
    }

    /** Whether its heat can reach the floor at all. */
    default boolean reachesFloor() {
        return true;
    }

    /**
     * A heater of the circuit's own that holds its outlet at a setting.
     *
     * @param least power it can go down to without stopping, W
     * @param most power, W
     * @param setting degrees C
     * @param band how far under the setting it starts again, K
     */
    record Heater(double least, double most, double setting, double band) implements HeatSource {
        /** Checks ranges. */
        public Heater {
            Within.range("greatest power of the heater", most, 1, 1e6, "W");
            Within.range("least power of the heater", least, 0, most, "W");
            Within.range("setting of the heater", setting, 0, 150, "degrees C");
            Within.range("band of the heater", band, 0.1, 60, "K");
        }

        @Override
        public double highest() {
            return setting;
        }

        @Override
        public HeatSource heldTo(double celsius) {
            return new Heater(least, most, Math.min(setting, Math.max(0, celsius)), band);
        }
    }

    /**
     * Engine coolant by an exchanger; it runs at 82 to 105 degrees C (from memory).
     *
     * @param transfer of the exchanger, W/K
     * @param engine temperature of the engine's coolant, degrees C
     * @param limit at which a limiter shuts it off, degrees C; infinite without one
     */
    record EngineExchanger(double transfer, double engine, double limit) implements HeatSource {
        /** Highest that an engine's thermostat and cap allow (from memory), degrees C. */
        public static final double HOTTEST = 105;

        /** Checks ranges. */
        public EngineExchanger {
            Within.range("transfer of the exchanger", transfer, 0.1, 1e5, "W/K");
            Within.range("engine coolant", engine, -60, 130, "degrees C");
            Within.range("limiter of the exchanger", limit, -60, Double.POSITIVE_INFINITY, "degrees C");
        }

        /** An exchanger without a limiter. */
        public EngineExchanger(double transfer, double engine) {
            this(transfer, engine, Double.POSITIVE_INFINITY);
        }

        @Override
        public double highest() {
            return Math.min(limit, Math.max(engine, HOTTEST));
        }

        @Override
        public HeatSource heldTo(double celsius) {
            return new EngineExchanger(transfer, engine, Math.min(limit, celsius));
        }
    }

    /**
     * A mains element in the cylinder; it warms water alone, never the floor.
     *
     * @param power 1 to 2 kW as a rule, W
     * @param setting degrees C
     */
    record MainsElement(double power, double setting) implements HeatSource {
        /** Checks ranges. */
        public MainsElement {
            Within.range("power of the element", power, 1, 1e5, "W");
            Within.range("setting of the element", setting, 0, 95, "degrees C");
        }

        @Override
        public double highest() {
            return setting;
        }

        @Override
        public boolean reachesFloor() {
            return false;
        }
    }
}
