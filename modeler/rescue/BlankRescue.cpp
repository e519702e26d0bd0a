/// A blank too thin, too short or too narrow.

#include <algorithm>
#include <cmath>

#include "layout/BlankPlace.hpp"
#include "layout/LastFret.hpp"
#include "layout/Measure.hpp"
#include "measured/AsMeasured.hpp"
#include "plane/Tolerance.hpp"
#include "rescue/Ways.hpp"
#include "rules/Catalogue.hpp"
#include "rules/Judge.hpp"

namespace sagitta {
namespace {

double square(double a) { return a * a; }

/// The board with what was measured, and its blank left to the program: how large it must be.
struct Needed {
  Board board;
  Layout layout;
};

std::optional<Needed> needed_by(const Board& planned) {
  Board board = planned;
  board.blank.length.reset(), board.blank.width.reset(), board.blank.at.reset(), board.blank.thickness.reset();
  board.measured.blank_thickness.reset();
  auto drawn = draw(board);
  auto* made = std::get_if<Drawn>(&drawn);
  if (!made) return {};
  return Needed{std::move(made->board), std::move(made->layout)};
}

/// Depths that leave as much wood under them as is wanted, where the thicker board left it; `lost`: of the thickness.
class Shallower {
 public:
  Shallower(const Board& board, double lost) : board_(board), judge_(board), lost_(lost) {}

  Edits take() {
    for (std::size_t i = 0; i < board_.inlays.size(); ++i)
      at_most(inlay_key(i, "depth"), board_.inlays[i].depth, judge_.limit(rule("thin-under-pocket")));
    if (board_.nut.seat != NutSeat::none) at_most("nut.depth", board_.nut.depth, judge_.limit(rule("thin-under-nut")));
    return std::move(edits_);
  }

 private:
  void at_most(const std::string& key, double depth, double wanted) {
    const double under = board_.board.thickness - depth;
    const double left = std::min(std::max(wanted, tolerance::least_floor), under);
    const double most = board_.board.thickness - lost_ - left;
    if (depth > most + tolerance::same && most > 0) edits_.push_back({key, most});
  }

  const Board& board_;
  const Judge judge_;
  double lost_;
  Edits edits_;
};

void offer_sanding(Ways& ways, double blank) {
  const Board& board = ways.planned();
  const double left = blank - board.board.thickness;
  if (board.sanding <= 0 || left < -tolerance::same) return;
  Way way;
  way.name = "less-sanding";
  way.edits = {{"finish.sanding", std::max(left, 0.0)}};
  way.message = "leave only " + in_units(board, std::max(left, 0.0)) + " for sanding";
  way.cost = "ridges and scratches must come off with " + in_units(board, std::max(left, 0.0)) + " of wood";
  way.effort = WayEffort::numbers;
  way.figures = {{"sanding", std::max(left, 0.0), "mm"}};
  ways.offer(std::move(way));
}

void offer_thinner(Ways& ways, double thickness, double lost) {
  const Board& board = ways.planned();
  Way way;
  way.name = "thinner-board";
  way.edits = {{"board.thickness", thickness}};
  const Edits shallower = Shallower(board, lost).take();
  way.edits.insert(way.edits.end(), shallower.begin(), shallower.end());
  way.message = "make the board " + in_units(board, thickness) + " thick";
  way.cost = "the board and its edges are " + in_units(board, lost) + " lower" +
             (shallower.empty() ? "" : ", and pockets are shallower: pieces are thinner");
  way.effort = WayEffort::design;
  way.figures = {{"thickness", thickness, "mm"}};
  ways.offer(std::move(way));
}

/// The radius whose drop at half a width is less by `lost`: R = w^2/2h + h/2 with w half the width. None where nothing
/// of the drop is left.
std::optional<double> flatter(double radius, double half, double lost) {
  const double drop = square(half) / (radius + std::sqrt(square(radius) - square(half))) - lost;
  if (drop <= tolerance::snap) return {};
  return square(half) / (2 * drop) + drop / 2;
}

/// The edges keep their height, at the nut and at the heel.
void offer_flatter(Ways& ways, const Needed& needed, double thickness, double lost) {
  const SurfaceSpec& surface = ways.planned().surface;
  if (!surface.radius_at_nut || lost <= 0) return;
  const auto nut = flatter(*surface.radius_at_nut, needed.layout.half_width(0), lost);
  if (!nut) return;
  Way way;
  way.name = "flatter-radius";
  way.edits = {{"board.thickness", thickness}, {"surface.radius_at_nut", *nut}};
  way.figures = {{"thickness", thickness, "mm"}, {"radius-at-nut", *nut, "mm"}};
  if (surface.radius_at_heel) {
    const double end = surface.heel_at == HeelAt::heel ? needed.layout.heel_end : last_fret(needed.layout).middle.x;
    const auto heel = flatter(*surface.radius_at_heel, needed.layout.half_width(end), lost);
    if (!heel) return;
    way.edits.push_back({"surface.radius_at_heel", *heel});
    way.figures.push_back({"radius-at-heel", *heel, "mm"});
  }
  const Edits shallower = Shallower(ways.planned(), lost).take();
  way.edits.insert(way.edits.end(), shallower.begin(), shallower.end());
  way.message = "make the board " + in_units(ways.planned(), thickness) + " thick and its radius at the nut " +
                in_units(ways.planned(), *nut) + ": the edges keep their height";
  way.cost = "a flatter board than was wanted";
  way.effort = WayEffort::design;
  ways.offer(std::move(way));
}

void thin_ways(Ways& ways) {
  const Board& board = ways.planned();
  const double blank = board.measured.blank_thickness.value_or(blank_thickness(board));
  const double lack = board.board.thickness + board.sanding - blank;
  if (lack <= tolerance::same) return;
  offer_sanding(ways, blank);
  const double thickness = blank - board.sanding, lost = board.board.thickness - thickness;
  offer_thinner(ways, thickness, lost);
  if (const auto needed = needed_by(board)) offer_flatter(ways, *needed, thickness, lost);
}

/// The blank from above and what it must hold.
struct Stock {
  Point blank, need;  ///< along, across
  Box strip;
};

Point size(const Box& box) { return box.high - box.low; }

void offer_moving(Ways& ways, const Stock& stock) {
  if (!ways.planned().blank.at || stock.blank.x < stock.need.x || stock.blank.y < stock.need.y) return;
  const Point spare = stock.blank - stock.need;
  const Place2 at{spare.x / 2 - stock.strip.low.x, spare.y / 2 - stock.strip.low.y};
  Way way;
  way.name = "move-in-blank";
  way.edits = {{"blank.at", at}};
  way.message = "put the nut line " + in_units(ways.planned(), at[0]) +
                " from the blank's left end and the centre line " + in_units(ways.planned(), at[1]) +
                " from its lower side";
  way.cost = "nothing; the zero is set at another place";
  way.effort = WayEffort::numbers;
  ways.offer(std::move(way));
}

/// Turned by a right angle, the grain runs across.
void offer_turning(Ways& ways, const Stock& stock) {
  const Board& board = ways.planned();
  if (!board.blank.length || !board.blank.width || stock.blank.y < stock.need.x || stock.blank.x < stock.need.y) return;
  Way way;
  way.name = "turn-blank";
  way.edits = {{"blank.length", stock.blank.y}, {"blank.width", stock.blank.x}};
  if (board.blank.at) way.edits.push_back({"blank.at", Value()});
  way.message = "turn the blank by a right angle";
  way.cost = "the grain runs across the board, which bends and moves more";
  way.effort = WayEffort::design;
  ways.offer(std::move(way));
}

void offer_shorter(Ways& ways, double lack) {
  const Board& board = ways.planned();
  const double past = board.board.past_last_fret, behind = behind_nut(board);
  const auto offer = [&](const char* name, double from_heel, double from_nut) {
    Way way;
    way.name = name;
    if (from_heel > 0) way.edits.push_back({"board.past_last_fret", past - from_heel});
    if (from_nut > 0) way.edits.push_back({"board.behind_nut", behind - from_nut});
    way.message = "make the board " + in_units(board, lack) +
                  " shorter: " + (from_heel > 0 ? in_units(board, from_heel) + " at the body end" : std::string()) +
                  (from_heel > 0 && from_nut > 0 ? " and " : "") +
                  (from_nut > 0 ? in_units(board, from_nut) + " behind the nut" : std::string());
    way.cost = "less wood behind the last slot or the nut; no fret moves";
    way.effort = WayEffort::design;
    way.figures = {{"shorter", lack, "mm"}};
    return ways.offer(std::move(way));
  };
  const bool heel = offer("shorter-heel", lack, 0), nut = offer("shorter-behind-nut", 0, lack);
  if (heel || nut) return;
  for (const double part : {0.75, 0.5, 0.25})
    if (offer("shorter-both-ends", part * lack, (1 - part) * lack)) return;
}

/// Lists of frets without those that there are no more.
void drop_frets(const std::string& key, std::vector<int> frets, int last, Edits& edits) {
  if (std::erase_if(frets, [&](int fret) { return fret > last; }) > 0)
    edits.push_back({key, frets.empty() ? Value() : Value(frets)});
}

void offer_fewer_frets(Ways& ways, const Stock& stock) {
  const Board& board = ways.planned();
  for (int last = board.scale.frets - 1; last >= std::max(1, board.scale.frets - 6); --last) {
    Way way;
    way.name = "fewer-frets";
    way.edits = {{"scale.frets", last}};
    for (std::size_t i = 0; i < board.inlays.size(); ++i) {
      drop_frets(inlay_key(i, "frets"), board.inlays[i].frets, last, way.edits);
      drop_frets(inlay_key(i, "double_frets"), board.inlays[i].double_frets, last, way.edits);
    }
    if (board.side_dots) {
      drop_frets("side_dots.frets", board.side_dots->frets, last, way.edits);
      drop_frets("side_dots.double_frets", board.side_dots->double_frets, last, way.edits);
    }
    const auto fits = needed_by(edited(board, way.edits));
    if (!fits || size(fits->layout.strip).x > stock.blank.x + tolerance::same) continue;
    way.message = "make the board with " + std::to_string(last) + " frets";
    way.cost = std::to_string(board.scale.frets - last) + " frets fewer";
    way.effort = WayEffort::design;
    way.figures = {{"frets", static_cast<double>(last), ""}};
    if (ways.offer(std::move(way))) return;
  }
}

/// The widest outline that the blank holds, by what makes it wide: margins or widths.
void offer_narrower(Ways& ways, const Needed& needed, const Stock& stock) {
  const Shape& shape = ways.planned().board;
  const Layout& layout = needed.layout;
  double lack = stock.need.y - stock.blank.y;
  const double nut = 2 * layout.half_width(0), heel = 2 * layout.half_width(layout.heel_end);
  const bool wide_heel = heel >= nut;
  Way way;
  for (int round = 0; round < 8 && std::abs(lack) > tolerance::same; ++round) {
    const double cap = (round == 0 ? std::max(nut, heel) : way.figures.front().value) - lack;
    const double new_nut = wide_heel ? std::min(nut, cap) : cap, new_heel = wide_heel ? cap : std::min(heel, cap);
    way.figures = {{"width", cap, "mm"}};
    way.edits.clear();
    const auto margin = [&](const LengthPair& old, double less) {
      const LengthPair pair(old.first - less / 2, old.second - less / 2);
      return pair.equal() ? Value(pair.first) : Value(Place2{pair.first, pair.second});
    };
    if (shape.nut_width) {
      way.edits = {{"board.nut_width", new_nut}, {"board.heel_width", new_heel}};
      if (shape.width_at_fret) way.edits.push_back({"board.width_at_fret", Value()});
    } else {
      const LengthPair at_nut = shape.edge_margin ? *shape.edge_margin : shape.nut_margin.value_or(LengthPair());
      const LengthPair at_heel = shape.edge_margin ? *shape.edge_margin : shape.heel_margin.value_or(LengthPair());
      way.edits = {{"board.nut_margin", margin(at_nut, nut - new_nut)},
                   {"board.heel_margin", margin(at_heel, heel - new_heel)}};
      if (shape.edge_margin) way.edits.insert(way.edits.begin(), Edit{"board.edge_margin", Value()});
    }
    const auto next = needed_by(edited(ways.planned(), way.edits));
    if (!next) return;
    lack = size(next->layout.strip).y - stock.blank.y;
  }
  if (way.edits.empty()) return;
  way.name = "narrower-board";
  way.message = "make the board at most " + in_units(ways.planned(), way.figures.front().value) + " wide";
  way.cost = "the outer strings lie nearer to the edges";
  way.effort = WayEffort::design;
  ways.offer(std::move(way));
}

}  // namespace

void blank_ways(Ways& ways) {
  thin_ways(ways);
  if (!ways.has_fault(FaultCode::blank_too_small)) return;
  const auto needed = needed_by(ways.planned());
  if (!needed) return;
  const Blank& blank = ways.planned().blank;
  Stock stock;
  stock.strip = needed->layout.strip;
  stock.need = size(stock.strip);
  const Point given = size(needed->layout.blank);
  stock.blank = {blank.length.value_or(given.x), blank.width.value_or(given.y)};
  offer_moving(ways, stock);
  const double lack = stock.need.x - stock.blank.x;
  if (lack > tolerance::same) {
    offer_shorter(ways, lack);
    offer_fewer_frets(ways, stock);
  }
  if (stock.need.y - stock.blank.y > tolerance::same) offer_narrower(ways, *needed, stock);
  offer_turning(ways, stock);
}

}  // namespace sagitta
