#include "jobsheet/BenchText.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "board/Length.hpp"
#include "board/Materials.hpp"
#include "frets/LineList.hpp"
#include "frets/WireList.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Wire is bent to a radius this much of the board's before it is pressed: its ends then go down first and stay down.
/// Common practice, no source.
constexpr double bend_tighter = 0.9;

/// What becomes of a piece between gluing and the radius, in one sentence that is true for these heights.
std::string height_sentence(const Board& board, std::string name, const InlayHeight& height) {
  const auto fine = [&](double mm) { return fine_length(board.units, std::abs(mm)); };
  name.front() = 'I';
  name += name.starts_with("Inlays") ? ": the pieces' tops " : ": the piece's top ";
  const bool many = name.starts_with("Inlays");
  const std::string stands =
      height.proud() > 0   ? std::string(many ? "stand " : "stands ") + fine(height.proud()) + " proud of the wood"
      : height.proud() < 0 ? std::string(many ? "lie " : "lies ") + fine(height.proud()) + " under the wood's top"
                           : std::string(many ? "are" : "is") + " level with the wood";
  const std::string is = many ? "they are " : "it is ";
  const std::string later =
      height.to_remove() >= 0
          ? "; " + is + fine(height.to_remove()) + " above the finished middle, which the radius takes off"
          : "; " + is + fine(height.to_remove()) + " UNDER the finished middle and will show as a hollow";
  return name + stands + later + ".";
}

}  // namespace

std::string BenchText::length(double mm) const { return measured_length(board_.units, mm); }
std::string BenchText::fine(double mm) const { return fine_length(board_.units, mm); }

WalkStep BenchText::begin(WalkKind kind) const {
  WalkStep step;
  step.kind = kind;
  step.title = walk_title(kind);
  return step;
}

WalkStep BenchText::blank() const {
  const StockSize size = measured_blank(ready_.layout());
  WalkStep step = begin(WalkKind::blank);
  step.need = {board_.blank.material + ", at least " + stock_length(board_.units, size.length) + " x " +
               stock_length(board_.units, size.width) + " x " + stock_length(board_.units, size.thickness)};
  step.act = {"Plane the glue face flat and one long side square to it. Let the wood rest in the workshop.",
              "Mark the centre line along the top, the nut line across it, and carry both down the sides."};
  step.check = {"A straight edge shows no light along, across and from corner to corner.",
                "Thickness at six places; write down the least."};
  step.wrong = {"A blank that still moves after it is cut takes the slots with it: let it rest again."};
  return step;
}

WalkStep BenchText::dry_fit() const {
  WalkStep step = begin(WalkKind::dry_fit);
  std::set<double> rooms;
  for (const InlayPiece& piece : ready_.pieces())
    rooms.insert(board_.inlays[static_cast<std::size_t>(piece.inlay)].clearance);
  std::string room;
  for (const double each : rooms) room += (room.empty() ? "" : ", ") + fine(each);
  step.act = {"Lay every piece in its pocket without glue, numbers by the inlay drawing."};
  step.check = {"Each goes in with a finger and lies on the floor; the room drawn all round is " + room + "."};
  step.wrong = {"A piece that is pressed in breaks: ease its edge, or cut it again with more clearance."};
  return step;
}

WalkStep BenchText::gluing() const {
  WalkStep step = begin(WalkKind::gluing);
  const auto heights = named_heights(ready_);
  const bool under = std::ranges::any_of(heights, [](const auto& each) { return each.second.proud() < 0; });
  step.need = {std::string("glue for every material of the pieces, ") +
               (under ? "blocks that go into the pockets" : "a flat block") + ", paper that does not stick"};
  step.act = {"Glue the pieces in and press them down to the floor with the block until the glue is hard."};
  if (under) step.act.push_back("A flat block would lie on the wood and leave the pieces loose: their tops lie lower.");
  for (const auto& [name, height] : heights) step.check.push_back(height_sentence(board_, name, height));
  step.wrong = {"A piece that floats on glue stands too high, and a void shows when the radius is cut."};
  return step;
}

WalkStep BenchText::levelling() const {
  WalkStep step = begin(WalkKind::levelling);
  step.need = {"a flat scraper or a sanding block"};
  step.act = {"Bring every piece that stands proud down to the wood, by up to " + fine(highest_proud(ready_)) +
              ", so that no clamp and no cutter meets it."};
  step.check = {"A straight edge lies on the wood and on the pieces at once."};
  step.wrong = {"A slot cutter that meets a proud piece breaks."};
  return step;
}

WalkStep BenchText::binding() const {
  WalkStep step = begin(WalkKind::binding);
  const Binding& binding = *board_.binding;
  step.need = {"two strips of binding " + fine(binding.width) + " wide" +
               (binding.height > 0 ? " and " + fine(binding.height) + " high" : ", as high as the edge")};
  for (std::size_t i = 0; i < binding.lines.size(); ++i)
    step.need.push_back("two lines of " + (i < binding.line_materials.size() ? binding.line_materials[i] : "veneer") +
                        ", " + fine(binding.lines[i]) + " thick");
  step.act = {"Glue the strips to the edges and tape them every finger's width; the binding stands a little high.",
              "Scrape the binding down to the playing surface and to the glue face."};
  step.check = {"Width over the binding at the nut line " + length(2 * ready_.layout().half_width(0)) + "."};
  step.wrong = {"A strip that lifts at the end shows a gap for ever: clamp the ends first."};
  return step;
}

WalkStep BenchText::side_dots() const {
  WalkStep step = begin(WalkKind::side_dots);
  const SideDots& spec = *board_.side_dots;
  step.need = {"a drill of " + stock_length(board_.units, spec.diameter) + ", a rod of the dots' material"};
  const std::string edge_words = spec.edge == DotEdge::both     ? "both edges"
                                 : spec.edge == DotEdge::treble ? "the treble edge"
                                                                : "the bass edge";
  step.act = {"Drill square to " + edge_words + ", " + fine(spec.depth) +
              " deep, then glue the rod in and cut it off. The bass edge is the " +
              std::string(board_.hand == Hand::left ? "upper" : "lower") + " one in the drawings."};
  std::vector<SideDot> dots = ready_.side_dots();
  std::ranges::stable_sort(dots, [](const SideDot& a, const SideDot& b) {
    return std::pair{a.side, a.mouth.x} < std::pair{b.side, b.mouth.x};
  });
  for (const SideDot& dot : dots) {
    const bool treble = dot.side == 1;
    const LineSegment edge = ready_.layout().edges[(board_.hand == Hand::left) != treble ? 1 : 0];
    step.ticks.push_back("space " + std::to_string(dot.fret) + (treble ? ", treble edge" : "") + ": " +
                         length(distance(edge.a, dot.mouth)) + " along the edge from its nut end, " +
                         length(ready_.surface().height(dot.mouth) / 2) + " above the glue face");
  }
  step.check = {"Every dot stands between the slots of its space, at half the edge's height."};
  step.wrong = {"A drill that wanders comes out at the playing surface: mark with a point first."};
  return step;
}

WalkStep BenchText::sanding() const {
  WalkStep step = begin(WalkKind::sanding);
  step.act = {"Sand the playing surface with a radiused block along the board; " + fine(board_.sanding) +
              " to remove."};
  step.check = {"Thickness in the middle " + fine(board_.board.thickness) + "."};
  step.wrong = {"A block that is rocked makes the edges thin: let it ride on the middle."};
  return step;
}

WalkStep BenchText::lines() const {
  const std::vector<LinePiece> list = line_list(ready_);
  WalkStep step = begin(WalkKind::lines);
  step.need = {length(total_line(list)) + " of veneer " + fine(list.front().thickness) + " thick, " +
               (list.front().material.empty() ? "" : "of " + list.front().material + ", ") + "thin glue"};
  step.act = {
      "Cut a strip for each line by the table of lines, a little wider than its height there.",
      "Press each strip to the slot's floor and let the glue run in. When it is hard, scrape the strips down to "
      "the playing surface."};
  step.check = {"Every strip stands over the surface along its whole length before it is scraped."};
  step.wrong = {"A strip that stands under the surface leaves a groove that the string buzzes on."};
  return step;
}

WalkStep BenchText::edges() const {
  const Edges& own = *board_.edges;
  WalkStep step = begin(WalkKind::edges);
  step.title = own.roll > 0 ? "Roll the edges" : "Bevel the edges";
  step.need = {"a scraper or a fine file, paper on a soft block"};
  const std::string angle = decimal(own.bevel_angle_degrees) + " degrees to the side";
  step.act = {own.roll > 0 ? "Round both long edges of the playing surface to a radius of " + fine(own.roll) + "."
                           : "Bevel both long edges of the playing surface, " + fine(own.bevel) + " wide across, at " +
                                 angle + "."};
  step.check = {
      "The edge is even from the nut to the body end, and the slots are still as deep at their ends as the "
      "tang is long."};
  step.wrong = {"A roll that goes too far in moves the outer string toward the edge."};
  return step;
}

WalkStep BenchText::wire() const {
  const std::vector<WirePiece> list = wire_list(ready_);
  WalkStep step = begin(WalkKind::wire);
  step.need = {length(total_wire(list)) + " of wire, tang " + fine(board_.wire.tang_width) + " wide and " +
               fine(board_.wire.tang_depth) + " long"};
  step.act = {"Cut a piece for each fret by the wire table" +
              (board_.wire.overhang > 0
                   ? "; its lengths hold " + length(board_.wire.overhang) + " over the edge at each end already."
                   : std::string("."))};
  const auto nipped = std::ranges::find_if(list, [](const WirePiece& each) { return each.nip_bass > 0; });
  if (nipped != list.end())
    step.act.push_back("Nip the tang back by " + fine(nipped->nip_bass) + " from the finished edge.");
  if (!ready_.surface().flat)
    step.act.push_back(
        "Bend each to nine tenths of the radius in the table, a little tighter than the board: at fret " +
        std::to_string(list.front().fret) + " to " + length(bend_tighter * list.front().bend_radius.value_or(0)) + ".");
  step.check = {"A bent piece lies on its slot with its ends down and its middle just clear."};
  step.wrong = {"Wire that is flatter than the board lifts at its ends."};
  return step;
}

WalkStep BenchText::pressing() const {
  const bool composite = material(board_, board_.blank.material).kind == MaterialKind::composite;
  WalkStep step = begin(WalkKind::pressing);
  step.need = {"a press or a hammer with a soft face, a file with one safe edge"};
  step.act = {
      "Ease the slots' edges with one stroke of a small file.",
      "Press the ends down first, then the middle. Begin in the middle of the board and go outward to both ends."};
  if (composite)
    step.act.push_back("Glue each fret: " + board_.blank.material + " does not give way to the tang as wood does.");
  step.check = {"No light under a crown; a straight edge rocks over no fret."};
  step.wrong = {"Tight slots bend the board back: press every other fret, look at the board, then the rest."};
  return step;
}

WalkStep BenchText::end_bevel() const {
  WalkStep step = begin(WalkKind::end_bevel);
  step.need = {"a file held at " + std::to_string(std::lround(board_.wire.end_bevel_degrees)) + " degrees"};
  step.act = {"File the ends of the frets flush with the edge, then bevel them at " +
                  std::to_string(std::lround(board_.wire.end_bevel_degrees)) + " degrees and break the corners.",
              "Level, crown and polish the frets when the board is on its neck."};
  step.check = {"A thumb runs along the edge and catches nowhere."};
  step.wrong = {"A steep bevel shortens the fret, and the outer string slips off."};
  return step;
}

WalkStep BenchText::neck() const {
  WalkStep step = begin(WalkKind::neck);
  step.need = {"glue, clamps, a caul that follows the playing surface"};
  step.act = {
      "Check that neck and glue face are flat and clean. Put the board on its place" +
      std::string(ready_.layout().pins.empty() ? " and hold it there with two small pins." : " with the pins in.")};
  if (board_.neck->channel_width)
    step.act.push_back("Keep glue out of the truss-rod slot: lay a strip of tape over it.");
  step.check = {"The nut line lies where the neck wants it, and the centre lines meet at both ends."};
  step.wrong = {"A board that slides while it is clamped moves the scale: let the clamps touch first, then tighten."};
  return step;
}

}  // namespace sagitta
