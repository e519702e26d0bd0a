// The same with a headstock wider than the neck and 2 lower, and a body whose top stands 4 over the glue face, with room
// for the board's end; turned end for end.
Include "bar.geo";
Box(2) = {-150, -60, -16, 150, 120, 14};
Box(3) = {330, -165, -40, 430, 330, 44};
Box(4) = {320, -32, 0, 160, 64, 10};
BooleanDifference(5) = { Volume{3}; Delete; }{ Volume{4}; Delete; };
BooleanUnion(6) = { Volume{1}; Delete; }{ Volume{2, 5}; Delete; };
Rotate{ {0, 0, 1}, {0, 0, 0}, Pi }{ Volume{:}; }
