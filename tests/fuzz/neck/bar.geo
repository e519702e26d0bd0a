// A neck in the board's own frame: the glue face at z = 0, 52 wide at x = 0 and 60 at the board's heel end, 440 long,
// and a back that is 8 narrower, 20 below it. All of its faces are plane.
SetFactory("OpenCASCADE");
DefineConstant[ wider = 0 ]; // so much wider on each side
end = 640 * (1 - 2^(-19 / 12)) + 10;
nut = 26 + wider;
half = nut + 4 * 440 / end;
Point(1) = {0, -nut, 0};
Point(2) = {440, -half, 0};
Point(3) = {440, half, 0};
Point(4) = {0, nut, 0};
Point(5) = {0, -nut + 4, -20};
Point(6) = {440, -half + 4, -20};
Point(7) = {440, half - 4, -20};
Point(8) = {0, nut - 4, -20};
For i In {0:3}
  Line(1 + i) = {1 + i, 1 + (i + 1) % 4};
  Line(5 + i) = {5 + i, 5 + (i + 1) % 4};
  Line(9 + i) = {1 + i, 5 + i};
EndFor
Curve Loop(1) = {1, 2, 3, 4};
Curve Loop(2) = {5, 6, 7, 8};
Plane Surface(1) = {1};
Plane Surface(2) = {2};
For i In {0:3}
  Curve Loop(3 + i) = {1 + i, 9 + (i + 1) % 4, -(5 + i), -(9 + i)};
  Plane Surface(3 + i) = {3 + i};
EndFor
Surface Loop(1) = {1:6};
Volume(1) = {1};
