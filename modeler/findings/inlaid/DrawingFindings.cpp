#include <algorithm>
#include <map>

#include "inlaid/InlayFamilies.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

/// Islands drawn nearer to each other touch: their pockets are meant to run together. mm.
constexpr double drawn_touching = 0.001;

/// What the cutters make of one colour of one drawing.
struct ColourSum {
  std::string material;
  double drawn = 0, lost = 0, most_lost = 0;
  bool made = false;  ///< there is a piece
  Point lost_at;
  double left() const { return drawn > 0 ? 100 * (drawn - lost) / drawn : 0; }
};

/// All regions of one drawing together, at one marker.
struct DrawingSum {
  int inlay = 0, fret = 0;
  const RegionFigures* sharpest = nullptr;   ///< departs most
  const RegionFigures* narrowest = nullptr;  ///< has the narrowest drawn gap
  const RegionFigures* stuck = nullptr;      ///< has a gap that no cutter cuts
  const RegionFigures* fullest = nullptr;    ///< has most that was not drawn
  double drawn = 0, lost = 0, gap = 0, voids = 0, covered = 0, added = 0, cleared = 0, detail = 0, most_detail = 0;
  Point detail_at;
  std::optional<double> piece_neck, pocket_neck;
  std::map<std::string, ColourSum> colours;

  FeatureId id() const { return {FeatureId::Kind::inlay, inlay, fret}; }
  std::string name() const { return feature_name(id()); }
};

void narrow(std::optional<double>& least, const std::optional<double>& neck) {
  if (neck && (!least || *neck < *least)) least = neck;
}

void add(const RegionFigures& region, DrawingSum& sum) {
  sum.inlay = region.inlay, sum.fret = region.fret;
  if (!sum.sharpest || region.departure > sum.sharpest->departure) sum.sharpest = &region;
  if (region.drawn_gap && (!sum.narrowest || *region.drawn_gap < *sum.narrowest->drawn_gap)) sum.narrowest = &region;
  if (region.left_gap && (!sum.stuck || *region.left_gap < *sum.stuck->left_gap)) sum.stuck = &region;
  if (!sum.fullest || region.added_area > sum.fullest->added_area) sum.fullest = &region;
  sum.drawn += region.drawn_area, sum.lost += region.lost_area, sum.added += region.added_area;
  sum.gap += region.gap_area, sum.voids += region.void_area, sum.covered += region.covered_area;
  sum.cleared += region.cleared_area, sum.detail += region.detail_area;
  if (region.detail_area > sum.most_detail) sum.most_detail = region.detail_area, sum.detail_at = region.detail_at;
  narrow(sum.piece_neck, region.piece_neck);
  narrow(sum.pocket_neck, region.pocket_neck);
  ColourSum& colour = sum.colours[region.colour];
  colour.material = region.material;
  colour.drawn += region.drawn_area, colour.lost += region.lost_area;
  colour.made = colour.made || region.smallest_piece > 0;
  if (region.lost_area >= colour.most_lost) colour.most_lost = region.lost_area, colour.lost_at = region.lost_at;
}

std::string rounded(double percent) { return std::to_string(static_cast<int>(percent)) + " %"; }

/// Of each inlay, each rule is told once, at the marker where it is worst.
class DrawingCheck {
 public:
  DrawingCheck(const Subject& subject, Judge& judge)
      : subject_(subject), judge_(judge), cut_(2 * inlay_cutter_radius(subject.prepared.board())) {
    std::map<std::pair<int, int>, std::size_t> places;
    for (const RegionFigures& region : subject.prepared.inlays().figures) {
      const auto [at, fresh] = places.try_emplace({region.inlay, region.fret}, sums_.size());
      if (fresh) sums_.emplace_back();
      add(region, sums_[at->second]);
    }
  }

  void run() {
    std::map<int, std::vector<const DrawingSum*>> inlays;
    for (const DrawingSum& sum : sums_) inlays[sum.inlay].push_back(&sum);
    for (const auto& [inlay, sums] : inlays) {
      judge_colours(sums);
      judge_gap(worst(sums, [](const DrawingSum& sum) { return sum.narrowest ? -*sum.narrowest->drawn_gap : -1e300; }));
      judge_added(worst(sums, [](const DrawingSum& sum) { return sum.added; }));
      judge_lost(worst(sums, [](const DrawingSum& sum) { return sum.lost; }));
    }
    judge_meetings();
  }

 private:
  template <class Badness>
  static const DrawingSum& worst(const std::vector<const DrawingSum*>& sums, Badness badness) {
    return **std::max_element(sums.begin(), sums.end(),
                              [&](const DrawingSum* a, const DrawingSum* b) { return badness(*a) < badness(*b); });
  }

  Spot spot(Point p, const FeatureId& id, const std::string& name) const {
    return {p, subject_.prepared.surface().exists(p.x, p.y) ? subject_.prepared.surface().height(p) : 0, id, name};
  }

  /// Each colour where least of it is left.
  void judge_colours(const std::vector<const DrawingSum*>& sums) {
    std::map<std::string, const DrawingSum*> least;
    for (const DrawingSum* sum : sums)
      for (const auto& [colour, own] : sum->colours) {
        const DrawingSum*& so_far = least[colour];
        if (!so_far || own.left() < so_far->colours.at(colour).left()) so_far = sum;
      }
    for (const auto& [colour, sum] : least) {
      const ColourSum& own = sum->colours.at(colour);
      const std::string what = own.material + " (" + colour + ") of " + sum->name();
      const std::string mend =
          "name smaller cutters for pocket-detail and piece, draw that colour wider, or make the drawing larger";
      if (judge_.hold(rule("colour-lost"), own.made ? 1 : 0, spot(own.lost_at, sum->id(), sum->name()),
                      "no piece is left of the " + what + ": the " + shown_area(subject_.prepared.board(), own.drawn) +
                          " drawn in it are narrower than the cutter, " + judge_.shown(cut_) +
                          ", or within the clearance of other pieces",
                      mend))
        continue;
      judge_.hold(rule("colour-mostly-lost"), own.left(), spot(own.lost_at, sum->id(), sum->name()),
                  "of the " + shown_area(subject_.prepared.board(), own.drawn) + " drawn in the " + what +
                      " the pieces fill " + rounded(own.left()),
                  mend);
    }
  }

  void judge_gap(const DrawingSum& sum) {
    if (sum.stuck)
      judge_.hold(rule("gap-too-narrow"), *sum.stuck->left_gap - cut_,
                  spot(sum.stuck->left_gap_at, sum.id(), sum.name()),
                  "a gap of " + judge_.shown(*sum.stuck->left_gap) + " stays in the " + sum.stuck->material + " of " +
                      sum.name() + " and the cutter cuts " + judge_.shown(cut_) + ": it cannot be cut as it is",
                  "make the gap there wider in the drawing, or close it");
    if (!sum.narrowest) return;
    const RegionFigures& region = *sum.narrowest;
    judge_.hold(rule("gap-too-narrow"), *region.drawn_gap - cut_, spot(region.drawn_gap_at, sum.id(), sum.name()),
                "a gap in the " + region.material + " of " + sum.name() + " is drawn " +
                    judge_.shown(*region.drawn_gap) + " wide and the cutter cuts " + judge_.shown(cut_) +
                    ": the gap is filled or made wider",
                wider_gap(*region.drawn_gap));
  }

  /// What to do about a gap; cutters are named only where there may be some that go through it.
  std::string wider_gap(double gap) const {
    constexpr double thinnest_cutter = 0.2;  // mm; common practice, no source
    if (gap < thinnest_cutter) return "draw the gap at least " + judge_.shown(judge_.up(cut_)) + " wide, or close it";
    return "name cutters for pocket-detail and piece that cut " + judge_.shown(judge_.down(gap)) +
           " or less, or draw the gap wider";
  }

  void judge_added(const DrawingSum& sum) {
    judge_.hold(rule("area-added"), sum.added, spot(sum.fullest->added_at, sum.id(), sum.name()),
                "the pieces of " + sum.name() + " fill " + shown_area(subject_.prepared.board(), sum.added) +
                    " that are not drawn for them: inner corners and gaps that the cutter does not reach",
                "look at the drawing in the window before it is cut; smaller cutters add less");
  }

  void judge_lost(const DrawingSum& sum) {
    const RegionFigures& most = *sum.sharpest;
    std::string necks;
    if (sum.piece_neck) necks += "; the narrowest neck of a piece is " + judge_.shown(*sum.piece_neck);
    if (sum.pocket_neck)
      necks += (necks.empty() ? "; the narrowest neck" : ",") + std::string(" of a pocket ") +
               (necks.empty() ? "is " : "") + judge_.shown(*sum.pocket_neck);
    const std::string covered = sum.covered > 0.005 ? ", " + shown_area(subject_.prepared.board(), sum.covered) +
                                                          " are filled by pieces of other colours"
                                                    : "";
    judge_.hold(rule("drawing-simplified"), sum.lost, spot(most.departure_at, sum.id(), sum.name()),
                "of the " + shown_area(subject_.prepared.board(), sum.drawn) + " drawn for " + sum.name() +
                    " the pieces lack " + shown_area(subject_.prepared.board(), sum.lost) + ": " +
                    shown_area(subject_.prepared.board(), sum.gap) + " is gap to fill, in " +
                    shown_area(subject_.prepared.board(), sum.voids) + " the wood stands" + covered + necks,
                "look at the drawing in the window before it is cut; smaller cutters and clearance lose less");
    if (sum.cleared <= 0) return;
    judge_.hold(rule("left-to-detail-cutter"), sum.detail, spot(sum.detail_at, sum.id(), sum.name()),
                "the clearing cutter reaches " + rounded(100 * sum.cleared / (sum.cleared + sum.detail)) +
                    " of the pockets of " + sum.name() + "; " + shown_area(subject_.prepared.board(), sum.detail) +
                    " are left to the detail cutter",
                "a smaller clearing cutter leaves less");
  }

  /// Pieces of different materials that are drawn touching are meant to share a pocket.
  bool meant(const PocketsMeeting& meeting) const {
    return meeting.drawn_apart <= drawn_touching && piece(meeting.a).material != piece(meeting.b).material;
  }
  const InlayPiece& piece(int i) const { return subject_.prepared.inlays().pieces[static_cast<std::size_t>(i)]; }

  void judge_meetings() {
    struct Worst {
      const PocketsMeeting* meeting = nullptr;
      int count = 0;
    };
    std::map<int, Worst> inlays;
    for (const PocketsMeeting& meeting : subject_.prepared.inlays().meetings) {
      if (meant(meeting)) continue;
      Worst& own = inlays[piece(meeting.a).inlay];
      ++own.count;
      if (!own.meeting || meeting.wood < own.meeting->wood) own.meeting = &meeting;
    }
    for (const auto& [inlay, own] : inlays) {
      const PocketsMeeting& meeting = *own.meeting;
      const double clearance = subject_.prepared.board().inlays[static_cast<std::size_t>(inlay)].clearance;
      const InlayPiece &a = piece(meeting.a), &b = piece(meeting.b);
      const FeatureId id{FeatureId::Kind::inlay, inlay, a.fret};
      const std::string name = feature_name(id);
      judge_.hold(rule("pockets-merge"), meeting.wood - clearance, spot(meeting.at, id, name),
                  "the pockets of " + a.name + " and " + b.name + " of " + name + " run together: " +
                      (meeting.wood > 0 ? "a wall of " + judge_.shown(meeting.wood) + " between them does not stand"
                                        : "they overlap by " + judge_.shown(-meeting.wood)) +
                      (own.count > 1 ? " (the nearest of " + std::to_string(own.count) + " pairs there)" : ""),
                  "draw them " + judge_.shown(judge_.up(clearance - meeting.wood)) +
                      " further apart, or name a smaller clearance");
    }
  }

  const Subject& subject_;
  Judge& judge_;
  double cut_;
  std::vector<DrawingSum> sums_;
};

}  // namespace

void judge_drawings(const Subject& subject, Judge& judge) { DrawingCheck(subject, judge).run(); }

}  // namespace sagitta
