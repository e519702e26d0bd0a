#pragma once

/// Inlays: every piece and the pocket that it is let into, fitted to each other and to the cutters, in the board's
/// frame. Lengths in mm, areas in mm^2.

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "artwork/ReadArtwork.hpp"
#include "board/FeatureId.hpp"
#include "board/InputPath.hpp"
#include "inlay/FittedCut.hpp"
#include "layout/Layout.hpp"
#include "plane/Cancel.hpp"
#include "plane/Ellipse.hpp"
#include "plane/ProgressCounter.hpp"
#include "plane/RoundedPolygon.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// One piece of inlay material, in one part, and its pocket.
struct InlayPiece {
  std::string name;  ///< "shell-01": material and number, the same in every file and on screen
  std::string material;
  int inlay = 0;         ///< index into Board::inlays
  int fret = 0;          ///< the marker's
  int pair = 0;          ///< of two markers at one fret: 1 for the one at the greater y; else 0
  int part = 0;          ///< which of the pieces of this inlay at this fret, from 0
  int figure = -1;       ///< index into Inlays::figures
  double depth = 0;      ///< of the pocket, below the finished thickness; as measured, where it was
  double thickness = 0;  ///< of the piece as cut from its sheet; as measured, where it was
  Loops piece;
  Loops pocket;
  std::optional<RoundedPolygon> shape;  ///< of the piece where it is convex with round corners: it may be drawn back
  std::optional<Ellipse> ellipse;       ///< where its outline is one: `piece` is that within tolerance::vertex
  double departure = 0;                 ///< how far the cutters stay away from the sharpest place of what is drawn
  Point departure_at;                   ///< where that is
  friend bool operator==(const InlayPiece&, const InlayPiece&) = default;
};

/// What the piece is called by programs.
FeatureId id_of(const InlayPiece& piece);
InlayPiece moved(InlayPiece piece, Point by);

/// What is cut for one marker: the pockets of its pieces, run together where they overlap. Where some were measured
/// deeper than others, those of one depth.
struct Pocket {
  int inlay = 0;
  int fret = 0;
  int pair = 0;  ///< as InlayPiece::pair
  Loops outlines;
  std::optional<RoundedPolygon> shape;    ///< where it is convex with round corners; empty: no cutter named goes in
  std::optional<OffsetEllipse> beside{};  ///< where its outline is that, as InlayPiece::ellipse
  std::optional<double> depth{};          ///< as measured; none: inlays[].depth
  friend bool operator==(const Pocket&, const Pocket&) = default;
};

/// What the cutters make of one drawn region, where it lies on the board.
struct RegionFigures {
  int inlay = 0;
  int fret = 0;
  int region = 0;  ///< in the drawing's order
  std::string colour, material;
  double drawn_area = 0;
  double lost_area = 0;     ///< drawn, but in no piece of this region
  double gap_area = 0;      ///< of that, what a pocket takes and no piece fills: it is filled with glue
  double void_area = 0;     ///< of that, where the wood stands: corners that no cutter reaches
  double covered_area = 0;  ///< of that, where another region's piece lies
  Point lost_at;            ///< where most of the lost area lies
  double added_area = 0;    ///< in a piece of this region, but not drawn for it
  Point added_at;
  double departure = 0;  ///< the greatest way from a point of the drawing to the piece, or the other way round
  Point departure_at;
  std::optional<double> piece_neck, pocket_neck;  ///< the narrowest place; none under `widest_neck`
  Point piece_neck_at, pocket_neck_at;
  std::optional<double> drawn_gap;  ///< the narrowest that is drawn; none where the cutter passes all
  Point drawn_gap_at;
  std::optional<double> left_gap;  ///< in a piece, where neither widening nor filling helped: no cutter cuts it
  Point left_gap_at;
  double smallest_piece = 0;  ///< least area of a part; 0 when nothing is left
  double cleared_area = 0;    ///< of the pockets, what the clearing cutter reaches
  double detail_area = 0;     ///< and what it leaves to the detail cutter
  Point detail_at;            ///< where most of that lies
  Region lost;                ///< the lost area, to be shown on the drawing
  friend bool operator==(const RegionFigures&, const RegionFigures&) = default;
};

/// Two pieces of one drawing whose pockets run together, as less wood than the clearance would be left between them.
struct PocketsMeeting {
  int a = 0, b = 0;        ///< indices into Inlays::pieces
  double wood = 0;         ///< between the pockets; < 0: they overlap
  double drawn_apart = 0;  ///< between the islands as they are drawn
  Point at;
  friend bool operator==(const PocketsMeeting&, const PocketsMeeting&) = default;
};

/// Wider places of a piece are not called necks. mm.
inline constexpr double widest_neck = 5;

struct Inlays {
  std::vector<InlayPiece> pieces;          ///< inlay after inlay, fret after fret, in the drawing's order
  std::vector<Pocket> pockets;             ///< one a marker; of pieces measured at several depths, one a depth
  std::vector<RegionFigures> figures;      ///< of artwork only
  std::vector<PocketsMeeting> meetings{};  ///< of artwork only
  std::vector<FittedCut> cuts{};           ///< the builder's own, one for each of Board::cuts
  friend bool operator==(const Inlays&, const Inlays&) = default;
};

/// Artwork by the file's name as the board gives it.
using Drawings = std::map<std::string, Artwork>;

/// Reads every drawing of the board's inlays and cuts once; relative names start from the board's folder. Faults: a
/// drawing that cannot be had, or that lies outside of it where the builder has not allowed that.
std::variant<Drawings, Faults> read_drawings(const Board& board, Outside outside = Outside::refused);

class FigureStore;

/// Fits every inlay and every cut of the builder's own. Each drawing of an inlay is fitted once for each size that it
/// is used in and then placed, turned and mirrored. Faults: a colour without material (the colours found are listed), a
/// drawing that fills nothing or leaves no piece. Cancelled: no pieces and no faults. Steps are counted region by
/// region of each drawing, and expected as the drawings come up. What `store` has of these drawings is not fitted
/// again, and what is fitted is kept there; null: a store for this call only.
std::variant<Inlays, Faults> fit_inlays(const Board& board, const Layout& layout, const Drawings& drawings,
                                        const Cancel& cancel = {}, const ProgressCounter& progress = {},
                                        FigureStore* store = nullptr);
/// The two in one.
std::variant<Inlays, Faults> fit_inlays(const Board& board, const Layout& layout, Outside outside = Outside::refused,
                                        const Cancel& cancel = {}, const ProgressCounter& progress = {});

/// inlays[].piece_thickness, with its default resolved.
double piece_thickness(const Inlay& inlay);

/// By how much artwork is larger in this space than in the first of its list; 1 but with sizes = "by-space". `fret` is
/// one of the inlay's.
double growth_in(const Layout& layout, const Inlay& inlay, int fret);

}  // namespace sagitta
