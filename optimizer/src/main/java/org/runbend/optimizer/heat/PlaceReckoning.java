package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FloorZone;
import org.runbend.optimizer.heat.output.StripOutput;

/**
 * What a place of the lattice gives by what the pipe does in it: fin method for pipe in a plate, shape factor for pipe without,
 * the cover as a fin for floor beside it (the classes of {@code heat.output} name the sources). Perfect contact, no film: figures to compare
 * loops by, not what a floor gives.
 */
public final class PlaceReckoning {
    /** The heat of a place. */
    public PlaceHeat solve(PlaceProblem p) {
        StripMethods methods = new StripMethods(p.build());
        StripOutput bare =
                methods.output(PipeStrip.bare(FloorZone.Kind.GROOVE, p.spacing(), p.spacing()), Contact.IDEAL);
        Optional<StripOutput> plated = p.plated().map(strip -> methods.output(strip, Contact.IDEAL));
        double square = p.spacing() * p.spacing() * 1e-6;
        double covered = plated.isPresent() ? p.coverage() : 0;
        double inPlate = plated.map(s -> upward(s, p)).orElse(0.0);
        double without = upward(bare, p);
        double straight = covered * inPlate + (1 - covered) * without;
        double edge = covered * plated.map(s -> s.plane() * s.least()).orElse(0.0)
                + (1 - covered) * bare.plane() * bare.least();
        double empty = upward(
                methods.spill(new BareFloor(FloorZone.Kind.BARE, square, p.spacing() * 1e-3), Math.min(1, edge)), p);
        double arc = Math.max(0, 1 - (2 - Math.PI / 2) * p.radius() / p.spacing());
        return new PlaceHeat(
                square * straight,
                square * without,
                square * (arc * without + (1 - arc) * empty),
                square * empty,
                p.clearance() * p.spacing() * 1e-6 * covered * (inPlate - without));
    }

    private static double upward(StripOutput strip, PlaceProblem p) {
        return strip.upward(p.coolant(), p.room(), p.outside());
    }
}
