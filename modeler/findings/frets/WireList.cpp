#include "frets/WireList.hpp"

#include <algorithm>
#include <cmath>

#include "layout/SlotParts.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Chords along a fret: their sum is short of the arc by length^3 / (24 R^2 n^2), under 1e-6 mm.
constexpr int chords = 512;

double along_surface(const Surface& surface, Point a, Point b) {
  double sum = 0, before = surface.height(a);
  const double step = distance(a, b) / chords;
  for (int i = 1; i <= chords; ++i) {
    const double height = surface.height(between(a, b, 1.0 * i / chords));
    sum += std::hypot(step, height - before);
    before = height;
  }
  return sum;
}

std::optional<double> bend_radius(const Surface& surface, Point a, Point b) {
  const double low = surface.height(a), high = surface.height(b);
  const double chord = std::hypot(distance(a, b), high - low);
  const double rise = surface.height(between(a, b, 0.5)) - (low + high) / 2;
  if (rise <= tolerance::height) return {};
  return (chord * chord + 4 * rise * rise) / (8 * rise);
}

/// Tang lost at one end, from the finished edge along the fret. `bare`: an edge without binding.
double nip(const Board& board, const LineSegment& edge, bool bare, Point fret_direction) {
  const double across = std::abs(cross(unit(edge.b - edge.a), fret_direction));
  const double binding = board.binding && !bare ? ledge_width(*board.binding) / across : 0;
  const double blind = board.slots.ends == SlotEnds::blind ? board.slots.edge_left + board.slots.width / 2 : 0;
  return std::max(binding, blind);
}

}  // namespace

std::vector<WirePiece> wire_list(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const Surface& surface = ready.surface();
  std::vector<WirePiece> list;
  for (const Slot& slot : ready.slots()) {
    const FretLine& fret = layout.frets[static_cast<std::size_t>(slot.fret)];
    const Point a = slot.bass_open ? slot.bass_end : fret.bass_edge;
    const Point b = slot.treble_open ? slot.treble_end : fret.treble_edge, way = unit(b - a);
    const bool bass_low = a.y < b.y;
    WirePiece piece;
    piece.fret = slot.fret;
    if (is_parted(slot)) piece.part = slot.part;
    piece.straight = distance(a, b);
    piece.along = along_surface(surface, a, b);
    piece.cut = piece.along + 2 * board.wire.overhang;
    piece.bend_radius = bend_radius(surface, a, b);
    const LineSegment bass_side = slot.on_tongue ? layout.tongue->bass_side : layout.edges[bass_low ? 0 : 1];
    if (!slot.bass_open) piece.nip_bass = nip(board, bass_side, slot.on_tongue, way);
    if (!slot.treble_open) piece.nip_treble = nip(board, layout.edges[bass_low ? 1 : 0], false, way);
    piece.tang = piece.along - piece.nip_bass - piece.nip_treble;
    list.push_back(piece);
  }
  return list;
}

double total_wire(const std::vector<WirePiece>& list) {
  double total = 0;
  for (const WirePiece& piece : list) total += piece.cut;
  return total;
}

}  // namespace sagitta
