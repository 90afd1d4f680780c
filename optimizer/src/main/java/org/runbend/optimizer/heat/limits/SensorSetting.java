package org.runbend.optimizer.heat.limits;

import org.runbend.optimizer.heat.output.Stack;

/**
 * How high a floor sensor may be set. It lies under a plate and feels the plates, which are nearly even; from them to the room heat
 * passes cover, finish and surface one after the other, so in the steady state the floor's top lies over the room by Uu / alpha of
 * what the plates do (EN ISO 6946's resistances in a row).
 */
public final class SensorSetting {
    /** Between on and off where nobody says otherwise, K (common practice: 2 to 3). */
    public static final double USUAL_HYSTERESIS = 2.5;

    private final Stack stack;
    private final double room;

    /** For a floor and a room in degrees C. */
    public SensorSetting(Stack stack, double room) {
        this.stack = stack;
        this.room = room;
    }

    /** Top of the floor over the plates for a temperature of the plates, both degrees C. */
    public double top(double plates) {
        return room + (plates - room) * stack.up() / stack.surface();
    }

    /**
     * Highest setting at which neither the hottest place of the top nor the cover's underside passes its limit when the valve closes, half
     * the hysteresis over the setting. All in degrees C and K, the setting rounded down to a tenth.
     *
     * @param peak hottest excess of the top over the room, against the mean one
     */
    public double highest(double topLimit, double peak, double undersideLimit, double hysteresis) {
        double plates = room + (topLimit - room) / peak * stack.surface() / stack.up();
        return Down.tenth(Math.min(plates, undersideLimit) - hysteresis / 2);
    }
}
