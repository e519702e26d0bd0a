#include "layout/Frets.hpp"

#include <algorithm>

#include "layout/LastFret.hpp"
#include "layout/Measure.hpp"
#include "layout/TongueOutline.hpp"

namespace sagitta {
namespace {

bool check_cents(const Board& board, Faults& faults) {
  const Scale& scale = board.scale;
  const int count = fret_count(board);
  const std::size_t before = faults.size();
  if (scale.frets < 0)
    faults.push_back(
        {FaultCode::wrong_count, "scale.frets", "a board has 0 frets or more, not " + std::to_string(scale.frets), ""});
  if (scale.cents.empty()) return faults.size() == before;
  if (static_cast<int>(scale.cents.size()) < count)
    faults.push_back(
        {FaultCode::wrong_count, "scale.cents",
         "there are " + std::to_string(count) + " frets but cents for only " + std::to_string(scale.cents.size()),
         "give one number for each fret, or lower scale.frets"});
  double last = 0;
  for (std::size_t i = 0; i < scale.cents.size() && static_cast<int>(i) < count; last = scale.cents[i++])
    if (!(scale.cents[i] > last))
      faults.push_back({FaultCode::not_rising, "scale.cents",
                        "fret " + std::to_string(i + 1) + " stands at " + plain(scale.cents[i]) +
                            " cents, which is not above the " + (i ? "fret before it" : "open string") + " at " +
                            plain(last) + " cents",
                        "cents must rise from fret to fret"});
  return faults.size() == before;
}

/// A board without frets has none that other things could stand at.
void check_fretless(const Board& board, Faults& faults) {
  if (board.scale.frets != 0) return;
  const auto names_one = [&](const char* key) {
    faults.push_back({FaultCode::no_such_fret, key, std::string(key) + " names a fret, and the board has no frets",
                      "choose otherwise, or give the board frets"});
  };
  if (board.scale.zero_fret) names_one("scale.zero_fret");
  if (board.board.heel == Heel::fret) names_one("board.heel");
  if (board.surface.heel_at == HeelAt::last_fret) names_one("surface.heel_at");
}

bool check_scale(const Board& board, Faults& faults) {
  const Scale& scale = board.scale;
  const std::size_t before = faults.size();
  if (!scale.length && !(scale.bass && scale.treble))
    faults.push_back(
        {FaultCode::scale_missing, "scale.length", "the scale has no length", "give length, or bass and treble"});
  if (scale.square_fret < 0 || scale.square_fret > std::max(scale.frets, 0))
    faults.push_back({FaultCode::no_such_fret, "scale.square_fret",
                      "fret " + std::to_string(scale.square_fret) + " cannot stand square: the board has frets 0 to " +
                          std::to_string(scale.frets),
                      ""});
  check_fretless(board, faults);
  return check_cents(board, faults) && faults.size() == before;
}

/// x of the bass and treble strings' own zeros.
struct Zeros {
  double bass = 0, treble = 0;
};

/// Closed form: the square fret's two ends share one x, and the nut line crosses the centre line at x = 0, that is
/// b (s0 + g t) + t (s0 + g b) = 0 with t = b + e.
Zeros zeros(double spread, double slope, double square_lead) {
  if (square_lead == 0) return {};
  const double lead = slope * square_lead;
  const double bass = -spread * square_lead / (spread + lead + std::hypot(spread, lead));
  return {bass, bass + square_lead};
}

double crossing_of_centre_line(Point bass, Point treble) {
  if (bass.x == treble.x) return bass.x;
  return (bass.x * treble.y - treble.x * bass.y) / (treble.y - bass.y);
}

FretLine fret_line(const Layout& layout, Zeros zero, int fret, double cents, bool square) {
  FretLine line;
  line.fret = fret;
  line.cents = cents;
  line.bass_from_nut = fret_distance(layout.bass_scale, cents);
  line.treble_from_nut = fret_distance(layout.treble_scale, cents);
  line.bass_to_saddle = layout.bass_scale - line.bass_from_nut;
  line.treble_to_saddle = layout.treble_scale - line.treble_from_nut;
  const double bass = zero.bass + line.bass_from_nut;
  const double treble = square ? bass : zero.treble + line.treble_from_nut;
  line.bass = {bass, -layout.spread(bass) / 2};
  line.treble = {treble, layout.spread(treble) / 2};
  line.middle = {fret == 0 ? 0 : crossing_of_centre_line(line.bass, line.treble), 0};
  return line;
}

/// One fault for all fret lines that cross: the first two of them, and how many more.
bool check_order(const Layout& layout, Faults& faults) {
  int count = 0;
  std::string first;
  for (std::size_t i = 1; i < layout.frets.size(); ++i) {
    const FretLine &before = layout.frets[i - 1], &fret = layout.frets[i];
    const bool bass = fret.bass_edge.x > before.bass_edge.x, treble = fret.treble_edge.x > before.treble_edge.x;
    if ((bass && treble) || ++count > 1) continue;
    first = fret_name(fret.fret) + " does not stand behind " + fret_name(before.fret) + " along the " +
            (bass ? "treble" : "bass") + " edge";
  }
  if (count == 0) return true;
  const std::string others = count == 1 ? "" : ", nor do " + std::to_string(count - 1) + " more";
  faults.push_back({FaultCode::frets_cross, "scale.bass", first + others + ": the fret lines cross on the board",
                    "bring scale.bass and scale.treble closer together, or make the board narrower"});
  return false;
}

}  // namespace

std::string fret_name(int fret) { return fret == 0 ? "the nut line" : "fret " + std::to_string(fret); }

double cents_of(const Scale& scale, int fret) {
  if (fret == 0) return 0;
  if (scale.cents.empty()) return 1200.0 * fret / scale.steps_per_octave.value_or(12);
  const auto i = static_cast<std::size_t>(fret - 1), listed = scale.cents.size();
  if (i < listed) return scale.cents[i];
  const double step = scale.cents[listed - 1] - (listed > 1 ? scale.cents[listed - 2] : 0);
  return scale.cents[listed - 1] + static_cast<double>(i - listed + 1) * step;
}

std::vector<double> fret_cents(const Scale& scale) {
  std::vector<double> cents;
  for (int fret = 0; fret <= scale.frets; ++fret) cents.push_back(cents_of(scale, fret));
  return cents;
}

int fret_count(const Board& board) { return board.scale.frets + (board.tongue ? board.tongue->frets : 0); }

const FretLine& last_fret(const Layout& layout) {
  const auto last =
      std::find_if(layout.frets.rbegin(), layout.frets.rend(), [](const FretLine& fret) { return !fret.on_tongue; });
  return *last;
}

double fret_distance(double length, double cents) { return length * (1 - std::exp2(-cents / 1200)); }

bool place_frets(const Board& board, Layout& layout, Faults& faults) {
  if (!check_scale(board, faults)) return false;
  const Scale& scale = board.scale;
  layout.bass_scale = scale.length ? *scale.length : *scale.bass;
  layout.treble_scale = scale.length ? *scale.length : *scale.treble;
  layout.mean_scale = (layout.bass_scale + layout.treble_scale) / 2;
  layout.spread_at_nut = board.strings.nut_spread;
  layout.spread_slope = (board.strings.saddle_spread - board.strings.nut_spread) / layout.mean_scale;
  const bool fanned = layout.bass_scale != layout.treble_scale;
  if (fanned && !(layout.spread_at_nut > 0)) {
    faults.push_back({FaultCode::strings_cross, "strings.nut_spread",
                      "two scale lengths need two outer strings that lie apart at the nut", ""});
    return false;
  }
  const double square_part = fret_distance(1, cents_of(scale, scale.square_fret));
  const Zeros zero =
      zeros(layout.spread_at_nut, layout.spread_slope, square_part * (layout.bass_scale - layout.treble_scale));
  const auto line_at = [&](int fret) {
    return fret_line(layout, zero, fret, cents_of(scale, fret), !fanned || fret == scale.square_fret);
  };
  const int count = fret_count(board);
  for (int fret = 0; fret <= count; ++fret) {
    layout.frets.push_back(line_at(fret));
    FretLine& line = layout.frets.back();
    line.on_tongue = fret > scale.frets;
    if (fanned && !(line.treble.y > 0 && line.bass.y < 0)) {
      faults.push_back({FaultCode::strings_cross, "strings.saddle_spread",
                        fret_name(fret) + " lies where the outer strings have crossed",
                        "make the spread at nut and saddle more alike"});
      return false;
    }
  }
  if (board.tongue) {
    const double last = layout.frets.back().middle.x, next = line_at(count + 1).middle.x;
    layout.tongue = TonguePlace{{}, last + board.tongue->past_last_fret.value_or((next - last) / 2)};
  }
  layout.nut_direction = direction(layout.frets.front());
  return true;
}

bool extend_frets(const Taper& taper, Layout& layout, Faults& faults) {
  for (FretLine& fret : layout.frets) {
    const Point along = direction(fret);
    if (!taper.crossed_by(along)) {
      faults.push_back({FaultCode::frets_cross, "scale.bass",
                        fret_name(fret.fret) + " slants so much that it never meets one edge of the board",
                        "bring scale.bass and scale.treble closer together"});
      return false;
    }
    fret.bass_edge = taper.meet(0, fret.middle.x, along);
    fret.treble_edge = taper.meet(1, fret.middle.x, along);
  }
  if (!check_order(layout, faults)) return false;
  for (FretLine& fret : layout.frets)
    if (fret.on_tongue) fret.bass = fret.bass_edge = on_tongue_side(*layout.tongue, fret);
  return true;
}

Point direction(const FretLine& fret) {
  return fret.bass.x == fret.treble.x ? Point{0, 1} : unit(fret.treble - fret.bass);
}

}  // namespace sagitta
