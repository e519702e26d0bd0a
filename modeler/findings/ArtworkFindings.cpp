#include <algorithm>
#include <functional>
#include <map>

#include "findings/PieceDepth.hpp"
#include "findings/Work.hpp"
#include "inlay/Refit.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

/// The worst piece of one marker by one rule, and how many break it. A drawing may have a hundred pieces: one finding
/// names the worst and counts the others.
struct Worst {
  double value = 1e300;
  int count = 0;
  std::function<void(const std::string& others)> tell;
};

class ArtworkCheck {
 public:
  ArtworkCheck(const Subject& subject, Judge& judge) : subject_(subject), judge_(judge) {
    std::vector<Box> boxes;
    if (subject.inlays)
      for (const InlayPiece& piece : subject.inlays->pieces) boxes.push_back(bounds(piece.pocket));
    places_ = BoxIndex(boxes);
  }

  void run() {
    for (const LetPiece& let : subject_.artwork) {
      judge_depth(let);
      judge_slots(let);
      judge_edge(let);
      judge_neighbours(let);
    }
    for (auto& [key, worst] : worst_)
      worst.tell(worst.count == 1 ? "" : " (the worst of " + std::to_string(worst.count) + " pieces there)");
  }

 private:
  /// Keeps it when it is the marker's worst by this rule; says whether the rule is broken. Of two rules for one harm,
  /// the graver is asked first.
  bool hold(const LetPiece& let, const Rule& broken, double value, Point at, double z, const std::string& message,
            const std::string& suggestion, const std::optional<Fix>& fix = {}) {
    if (!judge_.breaks(broken, value)) return false;
    Worst& worst = worst_[{let.piece().inlay, let.piece().fret, &broken}];
    ++worst.count;
    const double badness = broken.bar == Bar::most ? -value : value;
    if (badness >= worst.value) return true;
    worst.value = badness;
    const Spot spot{at, z, id_of(let.piece()), let.name()};
    worst.tell = [this, &broken, value, spot, message, suggestion, fix](const std::string& others) {
      judge_.hold(broken, value, spot, message + others, suggestion, fix);
    };
    return true;
  }

  void judge_depth(const LetPiece& let) {
    const auto depth = piece_depth(subject_.board, subject_.layout, subject_.surface, let.piece());
    if (!depth) return;
    const std::string key = "inlays[" + std::to_string(let.piece().inlay) + "].depth";
    const double lack = judge_.limit(rule("inlay-too-thin")) - depth->least;
    const std::string deeper =
        "make the pocket and the piece " + judge_.shown(lack) + " thicker, or the drawing narrower";
    const bool own_thickness =
        subject_.board.inlays[static_cast<std::size_t>(let.piece().inlay)].piece_thickness.has_value();
    std::optional<Fix> deepen;
    if (!own_thickness) deepen = Fix{key, judge_.up(let.piece().depth + lack)};
    const double z = let.floor() + depth->least;
    if (!hold(let, rule("inlay-sanded-through"), depth->least, depth->least_at, z,
              "the radius goes through " + let.name() + ": where it lies farthest out it is cut " +
                  judge_.shown(-depth->least) + " deeper than the pocket, and the piece is lost",
              deeper, deepen))
      hold(let, rule("inlay-too-thin"), depth->least, depth->least_at, z,
           let.name() + " is only " + judge_.shown(depth->least) +
               " thick where it lies farthest out after the radius is cut",
           deeper, deepen);
    const Rule& deep = rule("pocket-too-deep");
    hold(let, deep, depth->spare, depth->most_at, let.floor(),
         "the pocket of " + let.name() + " is " + judge_.shown(depth->most) + " deep and the piece " +
             judge_.shown(let.piece().thickness) + " thick: it will lie " +
             (depth->spare < 0 ? "below the surface" : "too low to be sanded flush"),
         "make the pocket " + judge_.shown(judge_.limit(deep) - depth->spare) + " shallower",
         Fix{key, judge_.down(let.piece().depth - judge_.limit(deep) + depth->spare)});
  }

  void judge_slots(const LetPiece& let) {
    for (const Slot& slot : subject_.layout.slots) {
      const SlotMeeting meeting = let.against(subject_.layout, slot);
      const double z = subject_.surface.height(meeting.at);
      const std::string slot_called = slot_name(slot);
      if (!hold(let, rule("inlay-on-slot"), meeting.wall, meeting.at, z,
                let.name() + " lies on " + slot_called + ", by " + judge_.shown(-meeting.wall) +
                    ": the slot cuts the piece and the fret has no wood to hold it",
                "end the drawing before the slot, or accept it with a limit of its own and glue that fret") &&
          meeting.wall > 0) {
        const double sure = meeting.wall - reclamp_loss(subject_.board, Operation::pockets, Operation::slots);
        hold(let, rule("thin-wall-at-slot"), sure, meeting.at, z,
             "between " + let.name() + " and " + slot_called + " only " + judge_.shown(sure) +
                 " of wood is sure to stay: it may break out when the fret goes in",
             "make the drawing smaller, or shift it " + judge_.shown(judge_.limit(rule("thin-wall-at-slot")) - sure) +
                 " away from the slot");
      }
      if (!meeting.cuts_piece) continue;
      hold(let, rule("inlay-sliver"), meeting.sliver, meeting.sliver_at, z,
           slot_called + " cuts a sliver " + judge_.shown(meeting.sliver) + " wide off " + let.name(),
           "shift the drawing, or let it end well before or well behind the slot");
      const double stands = proud_at(subject_, let.piece().depth, let.piece().thickness, meeting.at);
      hold(let, rule("proud-in-slot-path"), stands, meeting.at, z,
           let.name() + " stands " + judge_.shown(stands) + " proud when " + slot_called + " is cut through it",
           "level the pieces before slotting: put \"radius\" between \"inlay\" and \"slots\" in work.order");
    }
  }

  void judge_edge(const LetPiece& let) {
    const EdgeMeeting meeting = let.against_edges(subject_.layout);
    const double binding = subject_.board.binding ? subject_.board.binding->width : 0;
    const double sure = meeting.wall - binding - reclamp_loss(subject_.board, Operation::pockets, Operation::outline);
    const std::string where = binding > 0 ? "binding" : "edge";
    hold(let, rule("thin-wall-at-edge"), sure, meeting.at, let.floor(),
         sure > 0 ? "between " + let.name() + " and the " + where + " only " + judge_.shown(sure) +
                        " of wood is sure to stay: it may break out"
                  : let.name() + " may run " + judge_.shown(-sure) + " over the " + where,
         "make the drawing narrower or shift it by " + judge_.shown(judge_.limit(rule("thin-wall-at-edge")) - sure));
  }

  /// Other markers' pieces: those of one drawing are fitted to each other.
  void judge_neighbours(const LetPiece& let) {
    const Rule& close = rule("inlays-close");
    for (const int i : places_.near(let.box().grown(judge_.limit(close)))) {
      const InlayPiece& other = subject_.inlays->pieces[static_cast<std::size_t>(i)];
      const bool same_marker = other.inlay == let.piece().inlay && other.fret == let.piece().fret;
      const bool told = !other.shape && &other < &let.piece();
      if (same_marker || told) continue;
      const LetPiece beside(subject_.board, other);
      const double wall = let.wall(beside);
      const Box &a = let.box(), &b = beside.box();
      const Point at{(std::max(a.low.x, b.low.x) + std::min(a.high.x, b.high.x)) / 2,
                     (std::max(a.low.y, b.low.y) + std::min(a.high.y, b.high.y)) / 2};
      hold(let, close, wall, at, subject_.surface.height(at),
           wall > 0
               ? "between " + let.name() + " and " + beside.name() + " only " + judge_.shown(wall) + " of wood is left"
               : let.name() + " and " + beside.name() + " overlap by " + judge_.shown(-wall) +
                     ": there is no wood between them, and one pocket is cut through the other's piece",
           "move them " + judge_.shown(judge_.limit(close) - wall) + " apart");
    }
  }

  const Subject& subject_;
  Judge& judge_;
  BoxIndex places_;  ///< boxes of all pockets, the simple shapes' too
  std::map<std::tuple<int, int, const Rule*>, Worst> worst_;
};

}  // namespace

void judge_artwork(const Subject& subject, Judge& judge) { ArtworkCheck(subject, judge).run(); }

}  // namespace sagitta
