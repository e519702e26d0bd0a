#pragma once

/// Where the board lies in a neck's file: found among the file's flat faces by how well the board's outline, from the
/// nut line to the joint, lies on each of them under the best rigid motion, turned either way. Lengths in mm.

#include <array>
#include <optional>
#include <vector>

#include "neck/BoardSeat.hpp"
#include "neck/FaceSpans.hpp"

namespace sagitta {

/// What a comparison is good for. mm.
inline constexpr double place_tolerance = 0.01;
/// A place is sure when the second best fits worse by this much, on the average over both edges. mm.
inline constexpr double sure_by = 5 * place_tolerance;
/// A place that fits worse than this on the average is none. mm.
inline constexpr double worst_fit = 2.5;
/// Less of the board's edges on the glue face than this share is no comparison.
inline constexpr double least_compared = 0.95;

/// What fixed the place along the neck and across it.
enum class PlacedBy {
  given,  ///< neck.file_nut and file_heel
  frame,  ///< the file's own frame: its zero at the nut, an axis along the centre line
  ends,   ///< an end of the glue face at an end of the board
  widths  ///< the neck's taper alone
};

/// What decided between places that fit as well as each other: a neck with a plain back has a second face like its glue
/// face.
enum class ChosenBy {
  fit,    ///< nothing: no other place fits as well
  frame,  ///< it is the board's own frame
  upward  ///< its face looks up in the file
};

struct NeckPlace {
  Place3 origin{};        ///< in the file: the board's x = 0, y = 0, z = 0
  Place3 along{1, 0, 0};  ///< unit vector in the file: the board's x
  Place3 up{0, 0, 1};     ///< the same: the board's z
  PlacedBy by = PlacedBy::frame;
  double fit = 0;           ///< mean distance between the board's edges and the neck's
  double second = 1e3;      ///< how much worse the second best place is
  double compared = 1;      ///< share of the board's edges from nut to joint that lie on the face
  double area = 0;          ///< of the glue face, mm^2
  bool other_hand = false;  ///< the neck fits the mirror image of this board
  bool sure = true;
  ChosenBy chosen = ChosenBy::fit;
  friend bool operator==(const NeckPlace&, const NeckPlace&) = default;
};

/// A flat face of the file, or several that lie in one plane.
struct FaceCandidate {
  NeckOutlines outlines;  ///< in the file's frame, rounded edges included
  Place3 middle{};        ///< a point of the plane
  Place3 up{0, 0, 1};     ///< unit vector out of the wood
  double area = 0;
  double depth = 0;  ///< of the wood behind it
};

/// A place and the candidate that it lies on.
struct FoundPlace {
  NeckPlace place;
  std::size_t candidate = 0;
};

/// The best place, sure or not; nothing when no face is long enough or none fits within worst_fit. Of places that fit
/// within sure_by of the best the board's own frame is taken, else the face that looks up in the file.
std::optional<FoundPlace> find_place(const std::vector<FaceCandidate>& candidates, const BoardSeat& seat);

/// A point of the file in the board's frame.
Place3 moved(const NeckPlace& place, const Place3& point);

}  // namespace sagitta
