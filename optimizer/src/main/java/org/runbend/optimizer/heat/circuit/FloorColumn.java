package org.runbend.optimizer.heat.circuit;

import java.util.Arrays;

/**
 * Explicit finite differences through a plated floor (textbook): plates, six cells of cover, six of foam. Steps never exceed what is
 * stable: half the least heat capacity over its conductances. What would settle faster than {@link #QUICK} seconds holds as much
 * more heat as makes it settle in that time; only floors of bare metal or of no thickness have such cells.
 */
final class FloorColumn {
    private static final int CELLS = 6;
    private static final double SAFE = 0.5;
    /** Seconds. */
    static final double QUICK = 0.5;

    private final FloorMass mass;
    private final double plateHeat;
    private final double coverHeat;
    private final double foamHeat;
    private final double[] cover = new double[CELLS];
    private final double[] foam = new double[CELLS];
    private final double coupling;
    private final double coverStep;
    private final double foamStep;
    private final double toRoom;
    private final double toOutside;
    private double plate;

    /** With a coupling of plates and coolant in W/(m2 K). */
    FloorColumn(FloorMass mass, double coupling, double start) {
        this.mass = mass;
        this.coupling = coupling;
        plate = start;
        Arrays.fill(cover, start);
        Arrays.fill(foam, start);
        coverStep = mass.stack().coverConductivity() / (mass.coverDepth() / CELLS);
        foamStep = mass.stack().foamConductivity() / (mass.foamDepth() / CELLS);
        toRoom = 1 / (0.5 / coverStep + mass.stack().finish() + 1 / mass.stack().surface());
        toOutside = 1 / (0.5 / foamStep + mass.stack().outer());
        plateHeat = Math.max(mass.plate(), QUICK / SAFE * (coupling + 2 * coverStep + 2 * foamStep));
        coverHeat = Math.max(
                mass.cover() * mass.coverDepth() / CELLS, QUICK / SAFE * (coverStep + Math.max(2 * coverStep, toRoom)));
        foamHeat = Math.max(
                mass.foam() * mass.foamDepth() / CELLS, QUICK / SAFE * (foamStep + Math.max(2 * foamStep, toOutside)));
    }

    /** Longest stable step, s. */
    double longestStep() {
        return SAFE
                * Math.min(
                        plateHeat / (coupling + 2 * coverStep + 2 * foamStep),
                        Math.min(
                                coverHeat / (coverStep + Math.max(2 * coverStep, toRoom)),
                                foamHeat / (foamStep + Math.max(2 * foamStep, toOutside))));
    }

    /** One step, with coolant on its way through the floor or not. Returns what the coolant gave, W/m2. */
    double step(double seconds, double coolant, boolean flows, double room, double outside) {
        double taken = flows ? coupling * (coolant - plate) : 0;
        double up = 2 * coverStep * (plate - cover[0]);
        double down = 2 * foamStep * (plate - foam[0]);
        plate += seconds / plateHeat * (taken - up - down);
        walk(cover, up, coverStep, toRoom, room, seconds / coverHeat);
        walk(foam, down, foamStep, toOutside, outside, seconds / foamHeat);
        return taken;
    }

    private static void walk(double[] t, double in, double between, double end, double beyond, double factor) {
        double from = in;
        for (int i = 0; i < CELLS; i++) {
            double on = i + 1 < CELLS ? between * (t[i] - t[i + 1]) : end * (t[i] - beyond);
            t[i] += factor * (from - on);
            from = on;
        }
    }

    double plate() {
        return plate;
    }

    /** Surface of the floor, degrees C. */
    double surface(double room) {
        return room + toRoom * (cover[CELLS - 1] - room) / mass.stack().surface();
    }
}
