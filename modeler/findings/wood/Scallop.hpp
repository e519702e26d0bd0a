#pragma once

/// What a cutter leaves on the playing surface between two passes along the board. Lengths in mm.

namespace sagitta {

/// Height of the ridges that a ball of this radius leaves at a stepover: r - sqrt(r^2 - (s/2)^2).
double ball_ridge(double radius, double step);
/// The stepover that leaves ridges of this height: 2 sqrt(r^2 - (r - h)^2).
double ball_step(double radius, double ridge);
/// The ball that cuts a plane as this ball cuts a surface that bulges with radius R: 1/(1/r + 1/R).
double ball_on_crown(double radius, double surface_radius);

/// Height of the stairs that a flat cutter leaves on a surface of radius R, at the distance y from its crown, where a
/// pass begins s nearer to the crown than the next: what the surface drops over the last step.
double flat_stair(double surface_radius, double y, double step);
/// The stepover that leaves stairs of this height there.
double flat_step(double surface_radius, double y, double stair);

}  // namespace sagitta
