#include "jobsheet/JobSteps.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "board/CutSide.hpp"
#include "board/Length.hpp"
#include "drawing/JobPart.hpp"
#include "drawing/SetupPlaces.hpp"
#include "drawing/WoodTop.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "layout/CutMiddle.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"
#include "tables/PieceList.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Places where the strip's lowest edge is looked for; the surface bends by far less than 0.01 mm between two.
constexpr int stations = 64;

std::vector<CutterUse> uses_of(Operation operation) {
  switch (operation) {
    case Operation::pockets:
      return {CutterUse::pocket_clear, CutterUse::pocket_detail};
    case Operation::inlay:
      return {CutterUse::piece};
    case Operation::radius:
      return {CutterUse::radius};
    case Operation::slots:
      return {CutterUse::slot, CutterUse::nut};
    case Operation::outline:
      return {CutterUse::outline};
    case Operation::thickness:
      return {};
  }
  return {};
}

/// What a cutter does of an operation.
std::string part_words(CutterUse use) {
  switch (use) {
    case CutterUse::pocket_clear:
      return "clearing";
    case CutterUse::pocket_detail:
      return "corners";
    case CutterUse::piece:
      return "pieces";
    case CutterUse::radius:
      return "radius";
    case CutterUse::slot:
      return "slots";
    case CutterUse::nut:
      return "nut seat";
    case CutterUse::outline:
      break;
  }
  return "outline";
}

/// The stage that the operation starts from.
std::string stage_before(const PreparedBoard& ready, Operation operation) {
  std::string stage = "blank";
  for (const Operation each : ready.board().order) {
    if (each == operation) break;
    if (has_work(ready, each) && !stage_after(each).empty()) stage = stage_after(each);
  }
  return stage;
}

double length_of(const Loop& loop) {
  double length = 0;
  for (const CurveSegment& segment : loop)
    length += segment.is_arc() ? segment.radius * std::abs(segment.sweep) : distance(segment.a, segment.b);
  return length;
}

class Steps {
 public:
  Steps(const PreparedBoard& ready, const ResolvedSetup& setup)
      : ready_(ready), board_(ready.board()), layout_(ready.layout()), surface_(ready.surface()), setup_(setup) {}

  JobStep step(Operation operation) {
    step_ = {std::string(operation_name(operation)), {}, stage_before(ready_, operation), stage_after(operation), {}};
    if (step_.after.empty()) step_.before.clear();
    cutters(operation);
    switch (operation) {
      case Operation::pockets:
        pockets();
        break;
      case Operation::inlay:
        inlay();
        break;
      case Operation::radius:
        radius();
        break;
      case Operation::slots:
        slots();
        break;
      case Operation::outline:
        outline();
        break;
      case Operation::thickness:
        thickness();
        break;
    }
    return std::move(step_);
  }

 private:
  std::string length(double mm) const { return fine_measure(board_, mm); }
  std::string z(double height) const { return "z = " + length(setup_.z_from_board(height)); }
  void fact(const std::string& name, const std::string& text) { step_.facts.emplace_back(name, text); }

  void cutters(Operation operation) {
    bool any = false;
    for (const auto& [use, cutter] : named_cutters(operation)) {
      std::string text = part_words(use) + ": " + cutter.name + ", " + stock_length(board_.units, cutter.diameter) +
                         (cutter.shape == CutterShape::ball ? " ball" : " flat") + ", cuts " +
                         length(cut_width(cutter)) + " wide, " + length(cutter.cutting_length) + " long";
      if (cutter.rpm) text += ", " + std::to_string(std::lround(*cutter.rpm)) + " rpm";
      if (cutter.feed) text += ", feed " + length(*cutter.feed) + " a minute";
      if (cutter.pass_depth) text += ", " + length(*cutter.pass_depth) + " a pass";
      fact("cutter", text);
      any = true;
    }
    if (any) return;
    fact("cutter", "none is named for it on the board; write down the one you take:");
  }

  /// The cutters of an operation with what each does of it, in the order in which its parts are cut. A nut's cutter is
  /// named only where there is a seat.
  std::vector<std::pair<CutterUse, Cutter>> named_cutters(Operation operation) const {
    std::vector<std::pair<CutterUse, Cutter>> named;
    for (const CutterUse use : uses_of(operation)) {
      if (use == CutterUse::nut && !layout_.nut) continue;
      for (const Cutter& cutter : board_.cutters)
        if (has_use(cutter, use)) named.emplace_back(use, cutter);
    }
    return named;
  }

  void pockets() {
    std::map<double, std::set<int>> inlays_at;
    for (std::size_t i = 0; i < board_.inlays.size(); ++i) {
      const auto pockets = std::count_if(ready_.pockets().begin(), ready_.pockets().end(),
                                         [&](const Pocket& pocket) { return pocket.inlay == static_cast<int>(i); });
      const auto measured = std::count_if(ready_.pockets().begin(), ready_.pockets().end(), [&](const Pocket& pocket) {
        return pocket.inlay == static_cast<int>(i) && pocket.depth;
      });
      if (measured == 0 || measured < pockets) inlays_at[board_.inlays[i].depth].insert(static_cast<int>(i) + 1);
    }
    for (const Pocket& pocket : ready_.pockets())
      if (pocket.depth) inlays_at[*pocket.depth].insert(pocket.inlay + 1);
    for (const auto& [depth, inlays] : inlays_at) {
      const double floor = board_.board.thickness - depth;
      fact("depth", (inlays.size() > 1 ? "inlays " : "inlay ") + words_of(inlays) + ": level floor at " + z(floor) +
                        ", " + length(depth) + " below the finished middle, " +
                        length(top(Operation::pockets) - floor) + " below the wood's top");
    }
    for (const Marker& marker : markers_along(ready_))
      step_.ticks.push_back("pocket at fret " + std::to_string(marker.fret) + " (" + place(marker.centre) + ")");
    cuts();
  }

  /// The builder's own cuts from the top and right through.
  void cuts() {
    bool through = false;
    for (const Cut& cut : board_.cuts) {
      if (operation_of(cut) != Operation::pockets) continue;
      const std::string name = "cut \"" + cut.name + "\"";
      const double floor = board_.board.thickness - cut.depth;
      if (is_through(cut) && !through)
        fact("depth",
             "cuts right through: to the glue face at " + z(0) + ", " + length(top(Operation::pockets)) + " of wood");
      through = through || is_through(cut);
      if (!is_through(cut))
        fact("depth", name + ": level floor at " + z(floor) + ", " + length(cut.depth) +
                          " below the finished middle, " + length(top(Operation::pockets) - floor) +
                          " below the wood's top");
      step_.ticks.push_back(name + " (" + place(middle_of(cut, board_.hand)) + ")");
    }
  }

  void thickness() {
    fact("depth", "mill the blank flat, from " + length(layout_.blank_thickness) + " to " +
                      length(thickness_to(board_)) + ": its top at " + z(thickness_to(board_)));
    step_.ticks.push_back("blank thicknessed");
  }

  void inlay() {
    fact("depth", "pieces are cut flat from their sheets, right through");
    for (const ListedPiece& listed : pieces_by_name(ready_.pieces()))
      step_.ticks.push_back(listed.piece.name + " at fret " + std::to_string(listed.piece.fret));
  }

  void radius() {
    const Box& strip = layout_.strip;
    double high = -1e300, low = 1e300;
    for (int i = 0; i <= stations; ++i) {
      const double x = strip.low.x + (strip.high.x - strip.low.x) * i / stations;
      high = std::max(high, surface_.height(x, 0));
      for (const double y : {strip.low.y, strip.high.y})
        if (surface_.exists(x, y)) low = std::min(low, surface_.height(x, y));
    }
    fact("depth", "from the wood's top at " + z(top(Operation::radius)) + " to the middle at " +
                      z(high + board_.sanding) + " and at the lowest edge of the drawn rectangle " +
                      z(low + board_.sanding));
    if (board_.sanding > 0) fact("sanding", length(board_.sanding) + " stays on top for the sanding");
    if (!surface_.scallops.empty()) {
      const ScallopedSpace &first = surface_.scallops.front(), &last = surface_.scallops.back();
      fact("scallops", "spaces " + std::to_string(first.fret) + " to " + std::to_string(last.fret) + ", " +
                           length(first.depth) + (first.depth == last.depth ? "" : " to " + length(last.depth)) +
                           " deep in the middle, " + length(board_.scallop->land) + " left beside each slot's middle");
      step_.ticks.push_back("scallops");
    }
    step_.ticks.push_back("playing surface");
  }

  void slots() {
    double low = 1e300, high = -1e300, path = 0;
    const double depth = slot_depth(board_);
    for (const Slot& slot : ready_.slots()) {
      for (const Point p : {slot.bass_end, between(slot.bass_end, slot.treble_end, 0.5), slot.treble_end}) {
        const double floor =
            board_.slots.floor == SlotFloor::level ? board_.board.thickness - depth : surface_.height(p) - depth;
        low = std::min(low, floor);
        high = std::max(high, floor);
      }
      path += distance(slot.bass_end, slot.treble_end);
      if (slot.part == 0) step_.ticks.push_back("slot of fret " + std::to_string(slot.fret));
    }
    if (!ready_.slots().empty())
      fact("depth", "slots " + length(board_.slots.width) + " wide, " + length(depth) +
                        " below the finished surface: " +
                        (board_.slots.floor == SlotFloor::level
                             ? "level floor at " + z(low)
                             : "floor follows the surface, from " + z(high) + " down to " + z(low) + " at an edge"));
    if (layout_.nut) {
      fact("depth",
           std::string("nut ") + (layout_.nut->shelf ? "ledge" : "slot") + ": " +
               (board_.nut.floor == NutFloor::arc ? "floor follows the surface, " + length(layout_.nut->depth) +
                                                        " below the finished one; on the centre line at "
                                                  : "level floor at ") +
               z(board_.board.thickness - layout_.nut->depth));
      step_.ticks.push_back("nut seat");
    }
    time(CutterUse::slot, path, depth);
  }

  void outline() {
    fact("depth", "right through to the glue face at " + z(0) + ", " + length(top(Operation::outline)) +
                      " of wood in the middle");
    if (board_.binding)
      fact("binding",
           "both edges cut back by " + length(ledge_width(*board_.binding)) +
               (board_.binding->lines.empty() ? "" : " for binding and lines") +
               (board_.binding->height > 0 ? ", down by " + length(board_.binding->height) : ", all the way"));
    if (works_edges(board_) && board_.edges->stage == EdgeStage::machine) fact("edges", worked_edges());
    step_.ticks.push_back("outline");
    if (board_.binding) step_.ticks.push_back("binding");
    time(CutterUse::outline, length_of(layout_.outline), top(Operation::outline));
  }

  std::string worked_edges() const {
    const Edges& edges = *board_.edges;
    if (edges.roll > 0) return "both long edges rolled, radius " + length(edges.roll);
    return "both long edges bevelled, " + length(edges.bevel) + " wide across, " + decimal(edges.bevel_angle_degrees) +
           " degrees to the side";
  }

  /// Nothing without a feed: a time would be a guess.
  void time(CutterUse use, double path, double depth) {
    for (const Cutter& cutter : board_.cutters) {
      if (!has_use(cutter, use) || !cutter.feed) continue;
      const int passes =
          cutter.pass_depth ? static_cast<int>(std::ceil(depth / *cutter.pass_depth - tolerance::same)) : 1;
      char minutes[32];
      std::snprintf(minutes, sizeof minutes, "%.1f", passes * path / *cutter.feed);
      fact("time", std::string("estimate: ") + minutes + " min of cutting with " + cutter.name + ", " + length(path) +
                       " of path" + (passes > 1 ? " in " + std::to_string(passes) + " passes" : "") +
                       "; ways between the cuts not counted");
      return;
    }
  }

  double top(Operation operation) const { return wood_top_before(ready_, operation); }

  std::string place(Point p) const {
    const Point own = setup_.from_board(p);
    return "x " + measure(board_, own.x) + ", y " + measure(board_, own.y);
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const Layout& layout_;
  const Surface& surface_;
  const ResolvedSetup& setup_;
  JobStep step_;
};

}  // namespace

std::string stage_after(Operation operation) {
  switch (operation) {
    case Operation::pockets:
      return "pocketed";
    case Operation::inlay:
      return "";
    case Operation::radius:
      return "radiused";
    case Operation::slots:
      return "slotted";
    case Operation::outline:
      return "board";
    case Operation::thickness:
      return "thicknessed";
  }
  return {};
}

std::vector<JobStep> job_steps(const PreparedBoard& ready, const ResolvedSetup& setup) {
  std::vector<Operation> operations = setup.operations;
  const auto turn = [&](Operation operation) {
    const std::vector<Operation>& order = ready.board().order;
    return std::find(order.begin(), order.end(), operation) - order.begin();
  };
  std::stable_sort(operations.begin(), operations.end(), [&](Operation a, Operation b) { return turn(a) < turn(b); });
  Steps steps(ready, setup);
  std::vector<JobStep> list;
  for (const Operation operation : operations) list.push_back(steps.step(operation));
  return list;
}

}  // namespace sagitta
