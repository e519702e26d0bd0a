// The same with a rod channel 6 wide and 10 deep from x = 20 to 400, somewhere in its file.
Include "bar.geo";
Box(2) = {20, -3, -10, 380, 6, 15};
BooleanDifference{ Volume{1}; Delete; }{ Volume{2}; Delete; }
Rotate{ {1, 2, -0.7}, {10, 20, 30}, 131 * Pi / 180 }{ Volume{:}; }
Translate{217, -1300, 88}{ Volume{:}; }
