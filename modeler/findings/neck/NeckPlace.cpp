#include "neck/NeckPlace.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "neck/PlaceFit.hpp"
#include "neck/PlaceGuess.hpp"

namespace sagitta {
namespace {

/// A face is long enough when it reaches this share of the board's compared length. The rest shows in `compared`.
constexpr double least_length = 0.5;
/// What a board without wood under an end of its nut line counts, each end; and under its joint. mm.
constexpr double no_wood_at_nut = 1, no_wood_at_joint = 0.5;
/// Two places are the same when they differ by less. mm, radians.
constexpr double same_place = 0.5, same_turn = 0.02;
/// Bodies this much thicker than the board are no board. mm.
constexpr double board_spare = 1;

/// A guess that was weighed.
struct Weighed {
  Guess guess;
  std::size_t candidate = 0;
  bool other_hand = false;
  double cost = 0;
  EdgeFit fit;
};

bool has_wood(const std::vector<FaceSpan>& spans, double y) {
  return std::any_of(spans.begin(), spans.end(), [&](const FaceSpan& s) { return s.low <= y && y <= s.high; });
}

/// What speaks against a place: the board's edges off the neck's, its nut line or joint off the wood, its doubt.
double cost_of(const FlatFace& face, const Guess& guess, const EdgeFit& fit, const BoardSeat& seat) {
  const NeckOutlines outlines = laid(face.outlines, guess.motion);
  constexpr double beside = 0.5;  // mm inside the line
  double cost = fit.mean + guess.doubt;
  const auto look = [&](double x, double against) {
    for (const int side : {0, 1}) {
      const double y = (side == 0 ? -0.6 : 0.6) * seat.edge(side, x);
      if (!has_wood(spans_at(outlines, x + seat.nut_slant * y), y)) cost += against;
    }
  };
  look(beside, no_wood_at_nut);
  if (seat.joint_given) look(seat.compare_to - beside, no_wood_at_joint);
  return cost;
}

Weighed weigh(const FlatFace& face, Guess guess, std::size_t candidate, const BoardSeat& seat) {
  if (guess.by != PlacedBy::given) {
    const FlatMotion better = refined(face.outlines, guess.motion, seat, Free::across_and_turn);
    // The file's own frame stays where it fits as well as the best.
    if (guess.by != PlacedBy::frame || edge_fit(face.outlines, guess.motion, seat).mean >
                                           edge_fit(face.outlines, better, seat).mean + place_tolerance / 2)
      guess.motion = on_drawn_line(face, better, seat);
  }
  Weighed weighed{guess, candidate, false, 0, edge_fit(face.outlines, guess.motion, seat)};
  weighed.cost = cost_of(face, guess, weighed.fit, seat);
  return weighed;
}

double reach_of(const FaceCandidate& candidate) {
  double most = 0;
  const Place3& from = candidate.outlines.front().front();
  for (const auto& outline : candidate.outlines)
    for (const Place3& p : outline) most = std::max(most, std::hypot(p[0] - from[0], p[1] - from[1], p[2] - from[2]));
  return most;
}

bool is_worth_trying(const FaceCandidate& candidate, const BoardSeat& seat) {
  return !candidate.outlines.empty() && !candidate.outlines.front().empty() &&
         reach_of(candidate) > least_length * seat.compare_to && candidate.depth > seat.thickness + board_spare;
}

bool is_same_place(const Weighed& a, const Weighed& b) {
  if (a.candidate != b.candidate || a.other_hand != b.other_hand) return false;
  return std::abs(std::remainder(a.guess.motion.angle - b.guess.motion.angle, 2 * std::numbers::pi)) < same_turn &&
         distance(a.guess.motion.at, b.guess.motion.at) < same_place;
}

/// The place that the board file gives: the line from file_nut to file_heel, on the face nearest to both.
std::optional<Weighed> given_place(const std::vector<FlatFace>& faces, const std::vector<FaceCandidate>& candidates,
                                   const BoardSeat& seat) {
  constexpr double off_plane = 1;  // mm
  std::optional<Weighed> best;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    if (candidates[i].depth <= seat.thickness + board_spare || faces[i].outlines.empty()) continue;
    if (std::max(std::abs(faces[i].height(*seat.file_nut)), std::abs(faces[i].height(*seat.file_heel))) > off_plane)
      continue;
    const Point nut = faces[i].flat(*seat.file_nut), way = faces[i].flat(*seat.file_heel) - nut;
    if (length(way) <= off_plane) continue;
    const Weighed weighed = weigh(faces[i], {{nut, std::atan2(way.y, way.x)}, PlacedBy::given, 0}, i, seat);
    if (!best || weighed.cost < best->cost) best = weighed;
  }
  return best;
}

NeckPlace place_of(const Weighed& weighed, const FlatFace& face) {
  NeckPlace place;
  const Point at = weighed.guess.motion.at, way = turned({1, 0}, weighed.guess.motion.angle);
  for (std::size_t k = 0; k < 3; ++k) {
    place.origin[k] = face.middle[k] + at.x * face.first[k] + at.y * face.second[k];
    place.along[k] = way.x * face.first[k] + way.y * face.second[k];
  }
  place.up = face.up;
  place.by = weighed.guess.by;
  place.fit = weighed.fit.mean;
  place.compared = weighed.fit.compared;
  place.other_hand = weighed.other_hand;
  return place;
}

/// Zero and axes of the file are the board's.
bool is_boards_frame(const NeckPlace& place) {
  constexpr double same_axis = 1e-4;
  const auto off = [](const Place3& a, const Place3& b) { return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]); };
  return off(place.origin, {}) < place_tolerance && off(place.along, {1, 0, 0}) < same_axis &&
         off(place.up, {0, 0, 1}) < same_axis && !place.other_hand;
}

/// What decides between two places that fit as well as each other: the board's own frame, then the face that looks up
/// in the file. A neck without a shaped back has a second face like its glue face.
int standing(const NeckPlace& place) {
  constexpr double upright = 0.7;
  if (is_boards_frame(place)) return 2;
  return place.up[2] > upright ? 1 : place.up[2] < -upright ? -1 : 0;
}

bool decides(const NeckPlace& best, const NeckPlace& other) {
  return standing(best) == 2 || standing(best) - standing(other) == 2;
}

/// Another face on which the board lies as well, whatever else speaks against it.
bool fits_as_well(const Weighed& other, const Weighed& best) {
  return other.candidate != best.candidate &&
         other.cost - other.guess.doubt < best.cost - best.guess.doubt + place_tolerance;
}

std::vector<Weighed> all_places(const std::vector<FlatFace>& faces, const std::vector<FaceCandidate>& candidates,
                                const BoardSeat& seat) {
  std::vector<Weighed> all;
  std::vector<BoardSeat> hands{seat};
  if (is_one_handed(seat)) hands.push_back(mirrored(seat));
  for (std::size_t i = 0; i < faces.size(); ++i) {
    if (!is_worth_trying(candidates[i], seat)) continue;
    for (std::size_t hand = 0; hand < hands.size(); ++hand)
      for (const Guess& guess : guesses(faces[i], hands[hand])) {
        all.push_back(weigh(faces[i], guess, i, hands[hand]));
        all.back().other_hand = hand == 1;
      }
  }
  return all;
}

}  // namespace

std::optional<FoundPlace> find_place(const std::vector<FaceCandidate>& candidates, const BoardSeat& seat) {
  std::vector<FlatFace> faces;
  for (const FaceCandidate& candidate : candidates) faces.push_back(flat_face(candidate));
  if (seat.file_nut && seat.file_heel) {
    const auto given = given_place(faces, candidates, seat);
    if (!given) return {};
    FoundPlace place{place_of(*given, faces[given->candidate]), given->candidate};
    place.place.area = candidates[given->candidate].area;
    return place;
  }
  const std::vector<Weighed> all = all_places(faces, candidates, seat);
  if (all.empty()) return {};
  const auto placed = [&](const Weighed& weighed) {
    NeckPlace place = place_of(weighed, faces[weighed.candidate]);
    place.area = candidates[weighed.candidate].area;
    return place;
  };
  const double least = std::ranges::min(all, {}, &Weighed::cost).cost;
  const Weighed& best = *std::ranges::min_element(all, {}, [&](const Weighed& weighed) {
    const bool close = weighed.cost < least + sure_by;
    return std::tuple(!close, close ? -standing(placed(weighed)) : 0, weighed.cost);
  });
  if (best.fit.mean > worst_fit) return {};
  FoundPlace result{placed(best), best.candidate};
  for (const Weighed& other : all)
    if (!is_same_place(other, best)) {
      if (!decides(result.place, placed(other)))
        result.place.second = std::min(result.place.second, other.cost - best.cost);
      else if (fits_as_well(other, best))
        result.place.chosen = standing(result.place) == 2 ? ChosenBy::frame : ChosenBy::upward;
    }
  result.place.sure = result.place.second >= sure_by && best.guess.by != PlacedBy::widths;
  return result;
}

Place3 moved(const NeckPlace& place, const Place3& point) {
  const Place3 across{place.up[1] * place.along[2] - place.up[2] * place.along[1],
                      place.up[2] * place.along[0] - place.up[0] * place.along[2],
                      place.up[0] * place.along[1] - place.up[1] * place.along[0]};
  Place3 result{};
  for (std::size_t k = 0; k < 3; ++k) {
    const double off = point[k] - place.origin[k];
    result[0] += off * place.along[k], result[1] += off * across[k], result[2] += off * place.up[k];
  }
  return result;
}

}  // namespace sagitta
