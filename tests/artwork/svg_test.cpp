// Small SVG drawings, good ones: what they fill against closed forms. Sections are those of SVG 1.1 (Second Edition).

#include "Drawing.hpp"

namespace sagitta::test {
namespace {

constexpr double pi = std::numbers::pi;

struct Case {
  const char* name;
  const char* inside;     ///< of a page of 100 x 100 mm
  double area;            ///< mm^2
  const char* colours;    ///< of the regions, in order, without "#"
  std::size_t outlines;   ///< in all
  const char* note = "";  ///< a word of what is said; "" for nothing
};

const double k = std::sqrt(3.0);

const Case cases[] = {
    // 9.2 to 9.7, basic shapes
    {"rect", "<rect x='10' y='10' width='30' height='20'/>", 600, "000000", 1},
    {"rect, rounded", "<rect width='30' height='20' rx='5'/>", 600 - (4 - pi) * 25, "000000", 1},
    {"rect, only ry", "<rect width='30' height='20' ry='4'/>", 600 - (4 - pi) * 16, "000000", 1},
    {"rect, elliptic corners", "<rect width='30' height='20' rx='6' ry='3'/>", 600 - (4 - pi) * 18, "000000", 1},
    {"rect, radii too large", "<rect width='30' height='20' rx='50' ry='50'/>", pi * 15 * 10, "000000", 1},
    {"rect, no width", "<rect width='0' height='20'/>", 0, "", 0},
    {"circle", "<circle cx='50' cy='50' r='20'/>", pi * 400, "000000", 1},
    {"circle in percent", "<circle cx='50%' cy='50%' r='20%'/>", pi * 400, "000000", 1},
    {"ellipse", "<ellipse cx='50' cy='50' rx='30' ry='10'/>", pi * 300, "000000", 1},
    {"line", "<line x1='0' y1='0' x2='50' y2='50' stroke='red'/>", 0, "", 0, "no area"},
    {"polyline", "<polyline points='0,0 30,0 30,40'/>", 600, "000000", 1, "open outline"},
    {"polygon", "<polygon points='0,0 30,0, 30 40'/>", 600, "000000", 1},
    {"polygon, tight numbers", "<polygon points='0-0 30-0 30+40'/>", 600, "000000", 1},
    // 8.3, paths
    {"relative", "<path d='m10 10l30 0 0 40z'/>", 600, "000000", 1},
    {"pairs behind a moveto", "<path d='M10 10 40 10 40 50z'/>", 600, "000000", 1},
    {"h and v", "<path d='M10 10H40V50h-30z'/>", 1200, "000000", 1},
    {"numbers without blanks", "<path d='M.5.5 10.5.5 10.5 10.5.5 10.5z'/>", 100, "000000", 1},
    {"exponents", "<path d='M1e1 1E1h3e1v+40e0z'/>", 600, "000000", 1},
    {"two subpaths", "<path d='M0 0h10v10h-10z m20 0h10v10h-10z'/>", 200, "000000", 2},
    {"drawn on behind z", "<path d='M0 0h10v10z l-10 0 0 10z'/>", 50 + 50, "000000", 2, "touch"},
    {"open path", "<path d='M0 0h30v40'/>", 600, "000000", 1, "open outline"},
    {"flags run together", "<path d='M0 0a10 10 0 0120 0z'/>", pi * 50, "000000", 1},
    {"arc, radii too small", "<path d='M0 50a1 1 0 0 1 20 0z'/>", pi * 50, "000000", 1},
    {"arc, no radius", "<path d='M0 0a0 5 0 0 1 30 0v40z'/>", 600, "000000", 1},
    {"arc, negative radius", "<path d='M0 50a-10-10 0 0 1 20 0z'/>", pi * 50, "000000", 1},
    {"ellipse of two arcs, turned", "<path d='M20 50a30 10 45 0 1 40 0a30 10 45 0 1 -40 0z'/>",
     [] {
       const double s = 20 / std::sqrt(2.0), l = s * s / 900 + s * s / 100;
       return l > 1 ? pi * 300 * l : 0.0;
     }(),
     "000000", 1},
    {"quadratic", "<path d='M0 50Q20 10 40 50z'/>", 2.0 / 3 * 40 * 20, "000000", 1},
    {"smooth quadratic", "<path d='M0 50Q10 30 20 50T40 50z'/>", 2 * (2.0 / 3 * 20 * 10), "000000", 2, "touch"},
    {"cubic", "<path d='M0 50C0 10 40 10 40 50z'/>", 0.6 * 40 * 40, "000000", 1},
    {"smooth cubic", "<path d='M0 0C0 10 10 10 10 0S20-10 20 0z'/>", 2 * 0.6 * 10 * 10, "000000", 2, "touch"},
    // 11.3, fill rules
    {"nonzero, same way", "<path d='M0 0h40v40h-40z M10 10h20v20h-20z'/>", 1600, "000000", 1},
    {"nonzero, other way", "<path d='M0 0h40v40h-40z M10 10v20h20v-20z'/>", 1200, "000000", 2},
    {"evenodd", "<path fill-rule='evenodd' d='M0 0h40v40h-40z M10 10h20v20h-20z'/>", 1200, "000000", 2},
    {"evenodd, island", "<path fill-rule='evenodd' d='M0 0h50v50h-50z M10 10h30v30h-30z M20 20h10v10h-10z'/>",
     2500 - 900 + 100, "000000", 3},
    {"evenodd in style", "<path style='fill-rule:evenodd' d='M0 0h40v40h-40z M10 10h20v20h-20z'/>", 1200, "000000", 2},
    // Sides that lie on each other: what is filled is the first triangle, which the two others' crossing cuts in two.
    {"evenodd, sides on sides",
     "<path fill-rule='evenodd' d='M5 35L35 35 35 5 5 35 35 35 5 5zM5 35L35 35 5 35 35 35 5 5z'/>", 30 * 30 / 2.0,
     "000000", 2, "touch"},
    // 7.4 to 7.6, transforms
    {"translate", "<rect width='10' height='10' transform='translate(50)'/>", 100, "000000", 1},
    {"scale", "<rect width='10' height='10' transform='scale(2,3)'/>", 600, "000000", 1},
    {"rotate about a point", "<rect width='30' height='20' transform='rotate(30 15 10)'/>", 600, "000000", 1},
    {"skew keeps area", "<rect width='10' height='10' transform='skewX(45)'/>", 100, "000000", 1},
    {"matrix", "<rect width='10' height='10' transform='matrix(1 0 0 2 5 5)'/>", 200, "000000", 1},
    {"list", "<rect width='10' height='10' transform='translate(10,10) scale(2) , rotate(90)'/>", 400, "000000", 1},
    {"nested", "<g transform='scale(2)'><g transform='scale(1.5)'><circle r='2'/></g></g>", pi * 36, "000000", 1},
    {"mirrored circle", "<circle cx='20' cy='20' r='5' transform='scale(-1,1)'/>", pi * 25, "000000", 1},
    {"squeezed circle", "<circle r='10' transform='scale(2,1)'/>", pi * 200, "000000", 1},
    // 5, structure
    {"use", "<defs><rect id='a' width='10' height='10'/></defs><use xlink:href='#a'/><use href='#a' x='20'/>", 200,
     "000000 000000", 2},
    {"use of a group",
     "<defs><g id='a'><rect width='5' height='5'/><rect x='9' width='5' height='5'/></g></defs>"
     "<use xlink:href='#a' transform='scale(2)' fill='red'/>",
     200, "ff0000 ff0000", 2},
    {"symbol",
     "<symbol id='s' viewBox='0 0 10 10'><rect width='10' height='10'/></symbol><use href='#s' width='20' "
     "height='20'/>",
     400, "000000", 1},
    {"inner svg", "<svg x='10' y='10' width='50' height='50' viewBox='0 0 10 10'><rect width='10' height='10'/></svg>",
     2500, "000000", 1},
    {"display none",
     "<g display='none'><rect width='10' height='10'/></g><rect style='display:none' width='9' height='9'/>", 0, "", 0},
    {"hidden", "<rect visibility='hidden' width='10' height='10'/>", 0, "", 0},
    {"defs alone", "<defs><rect width='10' height='10'/></defs>", 0, "", 0},
    {"link", "<a xlink:href='http://example.org/'><rect width='10' height='10'/></a>", 100, "000000", 1},
    // 4.2, 4.4, 6, colours and style
    {"named colour", "<rect width='10' height='10' fill='Goldenrod'/>", 100, "daa520", 1},
    {"short colour", "<rect width='10' height='10' fill='#C2f'/>", 100, "cc22ff", 1},
    {"rgb", "<rect width='10' height='10' fill='rgb( 192,32 , 32)'/>", 100, "c02020", 1},
    {"rgb percent", "<rect width='10' height='10' fill='rgb(100%,0%,20%)'/>", 100, "ff0033", 1},
    {"inherited", "<g fill='teal'><rect width='10' height='10'/></g>", 100, "008080", 1},
    {"style over attribute", "<rect fill='red' style='fill: #00ff00 ;stroke:none' width='10' height='10'/>", 100,
     "00ff00", 1},
    {"current colour", "<g color='#123456'><rect fill='currentColor' width='10' height='10'/></g>", 100, "123456", 1},
    {"class", "<style>.b{fill:#c02020}</style><rect class='a b' width='10' height='10'/>", 100, "c02020", 1},
    {"type, class and id",
     "<style>rect{fill:red} .c{fill:lime} #i{fill:blue}</style><rect width='10' height='10'/>"
     "<rect class='c' x='20' width='10' height='10'/><rect id='i' class='c' x='40' width='10' height='10'/>",
     300, "ff0000 00ff00 0000ff", 3},
    {"class over attribute",
     "<style>/* x */ rect.c, .d { fill : red; }</style><rect class='c' fill='blue' width='10' height='10'/>", 100,
     "ff0000", 1},
    {"important", "<style>rect{fill:red !important}</style><rect style='fill:blue' width='10' height='10'/>", 100,
     "ff0000", 1},
    {"style in cdata",
     "<style type='text/css'><![CDATA[ .c{fill:red} ]]></style><rect class='c' width='10' height='10'/>", 100, "ff0000",
     1},
    {"fill none", "<rect fill='none' width='10' height='10'/>", 0, "", 0},
    {"two colours, order kept",
     "<rect fill='#222' width='10' height='10'/><rect fill='#111' x='20' width='10' height='10'/>", 200,
     "222222 111111", 2},
    // what is named and left out
    {"text", "<text x='5' y='5'>heron</text><rect width='10' height='10'/>", 100, "000000", 1, "text is no outline"},
    {"picture", "<image width='5' height='5' xlink:href='data:image/png;base64,AA'/>", 0, "", 0, "picture"},
    {"filter", "<filter id='f'/><rect filter='url(#f)' width='10' height='10'/>", 100, "000000", 1, "filter"},
    {"clip", "<clipPath id='f'/><rect clip-path='url(#f)' width='10' height='10'/>", 100, "000000", 1, "clip-path"},
    {"mask", "<g mask='url(#f)'><rect width='10' height='10'/></g>", 100, "000000", 1, "mask"},
    {"gradient", "<linearGradient id='g'/><rect fill='url(#g)' width='10' height='10'/>", 0, "", 0, "linearGradient"},
    {"gradient with a colour", "<linearGradient id='g'/><rect fill='url(#g) red' width='10' height='10'/>", 100,
     "ff0000", 1, "its other colour"},
    {"pattern", "<pattern id='p'/><rect fill='url(#p)' width='10' height='10'/>", 0, "", 0, "a pattern"},
    {"stroke alone", "<path fill='none' stroke='#000' d='M0 0h50'/>", 0, "", 0, "without a fill"},
    {"stroke of a fill", "<rect stroke='#000' width='10' height='10'/>", 100, "000000", 1, "middle line"},
    {"odd colour", "<rect fill='reddish' width='10' height='10'/>", 0, "", 0, "no colour that is known"},
    {"half seen", "<rect opacity='.5' width='10' height='10'/>", 100, "000000", 1, "opacity"},
    {"not seen", "<rect fill-opacity='0' width='10' height='10'/>", 0, "", 0, "cannot be seen"},
    {"use of nothing", "<use href='#gone'/>", 0, "", 0, "not in the drawing"},
    {"a selector that is not read", "<style>g rect{fill:red}</style><rect width='10' height='10'/>", 100, "000000", 1,
     "g rect"},
    {"unknown element", "<heron/><rect width='10' height='10'/>", 100, "000000", 1, "<heron>"},
    {"other namespaces", "<sodipodi:namedview xmlns:sodipodi='x'/><rect width='10' height='10'/>", 100, "000000", 1},
    // repairs
    {"crossing itself, nonzero", "<polygon points='0,0 20,20 20,0 0,20'/>", 200, "000000", 2, "cross or touch"},
    {"two discs in one path, overlapping",
     "<path d='M0 50a10 10 0 0 1 20 0a10 10 0 0 1 -20 0z M10 50a10 10 0 0 1 20 0a10 10 0 0 1 -20 0z'/>",
     2 * pi * 100 - (2 * pi / 3 - k / 2) * 100, "000000", 1, "cross or touch"},
    {"no area", "<path d='M0 0L50 50z'/>", 0, "", 0, "without any area"},
    {"spike", "<path d='M0 0h10v10h-10z M20 20h10v10h-10v-10l-3-3z'/>", 200, "000000", 2, "cross or touch"},
    {"outline twice", "<path d='M0 0h10v10h-10z M0 0h10v10h-10z'/>", 100, "000000", 1, "twice"},
    {"shape twice", "<circle r='5'/><circle r='5'/>", pi * 25, "000000", 1, "twice"},
    {"above another colour", "<circle cx='50' cy='50' r='20' fill='red'/><circle cx='50' cy='50' r='5' fill='blue'/>",
     pi * 400, "ff0000 0000ff", 3, "lies on this one"},
    {"half above", "<rect width='20' height='20' fill='red'/><rect x='10' width='20' height='20' fill='blue'/>", 600,
     "ff0000 0000ff", 2, "lies on this one"},
    {"covered", "<rect width='20' height='20' fill='red'/><rect width='30' height='30' fill='blue'/>", 900, "0000ff", 1,
     "covered"},
    {"one colour, overlapping", "<rect width='20' height='20'/><rect x='10' width='20' height='20'/>", 600, "000000", 1,
     "united"},
    {"neighbours that touch",
     "<rect width='20' height='20' fill='red'/><rect x='20' width='20' height='20' fill='blue'/>", 800, "ff0000 0000ff",
     2},
    {"a hole filled with another colour",
     "<path fill='red' d='M0 0h40v40h-40zM10 10v20h20v-20z'/><rect x='10' y='10' width='20' height='20' fill='blue'/>",
     1600, "ff0000 0000ff", 3},
};

std::string colours(const Artwork& art) {
  std::string all;
  for (const DrawnRegion& region : art.regions) all += (all.empty() ? "" : " ") + region.colour.substr(1);
  return all;
}

TEST(Svg, FillsWhatTheClosedFormsSay) {
  for (const Case& one : cases) {
    const Artwork art = good(svg_artwork(page(one.inside)), one.name);
    expect_sound(art, one.name);
    // Bezier ellipses are within 2e-6 of their radii; polygons within 1e-5 of the drawing's side, here at most 30 mm,
    // along at most 126 mm of curves
    EXPECT_NEAR(area(art), one.area, 4e-6 * one.area + (std::string(one.note).empty() ? 1e-9 : 1e-5 * 30 * 126))
        << one.name;
    EXPECT_EQ(colours(art), one.colours) << one.name;
    std::size_t outlines = 0;
    for (const DrawnRegion& region : art.regions) outlines += region.outlines.size();
    EXPECT_EQ(outlines, one.outlines) << one.name;
    const std::string said = words(art.notes);
    if (std::string(one.note).empty())
      EXPECT_EQ(said, "") << one.name;
    else
      EXPECT_NE(said.find(one.note), std::string::npos) << one.name << " says: " << said;
  }
}

// 4.2 and CSS: 96 px to the inch, 25.4 mm to the inch, 72 pt, 6 pc.
TEST(Svg, StatesItsSizeInPhysicalUnits) {
  const std::pair<const char*, double> sizes[] = {{"10mm", 10},  {"1cm", 10},    {"1in", 25.4}, {"72pt", 25.4},
                                                  {"6pc", 25.4}, {"96px", 25.4}, {"96", 25.4},  {"1e1mm", 10}};
  for (const auto& [text, mm] : sizes) {
    const std::string size = std::string("width='") + text + "' height='" + text + "'";
    const Box box =
        bounds(good(svg_artwork("<svg " + size + " viewBox='0 0 5 5'><rect width='5' height='5'/></svg>"), text));
    EXPECT_NEAR(box.high.x - box.low.x, mm, 1e-12) << text;
    EXPECT_NEAR(box.high.y - box.low.y, mm, 1e-12) << text;
  }
}

// 7.8: the smaller scale and the middle by default.
TEST(Svg, ViewBoxKeepsItsProportions) {
  const auto box = [](const std::string& how) {
    return bounds(good(svg_artwork("<svg width='40mm' height='20mm' viewBox='5 5 10 10' preserveAspectRatio='" + how +
                                   "'><rect x='5' y='5' width='10' height='10'/></svg>"),
                       how));
  };
  EXPECT_NEAR(box("").low.x, 10, 1e-12);
  EXPECT_NEAR(box("").high.x, 30, 1e-12);
  EXPECT_NEAR(box("xMinYMid").low.x, 0, 1e-12);
  EXPECT_NEAR(box("xMaxYMid meet").high.x, 40, 1e-12);
  EXPECT_NEAR(box("none").high.x, 40, 1e-12);
  EXPECT_NEAR(box("none").high.y, 20, 1e-12);
  EXPECT_NEAR(box("xMidYMin slice").high.y, 20, 1e-12);  // its top is the page's top
  EXPECT_NEAR(box("xMidYMin slice").low.y, -20, 1e-12);
}

// y points down in SVG and up on a board.
TEST(Svg, StandsUpright) {
  const Artwork art = good(svg_artwork(page("<rect y='90' width='10' height='10'/>")), "upright");
  EXPECT_NEAR(bounds(art).low.y, 0, 1e-12);
  EXPECT_NEAR(bounds(art).high.y, 10, 1e-12);
}

TEST(Svg, CirclesStayArcs) {
  for (const char* inside : {"<circle cx='30' cy='40' r='7'/>", "<ellipse rx='10' ry='5' transform='scale(.5,1)'/>",
                             "<circle r='7' transform='rotate(33) scale(-2,2)'/>"}) {
    const Artwork art = good(svg_artwork(page(inside)), inside);
    ASSERT_EQ(art.regions.size(), 1U);
    for (const PathSegment& stroke : art.regions[0].outlines[0]) {
      ASSERT_TRUE(std::holds_alternative<CurveSegment>(stroke)) << inside;
      EXPECT_TRUE(std::get<CurveSegment>(stroke).is_arc()) << inside;
    }
  }
}

// Every point of the Bezier curves against the ellipse's equation.
TEST(Svg, EllipsesAreWithinTheStatedTolerance) {
  const Artwork art = good(svg_artwork(page("<ellipse cx='50' cy='50' rx='40' ry='15'/>")), "ellipse");
  double worst = 0;
  for (const PathSegment& stroke : art.regions.at(0).outlines[0])
    for (int i = 0; i <= 100; ++i) {
      const Point p = std::get<Bezier>(stroke).at(i / 100.0) - Point{50, 50};
      worst = std::max(worst, std::abs(std::hypot(p.x / 40, p.y / 15) - 1));
    }
  EXPECT_LT(worst, 2e-6);
  EXPECT_GT(worst, 1e-9);
}

TEST(Svg, CurvesAwayFromACrossingAreKept) {
  const Artwork art =
      good(svg_artwork(page("<path d='M0 0L20 20V0L0 20z M50 50C50 30 90 30 90 50z'/>")), "bow and bell");
  int curves = 0;
  for (const PathLoop& loop : art.regions.at(0).outlines)
    for (const PathSegment& stroke : loop) curves += std::holds_alternative<Bezier>(stroke);
  EXPECT_EQ(curves, 1);
}

}  // namespace
}  // namespace sagitta::test
