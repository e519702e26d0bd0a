#include <functional>
#include <map>
#include <set>

#include "board/ShapeKeys.hpp"
#include "inlaid/InlayFamilies.hpp"
#include "inlaid/PieceDepth.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

/// The worst piece of one marker by one rule, and which pieces break it. A drawing may have a hundred pieces: one
/// finding names the worst and counts the others.
struct Worst {
  double value = 1e300;
  std::set<const InlayPiece*> pieces;
  std::function<void(const std::string& others)> tell;
};

class InlayCheck {
 public:
  InlayCheck(const Subject& subject, Judge& judge) : subject_(subject), judge_(judge) {}

  void run() {
    for (const LetPiece& let : subject_.let) {
      judge_depth(let);
      judge_slots(let);
      judge_edge(let);
    }
    judge_neighbours();
    for (auto& [key, worst] : worst_)
      worst.tell(worst.pieces.size() == 1 ? ""
                                          : " (the worst of " + std::to_string(worst.pieces.size()) + " pieces there)");
  }

 private:
  /// What is told of a piece, where, and what to do about it.
  struct Told {
    Point at;
    double z = 0;
    std::string message, suggestion;
    std::optional<Fix> fix{};
  };

  /// Keeps it when it is the marker's worst by this rule; says whether the rule is broken. Of two rules for one harm,
  /// the graver is asked first. `beside`: the other marker, for a wall between two.
  bool hold(const LetPiece& let, const Rule& broken, double value, const Told& told, int beside = -1) {
    if (!judge_.breaks(broken, value)) return false;
    Worst& worst = worst_[{let.marker(), beside, &broken}];
    worst.pieces.insert(&let.piece());
    const double badness = broken.bar == Bar::most ? -value : value;
    if (badness >= worst.value) return true;
    worst.value = badness;
    const Spot spot{told.at, told.z, let.where(), let.name()};
    worst.tell = [this, &broken, value, spot, told](const std::string& others) {
      judge_.hold(broken, value, spot, told.message + others, told.suggestion, told.fix);
    };
    return true;
  }

  const Inlay& inlay_of(const LetPiece& let) const {
    return subject_.prepared.board().inlays[static_cast<std::size_t>(let.piece().inlay)];
  }
  std::string key(const LetPiece& let, std::string_view of) const {
    return "inlays[" + std::to_string(let.piece().inlay) + "]." + std::string(of);
  }
  double height(Point p) const {
    return subject_.prepared.surface().exists(p.x, p.y) ? subject_.prepared.surface().height(p) : 0;
  }

  /// The piece made smaller, so that its wall grows by `lack`.
  std::optional<Fix> smaller(const LetPiece& let, double lack) const {
    const auto size = size_all_round(inlay_of(let));
    if (!size) return {};
    return Fix{key(let, size->key), judge_.down(size->value - 2 * lack)};
  }

  void judge_depth(const LetPiece& let) {
    const auto depth = piece_depth(subject_.prepared, let.piece());
    if (!depth) return;
    const double lack = judge_.limit(rule("inlay-too-thin")) - depth->least;
    // A piece of its own thickness does not follow the pocket down.
    std::optional<Fix> deepen;
    if (!inlay_of(let).piece_thickness) deepen = Fix{key(let, "depth"), judge_.up(let.piece().depth + lack)};
    Told told{depth->least_at, let.floor() + depth->least, "",
              "make the pocket and the piece " + judge_.shown(lack) + " thicker, or the piece narrower", deepen};
    const Surface& surface = subject_.prepared.surface();
    const bool hollow = surface.lowest(depth->least_at) < surface.height(depth->least_at);
    const std::string where = hollow ? "under the scallop or the worked edge" : "at its outer rim";
    told.message = "the radius goes through " + let.name() + ": " + where + " it is cut " +
                   judge_.shown(-depth->least) + " deeper than the pocket, and the piece is lost";
    if (!hold(let, rule("inlay-sanded-through"), depth->least, told)) {
      told.message =
          let.name() + " is only " + judge_.shown(depth->least) + " thick " + where + " after the radius is cut";
      hold(let, rule("inlay-too-thin"), depth->least, told);
    }
    const Rule& deep = rule("pocket-too-deep");
    const double shallower = judge_.limit(deep) - depth->spare;
    hold(let, deep, depth->spare,
         {depth->most_at, let.floor(),
          "the pocket of " + let.name() + " is " + judge_.shown(depth->most) + " deep and the piece " +
              judge_.shown(let.piece().thickness) + " thick: it will lie " +
              (depth->spare < 0 ? "below the surface" : "too low to be sanded flush"),
          "make the pocket " + judge_.shown(shallower) + " shallower",
          Fix{key(let, "depth"), judge_.down(let.piece().depth - shallower)}});
  }

  void judge_slots(const LetPiece& let) {
    for (const Slot& slot : subject_.prepared.layout().slots) {
      const SlotMeeting meeting = let.against(subject_.prepared.layout(), slot);
      judge_wall(let, slot, meeting);
      if (meeting.cuts_piece) judge_cut(let, slot, meeting);
    }
  }

  void judge_wall(const LetPiece& let, const Slot& slot, const SlotMeeting& meeting) {
    const double z = height(meeting.at);
    const Rule &on = rule("inlay-on-slot"), &thin = rule("thin-wall-at-slot");
    if (hold(let, on, meeting.wall,
             {meeting.at, z,
              let.name() + " lies on " + slot_name(slot) + ", by " + judge_.shown(-meeting.wall) +
                  ": the slot cuts the piece and the fret has no wood to hold it",
              "make it smaller or shift it by " + judge_.shown(-meeting.wall),
              smaller(let, judge_.limit(on) - meeting.wall)}) ||
        meeting.wall <= 0)
      return;
    const double sure = meeting.wall - reclamp_loss(subject_.prepared.board(), Operation::pockets, Operation::slots);
    hold(let, thin, sure,
         {meeting.at, z,
          "between " + let.name() + " and " + slot_name(slot) + " only " + judge_.shown(sure) +
              " of wood is sure to stay: it may break out when the fret goes in",
          "make it " + judge_.shown(2 * (judge_.limit(thin) - sure)) + " shorter along the board",
          smaller(let, judge_.limit(thin) - sure)});
  }

  /// What a slot cuts off a piece, and how far the piece stands in the slot cutter's way.
  void judge_cut(const LetPiece& let, const Slot& slot, const SlotMeeting& meeting) {
    const double z = height(meeting.at);
    hold(let, rule("inlay-sliver"), meeting.sliver,
         {meeting.sliver_at, z,
          slot_name(slot) + " cuts a sliver " + judge_.shown(meeting.sliver) + " wide off " + let.name(),
          "shift it, or let it end well before or well behind the slot"});
    const double stands = proud_at(subject_, let.piece().depth, let.piece().thickness, meeting.at);
    hold(let, rule("proud-in-slot-path"), stands,
         {meeting.at, z,
          let.name() + " stands " + judge_.shown(stands) + " proud when " + slot_name(slot) + " is cut through it",
          "level the pieces before slotting: put \"radius\" between \"inlay\" and \"slots\" in work.order"});
  }

  void judge_edge(const LetPiece& let) {
    const WoodWall wall = let.against_edges(subject_.prepared.layout());
    const auto& bound = subject_.prepared.board().binding;
    const double binding = bound ? ledge_width(*bound) : 0;
    const double sure =
        wall.width - binding - reclamp_loss(subject_.prepared.board(), Operation::pockets, Operation::outline);
    const std::string where = binding > 0 ? "binding" : "edge";
    const double lack = judge_.limit(rule("thin-wall-at-edge")) - sure;
    hold(let, rule("thin-wall-at-edge"), sure,
         {wall.at, height(wall.at),
          sure > 0 ? "between " + let.name() + " and the " + where + " only " + judge_.shown(sure) +
                         " of wood is sure to stay: it may break out"
          : judge_.shows(-sure) ? let.name() + " may run " + judge_.shown(-sure) + " over the " + where
                                : let.name() + " may reach the " + where,
          "make it narrower or shift it by " + judge_.shown(lack), smaller(let, lack)});
  }

  /// Other markers' pieces: those of one drawing are fitted to each other.
  void judge_neighbours() {
    const double most = std::max(judge_.limit(rule("inlays-close")), 0.0) + tolerance::same;
    for (std::size_t i = 0; i < subject_.let.size(); ++i)
      for (const int k : subject_.let_places.near(subject_.let[i].box(), most))
        if (static_cast<std::size_t>(k) > i)
          judge_pair(subject_.let[i], subject_.let[static_cast<std::size_t>(k)], most);
  }

  void judge_pair(const LetPiece& one, const LetPiece& other, double most) {
    // The same pocket from two inlays is one pocket.
    if (one.marker() == other.marker() || one.piece().pocket == other.piece().pocket) return;
    const WoodWall wall = one.wall(other, most);
    const Rule& close = rule("inlays-close");
    // A pair has one name.
    const std::string both =
        one.name() == other.name() ? "the two pieces of " + one.name() : one.name() + " and " + other.name();
    hold(other, close, wall.width,
         {wall.at, height(wall.at),
          wall.width > 0 ? "between " + both + " " + judge_.wood_left(wall.width)
          : judge_.shows(-wall.width)
              ? both + " overlap by " + judge_.shown(-wall.width) + ": there is no wood between them"
              : both + " touch: there is no wood between them",
          "move them " + judge_.shown(judge_.limit(close) - wall.width) + " apart"},
         one.marker());
  }

  const Subject& subject_;
  Judge& judge_;
  std::map<std::tuple<int, int, const Rule*>, Worst> worst_;
};

/// Of each inlay, the piece whose corners the cutter reaches least.
void judge_corners(const Subject& subject, Judge& judge) {
  std::map<int, const LetPiece*> sharpest;
  for (const LetPiece& let : subject.let)
    if (const LetPiece*& most = sharpest[let.piece().inlay]; !most || let.piece().departure > most->piece().departure)
      most = &let;
  const double cutter = inlay_cutter_radius(subject.prepared.board());
  for (const auto& [inlay, let] : sharpest) {
    const InlayPiece& piece = let->piece();
    const double z = subject.prepared.surface().exists(piece.departure_at.x, piece.departure_at.y)
                         ? subject.prepared.surface().height(piece.departure_at)
                         : 0;
    const FeatureId id{FeatureId::Kind::inlay, inlay, piece.fret, piece.pair};
    const std::string name = inlay_name({inlay, piece.fret, {}, piece.pair});
    judge.hold(rule("corner-rounded"), piece.departure, {piece.departure_at, z, id, name},
               "a cutter of radius " + judge.shown(cutter) + " stays " + judge.shown(piece.departure) +
                   " away from the corners of " + name + ": pocket and piece get round corners",
               "name a smaller cutter for pocket-detail and piece, or finish the corners by hand");
  }
}

/// How far a piece ends below the wood round it when it is glued in: below the raw top, or below the highest place of
/// the surface over it where the radius is cut before.
std::optional<double> under_top(const Subject& subject, const LetPiece& let) {
  const Board& board = subject.prepared.board();
  if (!comes_before(board, Operation::radius, Operation::inlay))
    return raw_top(board, subject.prepared.layout()) - let.floor() - let.piece().thickness;
  const auto depth = piece_depth(subject.prepared, let.piece());
  return depth ? std::optional(board.sanding - depth->spare) : std::nullopt;
}

/// Of each inlay, the piece that ends furthest below the wood round it.
void judge_tops(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  std::map<int, std::pair<double, const LetPiece*>> lowest;
  for (const LetPiece& let : subject.let)
    if (const auto under = under_top(subject, let)) {
      const auto [own, fresh] = lowest.try_emplace(let.piece().inlay, *under, &let);
      if (!fresh && *under > own->second.first) own->second = {*under, &let};
    }
  const std::string top = comes_before(board, Operation::radius, Operation::inlay) ? "the playing surface"
                          : has_thickness(board)                                   ? "the top of the milled blank"
                                                                                   : "the blank's top";
  const bool flat = !has_thickness(board) && !comes_before(board, Operation::radius, Operation::inlay);
  const std::string earlier = flat ? "begin work.order with \"thickness\", or " : "";
  for (const auto& [inlay, worst] : lowest) {
    const auto& [under, let] = worst;
    const double thick = let->piece().thickness + under - judge.limit(rule("piece-under-top"));
    std::optional<Fix> fix;
    const std::string row = "inlays[" + std::to_string(inlay) + "]";
    if (board.inlays[static_cast<std::size_t>(inlay)].piece_thickness)
      fix = Fix{row + ".piece_thickness", judge.up(thick)};
    judge.hold(rule("piece-under-top"), under,
               {let->middle(), let->floor() + let->piece().thickness, let->where(), let->name()},
               let->name() + " ends " + judge.shown(under) + " below " + top + " when it is glued in",
               std::string("press it down with a block that fits its pocket, or ") + earlier + "make the piece " +
                   judge.shown(thick) + " thick",
               fix);
  }
}

}  // namespace

void judge_inlays(const Subject& subject, Judge& judge) {
  InlayCheck(subject, judge).run();
  judge_corners(subject, judge);
  judge_tops(subject, judge);
}

}  // namespace sagitta
