#include "inlay/Inlays.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "artwork/ColourMaterials.hpp"
#include "board/Cutters.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/CutFit.hpp"
#include "inlay/FigureStore.hpp"
#include "inlay/FittedShape.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Placement.hpp"
#include "inlay/PocketDepths.hpp"
#include "inlay/Stencil.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A drawing is no larger on the board, mm: the range of inlays.along and inlays.across.
constexpr double largest_drawing = 1000;

std::string key_of(int inlay) { return "inlays[" + std::to_string(inlay) + "]"; }

bool same_pocket(const InlayPiece& a, const InlayPiece& b) {
  if (a.depth != b.depth || a.pocket.size() != b.pocket.size()) return false;
  for (std::size_t i = 0; i < a.pocket.size(); ++i) {
    if (a.pocket[i].size() != b.pocket[i].size()) return false;
    for (std::size_t k = 0; k < a.pocket[i].size(); ++k)
      if (distance(a.pocket[i][k].at(0.5), b.pocket[i][k].at(0.5)) > tolerance::snap) return false;
  }
  return true;
}

/// The pieces so far, by where their pockets begin: which of them may have the same pocket as another?
class PocketPlaces {
 public:
  /// The pieces whose pockets begin within tolerance::snap of this one's, and a few more.
  std::vector<std::size_t> near(const InlayPiece& piece) const {
    std::vector<std::size_t> found;
    const auto [column, row] = cell_of(piece);
    for (long long x = column - 1; x <= column + 1; ++x)
      for (long long y = row - 1; y <= row + 1; ++y)
        if (const auto cell = cells_.find({x, y}); cell != cells_.end())
          found.insert(found.end(), cell->second.begin(), cell->second.end());
    return found;
  }
  void add(const InlayPiece& piece, std::size_t index) { cells_[cell_of(piece)].push_back(index); }

 private:
  static std::pair<long long, long long> cell_of(const InlayPiece& piece) {
    constexpr double size = 2 * tolerance::snap;
    if (piece.pocket.empty() || piece.pocket.front().empty()) return {0, 0};
    const Point p = piece.pocket.front().front().at(0.5);
    return {static_cast<long long>(std::floor(p.x / size)), static_cast<long long>(std::floor(p.y / size))};
  }

  std::map<std::pair<long long, long long>, std::vector<std::size_t>> cells_;
};

double space_at(const Layout& layout, int fret) {
  const auto i = static_cast<std::size_t>(fret);
  return layout.frets[i].middle.x - layout.frets[i - 1].middle.x;
}

class Fitter {
 public:
  Fitter(const Board& board, const Layout& layout, const Drawings& drawings, const Cancel& cancel,
         const ProgressCounter& progress, FigureStore& store)
      : board_(board), layout_(layout), drawings_(drawings), cancel_(cancel), progress_(progress), store_(store) {}

  std::variant<Inlays, Faults> run() {
    for (const Marker& marker : layout_.markers) {
      if (cancel_.wanted()) return Inlays{};
      if (inlay_of(marker).shape == InlayShape::artwork) {
        add_artwork(marker);
      } else {
        add_shape(marker);
      }
    }
    auto cuts = fit_cuts(board_, layout_, drawings_, cancel_);
    if (const auto* wrong = std::get_if<Faults>(&cuts)) faults_.insert(faults_.end(), wrong->begin(), wrong->end());
    if (!cancel_.wanted() && faults_.empty()) faults_ = measured_faults(board_, inlays_);
    if (!faults_.empty()) return faults_;
    if (cancel_.wanted()) return Inlays{};
    inlays_.cuts = std::get<std::vector<FittedCut>>(std::move(cuts));
    return std::move(inlays_);
  }

 private:
  const Inlay& inlay_of(const Marker& marker) const { return board_.inlays[marker.inlay]; }

  InlayPiece piece_at(const Marker& marker) const {
    const Inlay& inlay = inlay_of(marker);
    InlayPiece piece;
    piece.material = inlay.material;
    piece.inlay = marker.inlay;
    piece.fret = marker.fret;
    piece.pair = marker.part;
    piece.depth = inlay.depth;
    piece.thickness = piece_thickness(inlay);
    return piece;
  }

  /// Its index; -1 where its pocket is there already: the same pocket from two inlays is one pocket.
  int add(InlayPiece piece) {
    for (const std::size_t other : places_.near(piece))
      if (same_pocket(piece, inlays_.pieces[other])) {
        same_as_ = other;
        return -1;
      }
    places_.add(piece, inlays_.pieces.size());
    const int number = ++count_[piece.material];
    piece.name = piece.material + (number < 10 ? "-0" : "-") + std::to_string(number);
    piece.part = parts_[{piece.inlay, piece.fret}]++;
    take_measured(board_, piece);
    same_as_ = inlays_.pieces.size();
    inlays_.pieces.push_back(std::move(piece));
    return static_cast<int>(inlays_.pieces.size()) - 1;
  }

  /// Where the cutters do not go in, the pocket is empty: the plan says so.
  void add_shape(const Marker& marker) {
    FittedShape fitted = fit_shape(board_, inlay_of(marker), place_of(marker));
    const bool empty = fitted.piece.empty();
    inlays_.pockets.push_back(
        {marker.inlay, marker.fret, marker.part, fitted.pocket, empty ? RoundedPolygon{} : fitted.rounded_pocket, {}});
    if (fitted.ellipse) inlays_.pockets.back().beside = {*fitted.ellipse, inlay_of(marker).clearance};
    if (empty) return;
    InlayPiece piece = piece_at(marker);
    piece.piece = std::move(fitted.piece);
    piece.pocket = std::move(fitted.pocket);
    piece.shape = std::move(fitted.rounded);
    piece.ellipse = fitted.ellipse;
    piece.departure = fitted.departure;
    piece.departure_at = fitted.departure_at;
    add(std::move(piece));
    Pocket& pocket = inlays_.pockets.back();
    if (const double depth = inlays_.pieces[same_as_].depth; depth != inlay_of(marker).depth) pocket.depth = depth;
  }

  void blame(const Marker& marker, const std::string& key, Fault fault) {
    fault.key = key_of(marker.inlay) + key;
    fault.where = {FeatureId::Kind::inlay, marker.inlay};
    if (std::find(faults_.begin(), faults_.end(), fault) == faults_.end()) faults_.push_back(std::move(fault));
  }

  /// Whether every colour has its material; the faults that say what lacks list the colours found.
  bool has_materials(const Marker& marker, const Artwork& artwork) {
    const Faults wrong = material_faults(board_, static_cast<std::size_t>(marker.inlay), artwork);
    for (const Fault& fault : wrong)
      if (std::find(faults_.begin(), faults_.end(), fault) == faults_.end()) faults_.push_back(fault);
    return wrong.empty();
  }

  /// Where artwork may be, in its own frame; empty: anywhere.
  Region within(const Marker& marker, const Placement& place) const {
    const Inlay& inlay = inlay_of(marker);
    if (!inlay.edge_left) return {};
    const double inward = *inlay.edge_left + (board_.binding ? ledge_width(*board_.binding) : 0);
    return place.back(offset(flattened({layout_.outline}), -inward));
  }

  Placement place_of(const Marker& marker) const {
    return {inlay_of(marker).turn_degrees * std::numbers::pi / 180, board_.hand == Hand::left, marker.centre};
  }

  /// A drawing that fills nothing: what was left out of it and why.
  void blame_empty(const Marker& marker, const Artwork& artwork) {
    const std::string empty = inlay_of(marker).file + " has no filled area to inlay";
    if (artwork.notes.empty())
      blame(marker, ".file", {FaultCode::drawing_empty, "", empty, "fill the outlines in the drawing program"});
    for (const Fault& note : artwork.notes)
      blame(marker, ".file", {FaultCode::drawing_empty, "", empty + ": " + note.message, note.hint});
  }

  /// A drawing that would come out larger than a key could ask for: most likely one shape in it is not meant.
  void blame_too_large(const Marker& marker, double size) {
    const Inlay& inlay = inlay_of(marker);
    const bool along = inlay.along.has_value();
    blame(marker, along ? ".along" : ".across",
          {FaultCode::not_allowed, "",
           inlay.file + " would be " + in_units(board_, std::round(size)) + (along ? " across" : " along") +
               " the board; at most " + in_units(board_, largest_drawing) + " are possible",
           "make it smaller, or look in the drawing for a shape that is far larger than the others"});
  }

  std::shared_ptr<const FittedFigure> figure_of(const Marker& marker, const Artwork& artwork) {
    const Inlay& inlay = inlay_of(marker);
    const Box box = bounds(artwork);
    const double drawn = inlay.along ? box.high.x - box.low.x : box.high.y - box.low.y;
    const double wanted = inlay.along ? *inlay.along : inlay.across.value_or(drawn);
    if (!(drawn > 0)) {
      blame_empty(marker, artwork);
      return nullptr;
    }
    const double scale = growth_in(layout_, inlay, marker.fret) * wanted / drawn;
    const double size = scale * std::max(box.high.x - box.low.x, box.high.y - box.low.y);
    if (size > largest_drawing) {
      blame_too_large(marker, size);
      return nullptr;
    }
    const FigureCut cut{scale, inlay_cutter_radius(board_), inlay.clearance,
                        narrowest_cut(board_, CutterUse::pocket_clear).value_or(0) / 2,
                        within(marker, place_of(marker))};
    if (auto there = store_.find(inlay.file, cut)) return there;
    auto made = fit_figure(artwork, cut, cancel_, progress_);
    if (cancel_.wanted()) return nullptr;
    if (const auto* wrong = std::get_if<Faults>(&made)) {
      for (const Fault& fault : *wrong) blame(marker, ".file", fault);
      return nullptr;
    }
    return store_.keep(inlay.file, cut, std::get<FittedFigure>(std::move(made)));
  }

  void add_artwork(const Marker& marker) {
    const auto drawing = drawings_.find(inlay_of(marker).file);
    if (drawing == drawings_.end()) {
      blame(
          marker, ".file",
          {FaultCode::unreadable, "", inlay_of(marker).file + " has not been read", "look whether the file is there"});
      return;
    }
    const Artwork& artwork = drawing->second;
    if (artwork.regions.empty()) return blame_empty(marker, artwork);
    const auto figure = has_materials(marker, artwork) ? figure_of(marker, artwork) : nullptr;
    if (!figure || cancel_.wanted()) return;
    const Placement place = place_of(marker);
    const auto material = [&](int region) {
      return material_of(inlay_of(marker), artwork.regions[static_cast<std::size_t>(region)].colour);
    };
    const int first = static_cast<int>(inlays_.figures.size());
    for (const RegionFigures& drawn : figure->figures) {
      RegionFigures figures = drawn;
      figures.inlay = marker.inlay;
      figures.fret = marker.fret;
      figures.material = material(drawn.region);
      for (Point* p : {&figures.departure_at, &figures.piece_neck_at, &figures.pocket_neck_at, &figures.detail_at,
                       &figures.lost_at, &figures.added_at, &figures.drawn_gap_at, &figures.left_gap_at})
        *p = place(*p);
      figures.lost = place(figures.lost);
      inlays_.figures.push_back(std::move(figures));
    }
    std::vector<int> let;  // of each part, its piece
    for (const FittedFigure::Part& part : figure->parts) {
      InlayPiece piece = piece_at(marker);
      piece.material = material(part.region);
      piece.figure = first + part.region;
      piece.piece = place(part.piece);
      piece.pocket = place(part.pocket);
      const RegionFigures& made = inlays_.figures[static_cast<std::size_t>(piece.figure)];
      piece.departure = made.departure;
      piece.departure_at = made.departure_at;
      let.push_back(add(std::move(piece)));
    }
    for (const PartMeeting& meeting : figure->meetings)
      if (let[meeting.a] >= 0 && let[meeting.b] >= 0)
        inlays_.meetings.push_back(
            {let[meeting.a], let[meeting.b], meeting.wood, meeting.drawn_apart, place(meeting.at)});
    std::vector<const InlayPiece*> pieces;
    for (const int each : let)
      if (each >= 0) pieces.push_back(&inlays_.pieces[static_cast<std::size_t>(each)]);
    for (Pocket& pocket : by_depth({marker.inlay, marker.fret, marker.part, place(figure->pockets), {}, {}},
                                   inlay_of(marker).depth, pieces))
      inlays_.pockets.push_back(std::move(pocket));
  }

  const Board& board_;
  const Layout& layout_;
  const Drawings& drawings_;
  const Cancel& cancel_;
  const ProgressCounter& progress_;
  Inlays inlays_;
  Faults faults_;
  PocketPlaces places_;
  std::map<std::string, int> count_;          ///< pieces of each material so far
  std::size_t same_as_ = 0;                   ///< the piece added last, or the one that has its pocket
  std::map<std::pair<int, int>, int> parts_;  ///< pieces of each inlay at each fret so far
  FigureStore& store_;
};

}  // namespace

InlayPiece moved(InlayPiece piece, Point by) {
  for (Loops* loops : {&piece.piece, &piece.pocket}) *loops = moved(*loops, by);
  if (piece.shape) piece.shape = moved(*piece.shape, by);
  if (piece.ellipse) piece.ellipse = piece.ellipse->moved(by);
  piece.departure_at = piece.departure_at + by;
  return piece;
}

double piece_thickness(const Inlay& inlay) { return inlay.piece_thickness.value_or(inlay.depth + 0.2); }

FeatureId id_of(const InlayPiece& piece) { return {FeatureId::Kind::piece, piece.inlay, piece.fret, piece.part}; }

double growth_in(const Layout& layout, const Inlay& inlay, int fret) {
  if (inlay.sizes == InlaySizes::one) return 1;
  const int first = inlay.frets.empty() ? inlay.double_frets.front() : inlay.frets.front();
  return space_at(layout, fret) / space_at(layout, first);
}

std::variant<Drawings, Faults> read_drawings(const Board& board, Outside outside) {
  Drawings drawings;
  Faults faults;
  const auto read = [&](const std::string& file, const std::string& key) {
    if (drawings.contains(file)) return;
    const auto path = input_path({"drawing", board.folder, file, board.folder}, outside);
    auto artwork = std::holds_alternative<Fault>(path) ? ArtworkOrFaults(Faults{std::get<Fault>(path)})
                                                       : read_artwork(std::get<std::string>(path), board.units);
    if (auto* wrong = std::get_if<Faults>(&artwork)) {
      for (Fault& fault : *wrong) {
        fault.key = key + ".file";
        faults.push_back(std::move(fault));
      }
      return;
    }
    drawings.emplace(file, std::get<Artwork>(std::move(artwork)));
  };
  for (std::size_t i = 0; i < board.inlays.size(); ++i)
    if (board.inlays[i].shape == InlayShape::artwork) read(board.inlays[i].file, key_of(static_cast<int>(i)));
  for (std::size_t i = 0; i < board.cuts.size(); ++i)
    if (board.cuts[i].shape == CutShape::drawn) read(board.cuts[i].file, "cuts[" + std::to_string(i) + "]");
  if (!faults.empty()) return faults;
  return drawings;
}

std::variant<Inlays, Faults> fit_inlays(const Board& board, const Layout& layout, const Drawings& drawings,
                                        const Cancel& cancel, const ProgressCounter& progress, FigureStore* store) {
  FigureStore own;
  return Fitter(board, layout, drawings, cancel, progress, store ? *store : own).run();
}

std::variant<Inlays, Faults> fit_inlays(const Board& board, const Layout& layout, Outside outside, const Cancel& cancel,
                                        const ProgressCounter& progress) {
  auto drawings = read_drawings(board, outside);
  if (auto* faults = std::get_if<Faults>(&drawings)) return std::move(*faults);
  return fit_inlays(board, layout, std::get<Drawings>(drawings), cancel, progress);
}

}  // namespace sagitta
