#include <algorithm>

#include "board/ShapeKeys.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Work.hpp"
#include "wood/Movement.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

struct Coefficients {
  std::string_view material;
  double radial, tangential;  ///< change per unit of size and per cent of moisture, 6 to 14 %
};

/// Wood Handbook, FPL-GTR-190 (2010), Table 13-5: maple (sugar), red maple, walnut (black), ash (white), beech, birch
/// (yellow), cherry (black), hickory (pecan), locust (black), red and white oak (commercial). The others stand in no
/// such table: their whole shrinkage from green to oven-dry (6.5/9.0, 2.7/5.8 and 2.8/6.7 %) over 30 % of moisture;
/// that rule, and the figures of rosewood, from memory. USDA Agriculture Handbook 607 gives ebony 5.5/6.5 % from green
/// to 12 % only.
constexpr Coefficients woods[] = {{"maple", .00165, .00353},          {"red-maple", .00137, .00289},
                                  {"walnut", .00190, .00274},         {"ash", .00169, .00274},
                                  {"beech", .00190, .00431},          {"birch", .00256, .00338},
                                  {"cherry", .00126, .00248},         {"hickory", .00169, .00315},
                                  {"locust", .00158, .00252},         {"red-oak", .00158, .00369},
                                  {"white-oak", .00180, .00365},      {"ebony", .065 / 30, .090 / 30},
                                  {"rosewood", .027 / 30, .058 / 30}, {"pau-ferro", .028 / 30, .067 / 30}};

/// Change of moisture between a dry winter and a damp summer indoors, per cent; of warmth, kelvin.
constexpr double moisture = 4, warmth = 15;

double heat_coefficient(MaterialKind kind) {
  switch (kind) {
    case MaterialKind::plastic:
      return 7.7e-5;  // cast PMMA, as published
    case MaterialKind::metal:
      return 1.9e-5;  // brass, from memory
    case MaterialKind::composite:
      return 2e-5;  // paper-phenolic along the sheet, from memory
    default:
      return 0;
  }
}

std::string plain_name(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '-');
  std::replace(name.begin(), name.end(), '_', '-');
  return name;
}

void judge_moisture(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  const std::string& wood = board.blank.material;
  const double width = 2 * std::max(subject.prepared.layout().half_width(0),
                                    subject.prepared.layout().half_width(subject.prepared.layout().heel_end));
  const auto change = moisture_change(board, wood, width, moisture);
  if (!change) return;
  const Point at{subject.prepared.layout().heel_end, width / 2};
  const bool quarter = board.blank.grain == Grain::quarter;
  judge.hold(
      rule("width-moves"), quarter ? change->quartered : change->flat_sawn, {at, 0, {Kind::board}, "the board"},
      "4 % more or less moisture in the wood changes the width by " + judge.shown(change->flat_sawn) + " flat-sawn, " +
          judge.shown(change->quartered) + " quarter-sawn; this blank is " + (quarter ? "quarter-sawn" : "flat-sawn") +
          ": fret ends come out at the sides in dry air, and inlays show a gap",
      quarter ? "let the blank settle in the room" : "let the blank settle in the room, and use a quarter-sawn one");
}

void judge_heat(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  const Box box = bounds(subject.prepared.layout().outline);
  double most = heat_change(board, board.blank.material, box.high.x - box.low.x, warmth);
  FeatureId where{Kind::board};
  std::string what = "the board";
  Point at{box.high.x, 0};
  for (const Marker& marker : subject.prepared.layout().markers) {
    const Inlay& inlay = board.inlays[marker.inlay];
    const double moves = heat_change(board, inlay.material, largest_size(inlay).value, warmth);
    if (moves > most) most = moves, where = id_of(marker), what = inlay_name(marker), at = marker.centre;
  }
  judge.hold(rule("length-moves"), most, {at, subject.prepared.surface().thickness, where, what},
             shown_warming(board, warmth) + " more or less change the length of " + what + " by " + judge.shown(most),
             "cut and measure at the temperature it will live in, and give pieces a clearance of half of that");
}

}  // namespace

std::optional<MoistureChange> moisture_change(const Board& board, const std::string& wood, double width,
                                              double percent) {
  constexpr double of_percent = 0.01;
  if (const auto own = board.materials.find(wood); own != board.materials.end()) {
    const auto &radial = own->second.movement_radial, &tangential = own->second.movement_tangential;
    const auto change = [&](double movement) { return of_percent * movement * width * percent; };
    if (radial || tangential)
      return MoistureChange{change(tangential ? *tangential : *radial), change(radial ? *radial : *tangential)};
  }
  for (const Coefficients& known : woods)
    if (known.material == plain_name(wood))
      return MoistureChange{known.tangential * width * percent, known.radial * width * percent};
  return {};
}

double heat_change(const Board& board, const std::string& name, double length, double kelvin) {
  return heat_coefficient(material(board, name).kind) * length * kelvin;
}

void judge_movement(const Subject& subject, Judge& judge) {
  judge_moisture(subject, judge);
  judge_heat(subject, judge);
}

}  // namespace sagitta
