package org.runbend.optimizer.heat.circuit;

import java.util.Arrays;

/**
 * Explicit finite differences through a plated floor (textbook): plates, six cells of cover, six of foam. Steps never exceed what is
 * stable: half the least heat capacity over its conductances.
 */
final class FloorColumn {
    private static final int CELLS = 6;
    private static final double SAFE = 0.5;

    private final FloorMass mass;
    private final double[] cover = new double[CELLS];
    private final double[] foam = new double[CELLS];
    private final double coverStep;
    private final double foamStep;
    private final double toRoom;
    private final double toOutside;
    private double plate;

    FloorColumn(FloorMass mass, double start) {
        this.mass = mass;
        plate = start;
        Arrays.fill(cover, start);
        Arrays.fill(foam, start);
        coverStep = mass.stack().coverConductivity() / (mass.coverDepth() / CELLS);
        foamStep = mass.stack().foamConductivity() / (mass.foamDepth() / CELLS);
        toRoom = 1 / (0.5 / coverStep + mass.stack().finish() + 1 / mass.stack().surface());
        toOutside = 1 / (0.5 / foamStep + mass.stack().outer());
    }

    /** Longest stable step, s, with a coupling to the coolant in W/(m2 K). */
    double longestStep(double coupling) {
        double atPlate = mass.plate() / (coupling + 2 * coverStep + 2 * foamStep);
        double inCover = mass.cover() * mass.coverDepth() / CELLS / (3 * coverStep);
        double inFoam = mass.foam() * mass.foamDepth() / CELLS / (3 * foamStep);
        return SAFE * Math.min(atPlate, Math.min(inCover, inFoam));
    }

    /** One step with a coupling to the coolant in W/(m2 K). Returns what the coolant gave, W/m2. */
    double step(double seconds, double coolant, double coupling, double room, double outside) {
        double taken = coupling * (coolant - plate);
        double up = 2 * coverStep * (plate - cover[0]);
        double down = 2 * foamStep * (plate - foam[0]);
        plate += seconds / mass.plate() * (taken - up - down);
        walk(cover, up, coverStep, toRoom, room, seconds / (mass.cover() * mass.coverDepth() / CELLS));
        walk(foam, down, foamStep, toOutside, outside, seconds / (mass.foam() * mass.foamDepth() / CELLS));
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
