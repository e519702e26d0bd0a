#include "overlay/InlayHand.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

#include "overlay/ChosenInlay.hpp"
#include "overlay/InlayGrips.hpp"
#include "overlay/InlayMarks.hpp"
#include "overlay/InlaySize.hpp"
#include "rules/Judge.hpp"
#include "rules/Work.hpp"

namespace sagitta::viewer {

namespace {

constexpr float snap_reach = 9;                     ///< pixels within which a place snaps
constexpr float size_reach = 6;                     ///< and a size
constexpr float slack = 4;                          ///< pixels that a press on a grip may wander
constexpr double turn_parts = 10;                   ///< of a degree
constexpr double turn_step = 15, turn_reach = 2.5;  // degrees

/// Where a ray meets the plane at this height.
std::optional<Vec> on_level(const Ray& ray, float z) {
  if (std::abs(ray.along.z) < 1e-4f) return std::nullopt;
  const float far = (z - ray.from.z) / ray.along.z;
  if (far <= 0) return std::nullopt;
  return ray.from + far * ray.along;
}

Ray ray_at_pointer(const HandState& at) {
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  return at.view.camera.ray({pointer.x - at.low.x, pointer.y - at.low.y});
}

Point flat(Vec p) { return {static_cast<double>(p.x), static_cast<double>(p.y)}; }
double side_of(const Board& board) { return board.hand == Hand::left ? -1 : 1; }

/// To so many parts of the unit: the double that the shortest decimal stands for, so that files stay readable.
double in_parts(double value, double parts) { return std::round(value * parts) / parts; }
double nearest_multiple(double value, double step) { return std::round(value / step) * step; }

/// Parts of a mm, or of an inch where lengths are shown in inches.
struct Parts {
  double mm = 1, inch = 1;
};
constexpr Parts fine{20, 1000}, coarse{1, 32}, fitting{100, 1000};

/// Length of one part, mm.
double one_of(Parts parts, const Manner& manner) {
  return manner.units == Units::inch ? mm_per_inch / parts.inch : 1 / parts.mm;
}

double in_parts(double mm, Parts parts, const Manner& manner) {
  if (manner.units != Units::inch) return in_parts(mm, parts.mm);
  return to_mm(in_parts(mm / mm_per_inch, parts.inch), Units::inch);
}

/// A turn's snap, degrees.
struct Turned {
  double degrees = 0;
  bool as_frets = false;
};

/// The turn at which the piece stands as the frets of its space do.
double turn_of_frets(const Board& board, const Layout& layout, int fret) {
  Point across;
  for (const int i : {fret - 1, fret}) {
    const FretLine& line = layout.frets[static_cast<std::size_t>(i)];
    across = across + unit(line.treble_edge - line.bass_edge);
  }
  return std::atan2(-across.x, side_of(board) * across.y) * 180 / std::numbers::pi;
}

Turned snapped_turn(double degrees, double frets, bool snaps) {
  if (!snaps) return {in_parts(degrees, turn_parts)};
  const double step = nearest_multiple(degrees, turn_step), square = frets + nearest_multiple(degrees - frets, 90);
  const double off_step = std::abs(degrees - step), off_square = std::abs(degrees - square);
  if (off_square < std::min(off_step, turn_reach)) return {in_parts(square, 10 * turn_parts), true};
  return {off_step < turn_reach ? step : in_parts(degrees, turn_parts)};
}

/// The same direction in (-180, 180].
double in_one_turn(double degrees) {
  const double rest = std::remainder(degrees, 360);
  return rest == -180 ? 180 : rest + 0.0;
}

std::string turn_in_hand(const HandState& at, Inlay& inlay, Point from, Point to) {
  const GripHold& hold = at.hand.grip;
  const Board& board = at.document.board();
  const double moved = side_of(board) * std::atan2(cross(from, to), dot(from, to)) * 180 / std::numbers::pi;
  const Turned now = snapped_turn(hold.inlay.turn_degrees + moved,
                                  turn_of_frets(board, at.results.good->prepared->layout(), hold.frame.fret),
                                  !ImGui::GetIO().KeyShift);
  inlay.turn_degrees = now.degrees == hold.inlay.turn_degrees ? now.degrees : in_one_turn(now.degrees);
  return shown_number(inlay.turn_degrees, 2) + "\u00b0" + (now.as_frets ? " as its frets" : "");
}

/// The size at which it just fits between its frets: check then asks for no more wood beside the slots.
std::optional<double> fitting_size(const HandState& at) {
  const GripHold& hold = at.hand.grip;
  const Board& board = at.document.board();
  const double wood = std::max(Judge(board).limit(rule("thin-wall-at-slot")), 0.0) +
                      reclamp_loss(board, Operation::pockets, Operation::slots) + hold.inlay.clearance;
  const auto room = room_between_frets(board, at.results.good->prepared->layout(), hold.frame, hold.outline, wood);
  if (!room) return std::nullopt;
  const double size = *room * leading_size(hold.inlay), part = one_of(fitting, at.manner);
  return in_parts(size - part / 2, fitting, at.manner);  // never more
}

std::string size_in_hand(const HandState& at, Inlay& inlay, Point from, Point to) {
  const GripHold& hold = at.hand.grip;
  const Manner manner = at.manner;
  const double before = leading_size(hold.inlay), wanted = before * length(to) / length(from);
  const double pixel = static_cast<double>(at.view.camera.mm_per_pixel(at.hand.grabbed)) * before / length(from);
  const auto fit = fitting_size(at);
  const bool snaps = !ImGui::GetIO().KeyShift;
  const bool fits = snaps && fit && std::abs(wanted - *fit) < static_cast<double>(at.ui.px(size_reach)) * pixel;
  const double leading =
      fits ? *fit : in_parts(std::max(wanted, one_of(coarse, manner)), snaps ? coarse : fine, manner);
  const double turn = inlay.turn_degrees;
  Inlay made = sized(hold.inlay, leading);
  made.turn_degrees = turn;
  inlay = std::move(made);
  const Point size = size_of(inlay, *at.results.good->fitted, hold.frame.growth);
  return shown_bare(size.x, manner, 2) + " \u00d7 " + shown(size.y, manner, 2) + (fits ? ", fits its space" : "");
}

}  // namespace

bool takes_inlay(const HandState& at) {
  const StageModel* stage = at.shown();
  if (!stage || !at.results.good->fitted || !has_chosen(at.view, at.document.board())) return false;
  const auto hit = cast(stage->mesh, ray_at_pointer(at));
  if (!hit) return false;
  const InlayPiece* piece = piece_at(at.results.good->prepared->inlays(), flat(hit->place));
  if (!piece || piece->inlay != at.view.chosen->inlay) return false;
  const Inlay& inlay = at.document.board().inlays[static_cast<std::size_t>(piece->inlay)];
  at.hand.inlay = piece->inlay;
  at.hand.start_shift = {inlay.shift_along, inlay.shift_across};
  at.hand.grabbed = hit->place;
  choose_inlay(at.view, at.document.board(), at.results, piece->inlay, flat(hit->place));
  return true;
}

void drag_inlay(const HandState& at, Edit how) {
  const auto now = on_level(ray_at_pointer(at), at.hand.grabbed.z);
  Board draft = at.document.board();
  if (!now || at.hand.inlay >= static_cast<int>(draft.inlays.size())) return;
  const auto reach = static_cast<double>(at.ui.px(snap_reach) * at.view.camera.mm_per_pixel(at.hand.grabbed));
  const bool snaps = !ImGui::GetIO().KeyShift;
  const auto snapped_to = [&](double shift) {
    return snaps && std::abs(shift) < reach ? 0.0 : in_parts(shift, fine, at.manner);
  };
  const Point moved = flat(*now) - flat(at.hand.grabbed);
  Inlay& inlay = draft.inlays[static_cast<std::size_t>(at.hand.inlay)];
  inlay.shift_along = snapped_to(at.hand.start_shift.x + moved.x);
  inlay.shift_across = snapped_to(at.hand.start_shift.y + side_of(draft) * moved.y);
  at.view.say("Along " + shown(inlay.shift_along, at.manner) + " from the middle of the space, across " +
              shown(inlay.shift_across, at.manner) + " from the centre line");
  at.document.take(std::move(draft), how, "Move the inlay");
}

bool takes_grip(const HandState& at) {
  const auto grip = grip_at_pointer(at.seen());
  const auto frame = seen_frame(at.seen());
  if (!grip || !frame) return false;
  const auto place = on_level(ray_at_pointer(at), frame->z);
  if (!place) return false;
  GripHold hold;
  hold.turns = grip->turns, hold.frame = *frame;
  hold.inlay = at.document.board().inlays[static_cast<std::size_t>(frame->inlay)];
  hold.outline = outline_of(hold.inlay, *at.results.good->fitted, frame->growth);
  for (const SeenGrip& g : grips_of(at.seen(), *frame))
    if (g.turns) hold.side = g.side;
  at.hand.grip = std::move(hold);
  at.hand.grabbed = *place;
  return true;
}

void drag_grip(const HandState& at, Edit how) {
  GripHold& hold = at.hand.grip;
  const ImVec2 wandered = ImGui::GetIO().MousePos - at.hand.start;
  hold.moved = hold.moved || std::hypot(wandered.x, wandered.y) > at.ui.px(slack);
  Board draft = at.document.board();
  const auto index = static_cast<std::size_t>(hold.frame.inlay);
  if (!hold.moved || index >= draft.inlays.size()) return;
  const char* const what = hold.turns ? "Turn the inlay" : "Size the inlay";
  if (const auto now = on_level(ray_at_pointer(at), hold.frame.z)) {
    const Point from = flat(at.hand.grabbed) - hold.frame.centre, to = flat(*now) - hold.frame.centre;
    hold.reading = (hold.turns ? turn_in_hand : size_in_hand)(at, draft.inlays[index], from, to);
    at.view.say((hold.turns ? "Turned " : "Size ") + hold.reading);
  }
  at.document.take(std::move(draft), how, what);
}

}  // namespace sagitta::viewer
