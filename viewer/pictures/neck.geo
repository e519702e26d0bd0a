// A neck for heron-six: a bar with rounded back, headstock and heel, its glue face at z = 0. Lengths in mm.
SetFactory("OpenCASCADE");
n = 0;
For k In {0:3}
  x = {-8, 120, 300, 462};
  deep = 15 + k;
  half = (35.5 + (52 - 35.5) * x(k) / 648) / 2 + 3.5;  // the outer strings and the margin beside them
  low = half + 0.25 - 0.35 * k / 3;                     // stands out at the nut, lies in at the heel
  Point(n + 1) = {x(k), -low, 0};
  Point(n + 2) = {x(k), half + 0.2 * k / 3, 0};
  Point(n + 3) = {x(k), half + 0.2 * k / 3, -3};
  Point(n + 4) = {x(k), half * 0.7, -deep * 0.75};
  Point(n + 5) = {x(k), 0, -deep};
  Point(n + 6) = {x(k), -low * 0.7, -deep * 0.75};
  Point(n + 7) = {x(k), -low, -3};
  Line(n + 1) = {n + 1, n + 2};
  Line(n + 2) = {n + 2, n + 3};
  Spline(n + 3) = {n + 3, n + 4, n + 5, n + 6, n + 7};
  Line(n + 4) = {n + 7, n + 1};
  Curve Loop(k + 1) = {n + 1, n + 2, n + 3, n + 4};
  n += 10;
EndFor
Ruled ThruSections(1) = {1:4};
Box(2) = {-150, -38, -16, 142, 76, 14};
Box(3) = {400, -25.5, -32, 62, 51, 20};
BooleanUnion(10) = { Volume{1}; Delete; }{ Volume{2, 3}; Delete; };
Save "neck.step";
