#include "neck/NeckWords.hpp"

#include <cmath>
#include <numbers>

#include "board/Length.hpp"

namespace sagitta {
namespace {

std::string degrees(double radians) { return decimal(std::round(radians * 18000 / std::numbers::pi) / 100); }

/// "x = 1.2 mm, y = 0 mm, z = -3 mm".
std::string point_words(const Place3& p, const Judge& judge) {
  return "x = " + judge.shown(p[0]) + ", y = " + judge.shown(p[1]) + ", z = " + judge.shown(p[2]);
}

/// How the board lies in the file: turned seen from above, upside down, or on its side.
std::string turn_words(const NeckPlace& place) {
  constexpr double level = 0.9999;
  const double turn = std::atan2(place.along[1], place.along[0]);
  if (place.up[2] > level)
    return std::abs(turn) < 1e-3 ? "as it lies"
                                 : "turned by " + degrees(turn) + " degrees, counter-clockwise from above";
  if (place.up[2] < -level) return "upside down and turned by " + degrees(turn) + " degrees";
  return "with its glue face leaning by " + degrees(std::acos(place.up[2])) + " degrees";
}

std::string by_words(PlacedBy by) {
  switch (by) {
    case PlacedBy::given:
      return "neck.file_nut and file_heel";
    case PlacedBy::frame:
      return "the file's own zero and axes";
    case PlacedBy::ends:
      return "the end of its glue face";
    case PlacedBy::widths:
      break;
  }
  return "its widths alone";
}

std::string chosen_words(ChosenBy chosen) {
  switch (chosen) {
    case ChosenBy::frame:
      return ". Another face fits as well: the one in the board's own frame was taken";
    case ChosenBy::upward:
      return ". Another face fits as well: the one that looks up in the file was taken";
    case ChosenBy::fit:
      break;
  }
  return "";
}

}  // namespace

std::string place_words(const NeckShape& shape, const Judge& judge) {
  const NeckPlace& place = shape.place;
  return "the neck's glue face was found by " + by_words(place.by) + ": a face of " + judge.shown_area(place.area) +
         "; the board lies in the file " + turn_words(place) + ", its nut line on the centre line at " +
         point_words(place.origin, judge) + " of the file. Its edges lie " + judge.shown(place.fit) +
         " from the neck's on the average over " + std::to_string(std::lround(100 * place.compared)) +
         " % of the board" +
         (place.by == PlacedBy::given ? ""
                                      : "; the next best place fits " + judge.shown(std::min(place.second, 99.0)) +
                                            " worse, and " + judge.shown(sure_by) + " is wanted") +
         chosen_words(place.chosen);
}

std::string unit_words(const NeckShape& shape) {
  return "the neck in the file is not as large as this board: " + decimal(shape.times) +
         " times larger it fits. The file says that its lengths are in " + (shape.unit.empty() ? "mm" : shape.unit);
}

std::string unsure_words(const NeckShape& shape) {
  const NeckPlace& place = shape.place;
  if (shape.outlines.empty()) return "none of the flat faces in the neck's file has the board's outline";
  if (!place.sure && place.by == PlacedBy::widths)
    return "the board's place along the neck cannot be told from its file: no end of the glue face lies at an end of "
           "the board";
  if (!place.sure) return "the board's place in the neck's file is not sure: it fits in several places as well";
  return "only " + std::to_string(static_cast<int>(100 * place.compared)) +
         " % of the board's edges lie on the glue face that was found in the neck's file";
}

std::string sharing_words(const NeckShape& shape) {
  return shape.place.by == PlacedBy::ends
             ? "; the neck's middle is taken from its rod channel, or else half way between its sides"
             : "";
}

std::string channel_words(const FoundChannel& channel, const Judge& judge) {
  return judge.shown(channel.width) + " wide" + (channel.depth ? ", " + judge.shown(*channel.depth) + " deep" : "") +
         " and runs from x = " + judge.shown(channel.from) + " to " + judge.shown(channel.to) +
         (channel.open_at_nut ? ", open at the nut end" : "") + (channel.open_at_heel ? ", open at the body end" : "") +
         ", its middle up to " + judge.shown(channel.across) + " from the centre line";
}

}  // namespace sagitta
