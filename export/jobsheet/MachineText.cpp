#include "jobsheet/MachineText.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <set>

#include "board/CutSide.hpp"
#include "board/Cutters.hpp"
#include "board/SlotCut.hpp"
#include "drawing/WoodTop.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "layout/CutMiddle.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// The set-up's operations in the order of work.
std::vector<Operation> in_order(const Board& board, std::vector<Operation> operations) {
  std::ranges::stable_sort(operations, {},
                           [&](Operation each) { return std::ranges::find(board.order, each) - board.order.begin(); });
  return operations;
}

std::string counted(std::size_t count, const std::string& what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

/// The first letter large: "inlay 1" begins a sentence.
std::string capital(std::string name) {
  name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
  return name;
}

std::string zero_sentence(Zero zero) {
  return zero == Zero::nut      ? "where the nut line crosses the centre line"
         : zero == Zero::corner ? "at the blank's lower left corner"
                                : "in the middle of the blank";
}

/// `cut "a"`, `cuts "a", "b"`.
std::string quoted(const std::string& what, const std::vector<std::string>& names) {
  std::string text = what + (names.size() == 1 ? "" : "s");
  for (const std::string& name : names) text += (&name == &names.front() ? " \"" : ", \"") + name + "\"";
  return text;
}

}  // namespace

std::string MachineText::length(double mm) const { return measured_length(board_.units, mm); }
std::string MachineText::fine(double mm) const { return fine_length(board_.units, mm); }

int MachineText::step_in_setup(int setup, Operation operation) const {
  const auto order = in_order(board_, setups_[static_cast<std::size_t>(setup)].operations);
  return static_cast<int>(std::ranges::find(order, operation) - order.begin());
}

bool MachineText::has_detail_cutter() const {
  const auto clears = [](const Cutter& cutter) { return has_use(cutter, CutterUse::pocket_clear); };
  return std::ranges::any_of(board_.cutters, clears) && std::ranges::any_of(board_.cutters, [&](const Cutter& cutter) {
           return has_use(cutter, CutterUse::pocket_detail) && !clears(cutter);
         });
}

WalkStep MachineText::begin(WalkKind kind) const {
  WalkStep step;
  step.kind = kind;
  step.machine = true;
  step.title = walk_title(kind);
  return step;
}

void MachineText::cutters(WalkStep& step, CutterUse use) const {
  for (const Cutter& cutter : board_.cutters)
    if (has_use(cutter, use))
      step.need.push_back(cutter.name + ", " + stock_length(board_.units, cutter.diameter) +
                          (cutter.shape == CutterShape::ball ? " ball" : " flat"));
}

WalkStep MachineText::set_up(int index, bool again) const {
  const ResolvedSetup& setup = setups_[static_cast<std::size_t>(index)];
  WalkStep step = begin(WalkKind::set_up);
  step.setup = index;
  step.title = "Set-up " + std::to_string(setup.number) + ": " + setup.name;
  step.need = {"clamps or tape at the places that the picture leaves free", "an edge finder or a pointed cutter"};
  if (setup.tape > 0) step.need.push_back("tape, or whatever lies under the blank, " + fine(setup.tape) + " thick");
  step.act = {"Clamp the blank with the nut end to the left and the glue face down.",
              "Set x and y to 0 " + zero_sentence(setup.zero) + ", z to 0 on the " + zero_word(setup.z_zero) + "."};
  if (again)
    step.act.push_back("The blank was moved: find the zero again on what is cut already, within " +
                       fine(setup.reclamp_error) + ".");
  const Point nut = setup.from_board({0, 0});
  const Point end = setup.from_board({ready_.layout().heel_end, 0});
  if (setup.zero != Zero::nut)
    step.check = {"Drive to x " + length(nut.x) + ", y " + length(nut.y) +
                  ": the point stands on the nut line, on the centre line."};
  step.check.push_back("Drive to x " + length(end.x) + ", y " + length(end.y) +
                       ": the point stands on the centre line, at the body end.");
  step.wrong = {"A zero that is off moves every cut of this set-up by as much."};
  return step;
}

WalkStep MachineText::thickness() const {
  const double to = thickness_to(board_);
  WalkStep step = begin(WalkKind::thickness);
  step.act = {"Mill the blank flat to " + fine(to) + "; " + fine(ready_.layout().blank_thickness - to) + " to remove."};
  step.check = {"Measure at six places: both ends and the middle, at both sides."};
  step.wrong = {"A blank that rocks on the bed comes out thinner at one corner: plane the glue face first."};
  return step;
}

WalkStep MachineText::pockets() const {
  WalkStep step = begin(WalkKind::pockets);
  cutters(step, CutterUse::pocket_clear);
  if (!has_detail_cutter()) cutters(step, CutterUse::pocket_detail);
  if (!ready_.pieces().empty()) step.act = {"Cut " + counted(ready_.pieces().size(), "pocket") + " to a level floor."};
  builders_cuts(step);
  const double top = wood_top_before(ready_, Operation::pockets);
  for (const auto& [name, height] : named_heights(ready_))
    step.check.push_back(capital(name) + ": the floor is " + fine(top - height.floor) +
                         " below the wood's top as it is now, and " + fine(board_.board.thickness - height.floor) +
                         " below the finished middle.");
  if (!ready_.pieces().empty())
    step.wrong.push_back("Too shallow, and the piece is cut through by the radius; too deep, and it lies in a hollow.");
  return step;
}

/// Cuts of one depth stand in one line.
void MachineText::builders_cuts(WalkStep& step) const {
  std::map<double, std::vector<std::string>> cuts;
  for (const Cut& cut : board_.cuts)
    if (operation_of(cut) == Operation::pockets) cuts[cut.depth].push_back(cut.name);
  for (const auto& [depth, names] : cuts) {
    step.act.push_back(
        "Make the " + quoted("cut", names) +
        (std::isinf(depth) ? ", right through."
                           : ", " + fine(wood_top_before(ready_, Operation::pockets) - board_.board.thickness + depth) +
                                 " below the wood's top as it is now, " + fine(depth) + " below the finished middle."));
    if (!std::isinf(depth)) continue;
    step.need.push_back("a spoil board under the blank");
    step.wrong.push_back("A cut right through goes into what lies under the blank, and the clamps lose wood to hold.");
  }
}

WalkStep MachineText::pockets_detail() const {
  WalkStep step = begin(WalkKind::pockets_detail);
  for (const Cutter& cutter : board_.cutters)
    if (has_use(cutter, CutterUse::pocket_detail) && !has_use(cutter, CutterUse::pocket_clear))
      step.need.push_back(cutter.name + ", " + stock_length(board_.units, cutter.diameter) + " flat");
  step.act = {
      "Change the cutter, set z to 0 again at the same place, and cut what the larger cutter left in the corners."};
  step.check = {"No step shows between the two cutters' floors."};
  step.wrong = {"A z that differs between the cutters leaves a step, and the piece rocks on it."};
  return step;
}

WalkStep MachineText::pieces() const {
  WalkStep step = begin(WalkKind::pieces);
  cutters(step, CutterUse::piece);
  std::map<std::string, std::size_t> count;
  for (const InlayPiece& piece : ready_.pieces()) ++count[piece.material];
  for (const auto& [material, pieces] : count) step.need.push_back(counted(pieces, "piece") + " of " + material);
  step.act = {
      "Fix the sheet flat, clamps clear of the pieces. Cut inside outlines before outside ones, right through."};
  if (!board_.sheets.empty()) step.act.push_back("Each sheet has a drawing and a zero of its own: folder setups/.");
  for (const auto& [name, height] : named_heights(ready_))
    step.check.push_back(capital(name) + (name.starts_with("inlays") ? ": the pieces are " : ": the piece is ") +
                         fine(height.piece_top - height.floor) + " thick.");
  step.wrong = {"A piece that comes free on the last pass is thrown: leave a skin or tabs, or tape the sheet down."};
  return step;
}

WalkStep MachineText::radius() const {
  WalkStep step = begin(WalkKind::radius);
  cutters(step, CutterUse::radius);
  const double top = wood_top_before(ready_, Operation::radius), left = board_.board.thickness + board_.sanding;
  step.act = {"Cut the playing surface over the drawn rectangle; in the middle " + fine(top - left) + " to remove."};
  if (board_.sanding > 0) step.act.push_back(fine(board_.sanding) + " stays on top for the sanding.");
  if (ready_.surface().fall_start)
    step.act.push_back("From fret " + std::to_string(*board_.surface.fall_from_fret) +
                       " on the centre line falls, by " + fine(*board_.surface.fall) + " at the body end.");
  if (const auto& scallops = ready_.surface().scallops; !scallops.empty())
    step.act.push_back("Then cut the scallops between frets " + std::to_string(scallops.front().fret - 1) + " and " +
                       std::to_string(scallops.back().fret) + ", " + fine(scallops.front().depth) +
                       (scallops.front().depth == scallops.back().depth ? "" : " to " + fine(scallops.back().depth)) +
                       " deep in the middle; " + fine(board_.scallop->land) +
                       " stays flat on each side of a slot's middle.");
  const double edge = ready_.surface().height(0, taper_in(ready_.layout()).edge(1, 0)) + board_.sanding;
  step.check = {"Thickness in the middle " + fine(left) + ", at the edge at the nut line " + fine(edge) + "."};
  if (!ready_.surface().flat)
    step.check.push_back("The gauge of radius " + length(ready_.surface().radius(0)) +
                         " sits without light at the nut.");
  step.wrong = {"Cusps between the passes hide the true height: measure in the bottom of a flute."};
  return step;
}

WalkStep MachineText::slots() const {
  WalkStep step = begin(WalkKind::slots);
  cutters(step, CutterUse::slot);
  std::set<int> frets;
  for (const Slot& slot : ready_.slots()) frets.insert(slot.fret);
  const std::size_t parts = ready_.slots().size() - frets.size();
  const bool lines = slot_cut(board_) == SlotCut::lines;
  step.act = {
      "Cut " + counted(frets.size(), "slot") + (parts > 0 ? ", the body end parts the last of them, " : ", ") +
      fine(board_.slots.width) + " wide and " + fine(slot_depth(board_)) + " deep" +
      (board_.slots.floor == SlotFloor::arc ? ", the floor along the arc." : " in the middle, with a level floor.")};
  if (board_.slots.ends == SlotEnds::blind)
    step.act.push_back("They end " + fine(board_.slots.edge_left) + " before the finished edge.");
  if (const double over = wood_top_before(ready_, Operation::slots) - board_.board.thickness; over > tolerance::same)
    step.act.push_back("The wood's top is still " + fine(over) +
                       " over the finished one: from it, in the middle, the slots are " +
                       fine(slot_depth(board_) + over) + " deep.");
  step.check = {lines ? "Try a strip of the lines' veneer in the first slot before the others are cut."
                      : "Try a piece of the wire in the first slot before the others are cut.",
                "From the nut line to the middle of the last slot by the caliper page."};
  step.wrong = {lines ? "A worn or bent cutter makes the slots wide, and a line of glue shows beside the veneer."
                      : "A worn or bent cutter makes the slots wide, and the frets lift."};
  return step;
}

WalkStep MachineText::nut() const {
  WalkStep step = begin(WalkKind::nut);
  cutters(step, CutterUse::nut);
  step.act = {std::string("Cut the nut ") + (ready_.layout().nut->shelf ? "ledge" : "slot") + " " +
              (ready_.layout().nut->shelf ? "" : fine(board_.nut.width) + " wide, ") + fine(board_.nut.depth) +
              " below the finished middle" +
              (board_.nut.floor == NutFloor::arc ? "; the floor follows the surface." : ".")};
  if (board_.nut.compensation > 0)
    step.act.push_back("Its face lies " + fine(board_.nut.compensation) + " from the nut line, toward the bridge.");
  step.check = {"The nut's blank stands upright in it and touches the face."};
  step.wrong = {"A face that is off shifts every note of the open strings."};
  return step;
}

WalkStep MachineText::from_below() const {
  WalkStep step = begin(WalkKind::from_below);
  const std::vector<Pin>& pins = ready_.layout().pins;
  step.act = {
      "Turn the blank over about its length, so that the nut end stays to the left, and find the nut line and "
      "the centre line again."};
  if (!pins.empty()) {
    step.need.push_back("a drill or cutter of " + fine(2 * pins.front().radius));
    step.act.push_back("Drill the pins' holes " + fine(pins.front().depth) + " deep from the glue face.");
  }
  for (std::size_t i = 0; i < pins.size(); ++i)
    step.ticks.push_back("pin " + std::to_string(i + 1) + ": x " + length(pins[i].centre.x) + ", y " +
                         length(-pins[i].centre.y));
  for (const Cut& cut : board_.cuts) {
    if (!is_from_below(cut)) continue;
    step.act.push_back("Make the cut \"" + cut.name + "\", " + fine(cut.depth) + " deep from the glue face.");
    const Point at = middle_of(cut, board_.hand);
    step.ticks.push_back("cut \"" + cut.name + "\": middle at x " + length(at.x) + ", y " + length(-at.y));
  }
  step.act.push_back(
      "Places are from the nut line and the centre line, seen from below; in true size: from-below.dxf.");
  step.act.push_back("Turn it back, clamp it as it was, and find the zero again.");
  step.check = {"Each place lies on the side of the centre line that the drawing shows; depth from the glue face."};
  if (!pins.empty()) step.check.push_back("A pin stands up straight and goes in by hand.");
  step.wrong = {"A hole that comes out at the top shows in the playing surface."};
  if (!ready_.surface().flat && wood_top_before(ready_, Operation::outline) < ready_.layout().blank_thickness)
    step.wrong.push_back(
        "The playing surface is round: a blank that lies on it rocks. Lay it on two strips, one beside each long edge "
        "of "
        "the board.");
  return step;
}

WalkStep MachineText::outline() const {
  WalkStep step = begin(WalkKind::outline);
  cutters(step, CutterUse::outline);
  step.act = {"Cut the outline right through, " + fine(wood_top_before(ready_, Operation::outline)) +
                  " of wood in the middle; leave the tabs that the drawing shows.",
              "Cut the tabs with a saw and plane the edges to the line."};
  if (board_.binding)
    step.act.push_back(
        "Both edges are cut back by " + fine(ledge_width(*board_.binding)) + " for the binding" +
        (board_.binding->lines.empty() ? "" : " and its lines") +
        (board_.binding->height > 0 ? ", down by " + fine(board_.binding->height) + "." : ", all the way."));
  const Layout& layout = ready_.layout();
  step.check = {"Width at the nut line " + length(2 * layout.half_width(0)) + ", at the body end " +
                length(2 * layout.half_width(layout.heel_end)) + (board_.binding ? ", binding included." : ".")};
  step.wrong = {"Without tabs the board comes free on the last pass and is thrown."};
  return step;
}

}  // namespace sagitta
