#include "jobsheet/CaliperPage.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "layout/Taper.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

class Page {
 public:
  explicit Page(const PreparedBoard& ready) : ready_(ready), board_(ready.board()), layout_(ready.layout()) {}

  JobTable table() {
    fret_places();
    widths();
    row("length of the board on the centre line", layout_.heel_end - layout_.nut_end, width_tolerance);
    thicknesses();
    slots();
    pockets();
    return std::move(table_);
  }

 private:
  void row(const std::string& what, double mm, double tolerance) {
    table_.rows.push_back({what, fixed_measure(board_, mm), "\u00b1 " + measure(board_, tolerance), ""});
  }
  void fine_row(const std::string& what, double mm, double tolerance) {
    table_.rows.push_back({what, fine_measure(board_, mm), "\u00b1 " + fine_measure(board_, tolerance), ""});
  }

  int last_fret() const { return layout_.frets.back().fret; }
  const FretLine& fret(int number) const { return layout_.frets[static_cast<std::size_t>(number)]; }

  void fret_places() {
    for (const int number : std::set<int>{1, 7, 12, last_fret()}) {
      if (number > last_fret() || number < 1) continue;
      const std::string what = "nut line to the middle of slot " + std::to_string(number);
      const bool fan = board_.scale.bass.has_value();
      row(what + (fan ? ", along the board at the outer bass string" : ""), fret(number).bass_from_nut, slot_tolerance);
      if (fan) row(what + ", along the board at the outer treble string", fret(number).treble_from_nut, slot_tolerance);
    }
  }

  /// Square to the centre line, as widths of the board file are.
  void width_at(const std::string& where, double x) {
    row("width at " + where, layout_.half_width(x) * 2, width_tolerance);
  }

  void widths() {
    width_at("the nut line", 0);
    if (last_fret() >= 12) width_at("fret 12", fret(12).middle.x);
    if (board_.neck && board_.neck->joint_fret && *board_.neck->joint_fret <= last_fret() &&
        *board_.neck->joint_fret >= 0)
      width_at("the joint, fret " + std::to_string(*board_.neck->joint_fret), fret(*board_.neck->joint_fret).middle.x);
    width_at("the body end, on the centre line", layout_.heel_end);
  }

  void thickness(const std::string& where, double x, double y) {
    row("thickness " + where, ready_.surface().height(x, y) + board_.sanding, thickness_tolerance);
  }

  /// One row where both edges are alike, else one for each.
  void thickness_at_edges(const std::string& where, double bass_x, double treble_x) {
    const Taper taper = taper_in(layout_);
    if (taper.symmetric()) return thickness("at the edge, " + where, treble_x, taper.edge(1, treble_x));
    const bool left = board_.hand == Hand::left;
    for (const int side : {left ? 1 : 0, left ? 0 : 1}) {
      const bool bass = (side == 1) == left;
      const double x = bass ? bass_x : treble_x;
      thickness(std::string(bass ? "at the bass edge, " : "at the treble edge, ") + where, x,
                (side == 0 ? -1 : 1) * taper.edge(side, x));
    }
  }

  void thicknesses() {
    const bool left = board_.hand == Hand::left;
    const double bass = layout_.edges[left ? 1 : 0].b.x, treble = layout_.edges[left ? 0 : 1].b.x, middle = treble / 2;
    const std::string half_way = "half way at x " + measured_length(board_.units, middle);
    thickness("in the middle of the nut line", 0, 0);
    thickness_at_edges("at the nut line", 0, 0);
    thickness("in the middle, " + half_way, middle, 0);
    thickness_at_edges(half_way, middle, middle);
    thickness("in the middle of the body end", treble, 0);
    thickness_at_edges("at the body end", bass, treble);
  }

  void slots() {
    if (ready_.slots().empty()) return;
    std::set<int> frets;
    for (const Slot& slot : ready_.slots()) frets.insert(slot.fret);
    const std::vector<int> all(frets.begin(), frets.end());
    for (const int number : std::set<int>{all.front(), all[all.size() / 2], all.back()}) {
      const std::string slot = "slot " + std::to_string(number) + ", ";
      fine_row(slot + "width", board_.slots.width, slot_width_tolerance);
      fine_row(slot + "depth in the middle", slot_depth_in_middle(number), depth_tolerance);
    }
  }

  /// Below the surface there: an arc's floor follows it, a level one lies below the highest point of all.
  double slot_depth_in_middle(int number) const {
    const double depth = slot_depth(board_);
    if (board_.slots.floor == SlotFloor::arc) return depth;
    return ready_.surface().height(fret(number).middle) - (board_.board.thickness - depth);
  }

  void pockets() {
    std::map<int, std::map<std::string, const InlayPiece*>> first;  // of each inlay and material
    for (const InlayPiece& piece : ready_.pieces()) first[piece.inlay].try_emplace(piece.material, &piece);
    for (const auto& [inlay, materials] : first) {
      const std::string name = "inlay " + std::to_string(inlay + 1);
      fine_row(name + ", pocket's depth below the finished middle", materials.begin()->second->depth, depth_tolerance);
      for (const auto& [material, piece] : materials)
        fine_row(name + ", thickness of its pieces of " + material, piece->thickness, depth_tolerance);
    }
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const Layout& layout_;
  JobTable table_{{"what", "should be", "tolerance", "measured"}, {}};
};

}  // namespace

JobTable caliper_page(const PreparedBoard& ready) { return Page(ready).table(); }

}  // namespace sagitta
