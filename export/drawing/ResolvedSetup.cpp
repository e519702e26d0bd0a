#include "drawing/ResolvedSetup.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "board/CutSide.hpp"
#include "board/Length.hpp"
#include "drawing/WoodTop.hpp"
#include "layout/Taper.hpp"
#include "rules/Work.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Arm of the cross that marks the zero. mm.
constexpr double cross_arm = 5;

/// Where the edges differ, a blank's middle is not the strings'.
bool off_middle(const Layout& layout) { return !taper_in(layout).symmetric(); }

Point zero_at(const Layout& layout, Zero zero) {
  switch (zero) {
    case Zero::nut:
      return {0, 0};
    case Zero::corner:
      return layout.blank.low;
    case Zero::centre: {
      // Across, the strings' middle line: where the edges differ it is not the middle of a blank about the board.
      const Point middle = between(layout.blank.low, layout.blank.high, 0.5);
      return off_middle(layout) ? Point{middle.x, 0} : middle;
    }
  }
  return {};
}

double height_of(const Layout& layout, const Setup& setup) {
  switch (setup.z_zero) {
    case ZZero::glue_face:
      return 0;
    case ZZero::blank_top:
      return layout.blank_thickness;
    case ZZero::bed:
      return -setup.tape;
  }
  return 0;
}

std::string folder_name(const std::string& name, std::size_t number) {
  char ending[24];
  std::snprintf(ending, sizeof ending, "-%02zu", number);
  const std::string plain = plain_name(name);
  return (plain.empty() ? "setup" : plain) + ending;
}

ResolvedSetup setup_of(const Layout& layout, const Setup& spec, std::size_t number) {
  ResolvedSetup setup;
  setup.name = spec.name.empty() ? "set-up " + std::to_string(number) : spec.name;
  setup.number = static_cast<int>(number);
  setup.folder = folder_name(spec.name, number);
  setup.operations = spec.operations;
  setup.zero = spec.zero;
  setup.z_zero = spec.z_zero;
  setup.origin = zero_at(layout, spec.zero);
  setup.z_origin = height_of(layout, spec);
  setup.tape = spec.tape;
  setup.reclamp_error = spec.reclamp_error;
  return setup;
}

}  // namespace

bool is_cut_by(Operation operation, const std::string& layer) {
  const auto any = [&](std::initializer_list<const char*> names) {
    for (const char* name : names)
      if (layer == name) return true;
    return false;
  };
  switch (operation) {
    case Operation::pockets:
      return any({"pocket", "cuts-top", "cuts-through"});
    case Operation::inlay:
      return layer.starts_with("piece-");
    case Operation::radius:
      return layer == "radius-area";
    case Operation::slots:
      return any({"slot-middle", "slot-outline", "nut-seat"});
    case Operation::thickness:
      return false;
    case Operation::outline:
      return any({"outline", "tabs", "binding", "side-dots", "cuts-below"});
  }
  return false;
}

bool is_ground(const std::string& layer) {
  for (const char* each : {"centre-line", "blank-centre", "blank", "dowels", "clamps"})
    if (layer == each) return true;
  return false;
}

namespace {

bool is_drawn(const ResolvedSetup& setup, const std::string& layer) {
  const auto cut = [&](Operation operation) { return is_cut_by(operation, layer); };
  return is_ground(layer) || std::any_of(setup.operations.begin(), setup.operations.end(), cut);
}

std::string list_of(const std::vector<Operation>& operations) {
  std::string text;
  for (const Operation each : operations) text += (text.empty() ? "" : ", ") + std::string(operation_name(each));
  return text;
}

/// Those that the board has something to do for.
std::vector<Operation> with_work(const PreparedBoard& ready, std::vector<Operation> operations) {
  std::erase_if(operations, [&](Operation each) { return !has_work(ready, each); });
  return operations;
}

std::string size_words(const StockSize& size, Units units) {
  const auto number = [&](double mm) {
    const std::string text = stock_length(units, mm);
    return text.substr(0, text.rfind(' '));
  };
  return number(size.length) + " x " + number(size.width) + " x " + stock_length(units, size.thickness);
}

std::string zero_note(const Layout& layout, const ZeroPlace& place, Units units) {
  const std::string what = place.zero == Zero::nut      ? "nut line on the centre line"
                           : place.zero == Zero::corner ? "blank's lower left corner"
                           : off_middle(layout)         ? "middle of the blank's length on the centre line"
                                                        : "middle of the blank";
  if (place.zero == Zero::nut) return "Zero at the nut: the " + what + " itself.";
  return "Zero at the " + zero_word(place.zero) + ": from the " + what + " to the nut line on the centre line " +
         measured_length(units, place.to_nut.x) + " along, " + measured_length(units, place.to_nut.y) + " across.";
}

std::string height_note(const PreparedBoard& ready, const ResolvedSetup& setup, Units units) {
  const double blank = ready.layout().blank_thickness, now = wood_top_before(ready, setup);
  const auto z = [&](double height) { return measured_length(units, setup.z_from_board(height)); };
  return "z = 0 on the " + zero_word(setup.z_zero) +
         (setup.tape > 0 ? ", tape " + measured_length(units, setup.tape) : "") + ": glue face at z = " + z(0) +
         ", finished top at z = " + z(ready.board().board.thickness) +
         (now == blank ? ", blank's top at z = " + z(blank) : ", the wood's top now at z = " + z(now)) + ".";
}

std::string blank_note(const PreparedBoard& ready, Units units) {
  const Blank& given = ready.board().blank;
  const std::string size = size_words(measured_blank(ready.layout()), units);
  const int measures = given.length.has_value() + given.width.has_value() + given.thickness.has_value();
  const char* how = measures == 3   ? " as measured."
                    : measures == 0 ? ": what the board asks for."
                                    : ": as measured, and what the board asks for where nothing was.";
  return "Blank " + size + how;
}

}  // namespace

Layer zero_layer() {
  const auto arm = [](Point to) { return Figure{"zero", {line(-1 * to, to)}, false}; };
  return {"zero", "#e02020", {arm({cross_arm, 0}), arm({0, cross_arm})}};
}

std::string zero_word(Zero zero) { return zero == Zero::nut ? "nut" : zero == Zero::corner ? "corner" : "centre"; }

std::string zero_word(ZZero zero) {
  return zero == ZZero::glue_face ? "glue face" : zero == ZZero::blank_top ? "blank's top" : "bed";
}

Setup whole_job(const Board& board) {
  Setup whole;
  whole.name = "whole-job";
  whole.operations = board.order;
  whole.tape = board.measured.tape.value_or(0);
  return whole;
}

std::vector<ResolvedSetup> setups_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const std::vector<Setup> named = board.setups.empty() ? std::vector{whole_job(board)} : board.setups;
  const auto& only = ready.selection().operation;
  std::vector<ResolvedSetup> setups;
  for (std::size_t i = 0; i < named.size(); ++i) {
    ResolvedSetup setup = setup_of(ready.layout(), named[i], i + 1);
    if (only) std::erase_if(setup.operations, [&](Operation each) { return each != *only; });
    if (!setup.operations.empty()) setups.push_back(std::move(setup));
  }
  return setups;
}

bool has_work(const PreparedBoard& ready, Operation operation) {
  const auto from_top = [](const Cut& cut) { return operation_of(cut) == Operation::pockets; };
  switch (operation) {
    case Operation::pockets:
      return !ready.pieces().empty() || std::ranges::any_of(ready.board().cuts, from_top);
    case Operation::inlay:
      return !ready.pieces().empty();
    case Operation::slots:
      return !ready.slots().empty() || ready.layout().nut;
    default:
      return true;
  }
}

std::vector<ZeroPlace> zero_places(const Layout& layout) {
  std::vector<ZeroPlace> places;
  for (const Zero zero : {Zero::nut, Zero::corner, Zero::centre}) {
    const Point at = zero_at(layout, zero);
    places.push_back({zero, at, Point{} - at});
  }
  return places;
}

StockSize measured_blank(const Layout& layout) {
  const Point size = layout.blank.high - layout.blank.low;
  return {size.x, size.y, layout.blank_thickness};
}

std::vector<std::string> setup_notes(const PreparedBoard& ready, const ResolvedSetup& setup, Units units) {
  const Layout& layout = ready.layout();
  std::vector<std::string> notes = {"Operations: " + list_of(with_work(ready, setup.operations)) +
                                    ". The files' zero: " + zero_word(setup.zero) + ", " + zero_word(setup.z_zero) +
                                    "."};
  for (const ZeroPlace& place : zero_places(layout)) notes.push_back(zero_note(layout, place, units));
  notes.push_back(height_note(ready, setup, units));
  notes.push_back(blank_note(ready, units));
  if (off_middle(layout)) {
    const double off = (layout.blank.low.y + layout.blank.high.y) / 2;
    notes.push_back("The board's two edges differ. The centre line is the strings' middle: it lies " +
                    measured_length(units, std::abs(off)) + (off > 0 ? " below" : " above") +
                    " the middle of the blank's width.");
  }
  return notes;
}

Drawing setup_drawing(const PreparedBoard& ready, const ResolvedSetup& setup, const Drawing& drawing) {
  const Box& blank = ready.layout().blank;
  Drawing own = moved(drawing, Point{} - setup.origin);
  own.title = drawing.title + ", set-up " + setup.name;
  own.page = {setup.from_board(blank.low), setup.from_board(blank.high)};
  std::erase_if(own.layers, [&](const Layer& layer) { return !is_drawn(setup, layer.name); });
  own.layers.push_back(zero_layer());
  own.notes = setup_notes(ready, setup, Units::mm);
  own.notes.push_back("True size, millimetres. Slots, nut seat and binding lines run " +
                      shown_length(drawing_overrun, Units::mm) + " past the finished edge.");
  return own;
}

}  // namespace sagitta
