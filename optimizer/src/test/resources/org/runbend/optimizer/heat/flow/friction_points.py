# Reads "reynolds roughness bore radius angle" a line and prints, by the library fluids: Churchill's friction factor, White's
# laminar one in a bend, Schmidt's critical Reynolds number, Rennels's loss of the bend with Churchill's factor.
import sys

from fluids.fittings import bend_rounded
from fluids.friction import Churchill_1977, helical_laminar_fd_White, helical_transition_Re_Schmidt

for line in open(sys.argv[1]):
    reynolds, roughness, bore, radius, angle = map(float, line.split())
    friction = Churchill_1977(reynolds, roughness)
    values = [
        friction,
        helical_laminar_fd_White(reynolds, bore, 2 * radius),
        helical_transition_Re_Schmidt(bore, 2 * radius),
        bend_rounded(Di=bore, angle=angle, fd=friction, rc=radius, Re=reynolds, method="Rennels"),
    ]
    print(" ".join("%.12g" % v for v in values))
