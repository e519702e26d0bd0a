#include "artwork/Assembly.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "artwork/Notes.hpp"
#include "artwork/Overlay.hpp"
#include "artwork/ReadArtwork.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// No drawing is wider. mm.
constexpr double widest = 1e6;
/// Chords for all curves of a drawing together.
constexpr std::size_t most_corners = 4'000'000;

/// A region on its way: its outlines and what is said of them.
struct Area {
  std::string colour, where;
  Outlines outlines;
  Box box;
};

void measure(Area& area) {
  area.box = {};
  for (const Outline& outline : area.outlines) {
    area.box.add(outline.box.low);
    area.box.add(outline.box.high);
  }
}

double total(const Outlines& outlines) {
  double sum = 0;
  for (const Outline& outline : outlines) sum += outline.area;
  return sum;
}

double perimeter(const Outline& outline) {
  double sum = 0;
  Point a = outline.corners.back();
  for (const Point b : outline.corners) {
    sum += distance(a, b);
    a = b;
  }
  return sum;
}

Faults fault(const std::string& message, const std::string& hint) {
  return {{FaultCode::drawing_too_complex, "", message, hint}};
}

class Assembly {
 public:
  explicit Assembly(DrawnShapes drawn) : drawn_(std::move(drawn)) {}

  std::variant<Artwork, Faults> run() {
    if (auto faults = measure_drawing()) return *faults;
    for (const DrawnShape& shape : drawn_.shapes)
      if (!clean(shape)) return given_up();
    drop_copies();
    if (!cut_covered() || !merge_colours()) return given_up();
    return finished();
  }

 private:
  Faults given_up() const {
    if (corners_ > most_corners)
      return fault("the drawing has too many long curves to be looked over", "simplify it, or split it into several");
    return fault("the outlines cross each other too often to be sorted out",
                 "unite the shapes in the drawing program, or split the drawing into several");
  }

  std::optional<Faults> measure_drawing() {
    std::size_t segments = 0;
    Box box;
    for (const DrawnShape& shape : drawn_.shapes)
      for (const PathLoop& loop : shape.loops) {
        segments += loop.size();
        const Box part = bounds(loop);
        const bool sound = std::abs(part.low.x) < widest && std::abs(part.low.y) < widest &&
                           std::abs(part.high.x) < widest && std::abs(part.high.y) < widest;
        if (!sound)
          return fault(shape.where + ": this reaches more than a kilometre", "check the units and the transforms");
        box.add(part.low);
        box.add(part.high);
      }
    if (segments > most_segments)
      return fault("the drawing has more than 200,000 segments", "simplify it, or split it");
    if (segments == 0) return std::nullopt;
    const double side = std::max(box.high.x - box.low.x, box.high.y - box.low.y);
    resolution_ = {std::max(side * tolerance::drawn_chord, tolerance::same),
                   std::max(side * tolerance::drawn_touch, tolerance::share)};
    return std::nullopt;
  }

  /// Without outlines that bound no more than their chords' departure from the curves; says whether there were any.
  /// What bounds no area all together has none to be cut.
  bool drop_slivers(Outlines& outlines) const {
    const auto slivers = std::erase_if(outlines, [&](const Outline& outline) {
      return std::abs(outline.area) <= 2 * resolution_.chord * perimeter(outline);
    });
    const bool nothing = !outlines.empty() && total(outlines) <= 0;
    if (nothing) outlines.clear();
    return slivers > 0 || nothing;
  }

  /// One shape without copies, slivers and crossings.
  bool clean(const DrawnShape& shape) {
    Outlines outlines;
    for (const PathLoop& loop : shape.loops) {
      Outline outline = make_outline(loop, resolution_.chord);
      corners_ += outline.corners.size();
      if (corners_ > most_corners) return false;
      const auto same = [&](const Outline& other) { return same_outline(other, outline, 1e3 * resolution_.touch); };
      if (!effort_.spend(static_cast<double>(10 * outlines.size()))) return false;
      if (std::any_of(outlines.begin(), outlines.end(), same))
        notes_.add(shape.where, "an outline is drawn twice; one of the two was dropped", "delete it in the drawing");
      else
        outlines.push_back(std::move(outline));
    }
    auto whole = overlay({{&outlines, shape.rule}}, Keep::any, resolution_, effort_);
    if (!whole) return false;
    if (drop_slivers(whole->outlines) || whole->outlines.empty())
      notes_.add(shape.where, "an outline without any area was dropped", "delete it in the drawing");
    else if (whole->changed)
      notes_.add(shape.where, "outlines cross or touch each other; what they fill together was taken, as polygons",
                 "look at the result, or unite the outlines in the drawing program");
    Area area{shape.colour, shape.where, std::move(whole->outlines), {}};
    measure(area);
    if (!area.outlines.empty()) areas_.push_back(std::move(area));
    return true;
  }

  bool same(const Area& a, const Area& b) const {
    if (a.outlines.size() != b.outlines.size() || a.colour != b.colour) return false;
    for (std::size_t i = 0; i < a.outlines.size(); ++i)
      if (!same_outline(a.outlines[i], b.outlines[i], 1e3 * resolution_.touch)) return false;
    return true;
  }

  void drop_copies() {
    std::vector<Area> kept;
    std::multimap<double, std::size_t> by_edge;
    for (Area& area : areas_) {
      bool copy = false;
      const double slack = 1e3 * resolution_.touch;
      const auto last = by_edge.upper_bound(area.box.low.x + slack);
      int looked = 0;
      for (auto at = by_edge.lower_bound(area.box.low.x - slack); at != last && !copy && ++looked < 1000; ++at)
        copy = same(kept[at->second], area);
      if (copy) {
        notes_.add(area.where, "a shape is drawn twice in one colour; one of the two was dropped",
                   "delete it in the drawing");
        continue;
      }
      by_edge.emplace(area.box.low.x, kept.size());
      kept.push_back(std::move(area));
    }
    areas_ = std::move(kept);
  }

  /// The earlier of two colours loses what the later covers.
  bool cut_covered() {
    for (std::size_t i = 0; i < areas_.size(); ++i) {
      Area& low = areas_[i];
      std::vector<OverlaySource> sources{{&low.outlines, FillRule::nonzero}};
      if (!effort_.spend(static_cast<double>(areas_.size() - i))) return false;
      for (std::size_t j = i + 1; j < areas_.size(); ++j)
        if (areas_[j].colour != low.colour && areas_[j].box.overlaps(low.box))
          sources.push_back({&areas_[j].outlines, FillRule::nonzero});
      if (sources.size() == 1) continue;
      auto seen = overlay(sources, Keep::first, resolution_, effort_);
      if (!seen) return false;
      drop_slivers(seen->outlines);
      if (total(low.outlines) - total(seen->outlines) > 2 * resolution_.chord * resolution_.chord)
        notes_.add(low.where,
                   seen->outlines.empty() ? "a shape is covered by later ones and was dropped"
                                          : "a later shape lies on this one, which lost what is covered",
                   "nothing needs doing if it looks right");
      covered_.push_back({i, std::move(seen->outlines)});
    }
    // what lies above is cut as it was drawn, so the changes come last
    for (auto& [index, outlines] : covered_) {
      areas_[index].outlines = std::move(outlines);
      measure(areas_[index]);
    }
    std::erase_if(areas_, [](const Area& area) { return area.outlines.empty(); });
    return true;
  }

  /// DrawnShapes of one colour that overlap become one.
  bool merge_colours() {
    for (std::size_t i = 0; i < areas_.size(); ++i)
      for (std::size_t j = i + 1; j < areas_.size(); ++j) {
        if (!effort_.spend(1)) return false;
        if (areas_[i].colour != areas_[j].colour || !areas_[j].box.overlaps(areas_[i].box)) continue;
        const std::vector<OverlaySource> pair{{&areas_[i].outlines, FillRule::nonzero},
                                              {&areas_[j].outlines, FillRule::nonzero}};
        const auto common = overlay(pair, Keep::both, resolution_, effort_);
        if (!common) return false;
        if (common->outlines.empty()) continue;
        auto one = overlay(pair, Keep::any, resolution_, effort_);
        if (!one) return false;
        notes_.add(areas_[j].where, "shapes of one colour overlap; they were united",
                   "nothing needs doing if it looks right");
        drop_slivers(one->outlines);
        areas_[i].outlines = std::move(one->outlines);
        measure(areas_[i]);
        areas_.erase(areas_.begin() + static_cast<std::ptrdiff_t>(j));
        j = i;  // the larger shape may now overlap others
      }
    std::erase_if(areas_, [](const Area& area) { return area.outlines.empty(); });
    return true;
  }

  Artwork finished() {
    Artwork art;
    art.notes = std::move(drawn_.notes);
    for (Fault& note : notes_.faults()) art.notes.push_back(std::move(note));
    for (Area& area : areas_) {
      DrawnRegion region{area.colour, {}};
      for (Outline& outline : area.outlines) region.outlines.push_back(std::move(outline.strokes));
      art.regions.push_back(std::move(region));
    }
    return art;
  }

  DrawnShapes drawn_;
  std::vector<Area> areas_;
  std::vector<std::pair<std::size_t, Outlines>> covered_;
  Notes notes_;
  Resolution resolution_;
  Effort effort_;
  std::size_t corners_ = 0;
};

}  // namespace

std::variant<Artwork, Faults> assemble(DrawnShapes drawn) { return Assembly(std::move(drawn)).run(); }

}  // namespace sagitta
