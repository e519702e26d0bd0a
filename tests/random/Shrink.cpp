#include "random/Shrink.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <vector>

#include "board/Fields.hpp"
#include "board/Writer.hpp"
#include "random/RandomBoard.hpp"

namespace sagitta::random_boards {
namespace {

using Step = std::function<void(Board&)>;

void drop_features(const Board& board, std::vector<Step>& steps) {
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    steps.push_back([i](Board& b) { b.inlays.erase(b.inlays.begin() + static_cast<std::ptrdiff_t>(i)); });
    for (std::size_t k = 0; k < board.inlays[i].frets.size(); ++k)
      steps.push_back(
          [i, k](Board& b) { b.inlays[i].frets.erase(b.inlays[i].frets.begin() + static_cast<std::ptrdiff_t>(k)); });
    for (std::size_t k = 0; k < board.inlays[i].double_frets.size(); ++k)
      steps.push_back([i, k](Board& b) {
        b.inlays[i].double_frets.erase(b.inlays[i].double_frets.begin() + static_cast<std::ptrdiff_t>(k));
      });
    steps.push_back([i](Board& b) {
      for (auto* frets : {&b.inlays[i].frets, &b.inlays[i].double_frets})
        if (frets->size() == 1) frets->front() = 1;
    });
    steps.push_back([i](Board& b) { b.inlays[i].turn_degrees = 0; });
    steps.push_back([i](Board& b) { b.inlays[i].shift_along = b.inlays[i].shift_across = 0; });
    steps.push_back([i](Board& b) { b.inlays[i].clearance = 0; });
  }
  steps.push_back([](Board& b) { b.side_dots.reset(); });
  steps.push_back([](Board& b) { b.binding.reset(); });
  steps.push_back([](Board& b) { b.pins.reset(); });
  if (board.side_dots)
    for (std::size_t k = 0; k < board.side_dots->frets.size(); ++k)
      steps.push_back(
          [k](Board& b) { b.side_dots->frets.erase(b.side_dots->frets.begin() + static_cast<std::ptrdiff_t>(k)); });
  if (board.pins)
    for (std::size_t k = 0; k < board.pins->at.size(); ++k)
      steps.push_back([k](Board& b) { b.pins->at.erase(b.pins->at.begin() + static_cast<std::ptrdiff_t>(k)); });
  for (std::size_t i = 0; i < board.cuts.size(); ++i) {
    steps.push_back([i](Board& b) { b.cuts.erase(b.cuts.begin() + static_cast<std::ptrdiff_t>(i)); });
    steps.push_back([i](Board& b) { b.cuts[i].turn_degrees = 0; });
  }
  steps.push_back([](Board& b) { b.scallop.reset(); });
  steps.push_back([](Board& b) { b.edges.reset(); });
  steps.push_back([](Board& b) { b.tongue.reset(); });
  steps.push_back([](Board& b) { b.thickness_to.reset(); });
  steps.push_back([](Board& b) {
    if (b.binding) b.binding->lines.clear(), b.binding->line_materials.clear();
  });
  steps.push_back([](Board& b) {
    if (b.side_dots) b.side_dots->edge = DotEdge::bass, b.side_dots->in = DotIn::wood;
  });
  steps.push_back([](Board& b) { b.cutters.clear(); });
  steps.push_back([](Board& b) { b.sanding = 0; });
  steps.push_back([](Board& b) { b.order = Board{}.order; });
}

void simplify(std::vector<Step>& steps) {
  steps.push_back([](Board& b) { b.units = Units::mm; });
  steps.push_back([](Board& b) { b.hand = Hand::right; });
  steps.push_back([](Board& b) { b.nut = Nut{}, b.scale.zero_fret = false; });
  steps.push_back([](Board& b) { b.slots.ends = SlotEnds::through; });
  steps.push_back([](Board& b) { b.slots.floor = SlotFloor::arc; });
  steps.push_back([](Board& b) { b.surface.fall_from_fret.reset(), b.surface.fall.reset(); });
  steps.push_back([](Board& b) { b.surface.profile = Profile::flat; });
  steps.push_back([](Board& b) {
    if (b.surface.radius_at_nut) b.surface.profile = Profile::single;
  });
  steps.push_back([](Board& b) { b.surface.heel_at = HeelAt::heel; });
  steps.push_back([](Board& b) { b.board.heel = Heel::square; });
  steps.push_back([](Board& b) { b.board.corner_radius = 0; });
  steps.push_back([](Board& b) { b.board.behind_nut.reset(); });
  steps.push_back([](Board& b) { b.strings.count = 4, b.strings.course = 1, b.strings.course_gap.reset(); });
  steps.push_back([](Board& b) { b.slots.cut.reset(), b.slots.line_thickness.reset(); });
  steps.push_back([](Board& b) { b.board.width_at_fret.reset(), b.board.heel_width = b.board.nut_width; });
  steps.push_back([](Board& b) {
    if (b.edges) b.edges->stage = EdgeStage::machine;
  });
  steps.push_back([](Board& b) {
    if (b.scallop) b.scallop->depth.second = b.scallop->depth.first;
  });
  steps.push_back([](Board& b) {
    if (b.scale.bass)
      b.scale.length = b.scale.treble, b.scale.bass.reset(), b.scale.treble.reset(), b.scale.square_fret = 0;
  });
  steps.push_back([](Board& b) { b.scale.cents.clear(), b.scale.steps_per_octave.reset(); });
  for (const int by : {16, 8, 4, 2, 1})
    steps.push_back([by](Board& b) {
      b.scale.frets -= by;
      if (static_cast<int>(b.scale.cents.size()) > b.scale.frets)
        b.scale.cents.resize(static_cast<std::size_t>(std::max(0, b.scale.frets)));
    });
}

/// Every length of the board to fewer digits.
void round_numbers(std::vector<Step>& steps) {
  for (const int parts : {1, 2, 10, 100}) {
    const auto near = [parts](double& value) { value = std::round(value * parts) / parts; };
    const auto near_if = [near](std::optional<double>& value) {
      if (value) near(*value);
    };
    steps.push_back([=](Board& b) { near_if(b.scale.length), near_if(b.scale.bass), near_if(b.scale.treble); });
    steps.push_back([=](Board& b) { near(b.strings.nut_spread), near(b.strings.saddle_spread); });
    steps.push_back([=](Board& b) { near(b.board.thickness), near(b.board.past_last_fret); });
    steps.push_back([=](Board& b) {
      for (auto* v : {&b.board.edge_margin, &b.board.nut_margin, &b.board.heel_margin})
        if (*v) near((*v)->first), (*v)->second = (*v)->first;
      for (auto* v : {&b.board.nut_width, &b.board.heel_width, &b.board.behind_nut}) near_if(*v);
    });
    steps.push_back([=](Board& b) {
      near_if(b.surface.radius_at_nut), near_if(b.surface.radius_at_heel), near_if(b.surface.fall);
    });
    steps.push_back([=](Board& b) { near(b.slots.width), near_if(b.slots.depth), near(b.slots.edge_left); });
    steps.push_back([=](Board& b) { near(b.nut.width), near(b.nut.depth); });
    steps.push_back([=](Board& b) {
      if (b.edges) near(b.edges->roll), near(b.edges->bevel), near(b.edges->bevel_angle_degrees);
      if (b.scallop) near(b.scallop->depth.first), near(b.scallop->depth.second), near(b.scallop->land);
    });
    steps.push_back([=](Board& b) {
      for (Cut& cut : b.cuts) {
        near_if(cut.diameter), near_if(cut.along), near_if(cut.across), near(cut.at[0]), near(cut.at[1]);
        near(cut.turn_degrees);
        if (std::isfinite(cut.depth)) near(cut.depth);
      }
    });
    steps.push_back([=](Board& b) {
      for (Inlay& i : b.inlays)
        near(i.depth), near(i.diameter), near_if(i.along), near_if(i.across), near_if(i.across_nut),
            near_if(i.across_heel);
    });
    steps.push_back([=](Board& b) {
      for (Inlay& i : b.inlays) near(i.shift_along), near(i.shift_across), near(i.turn_degrees), near_if(i.spread);
    });
  }
}

std::vector<Step> steps_for(const Board& board) {
  std::vector<Step> steps;
  drop_features(board, steps);
  simplify(steps);
  round_numbers(steps);
  return steps;
}

/// Every step once, each on what the ones before it left. False when none made the board smaller.
bool improve(Board& board, const std::function<bool(const Board&)>& still_fails) {
  bool better = false;
  std::vector<Step> steps = steps_for(board);
  for (std::size_t i = 0; i < steps.size();) {
    Board smaller = board;
    steps[i](smaller);
    smaller = tidy(smaller);
    if (smaller == board || !sound(smaller) || !still_fails(smaller)) {
      ++i;
      continue;
    }
    board = smaller;
    better = true;
    steps = steps_for(board);  // what was dropped is no longer there to be dropped: the same place is the next step
  }
  return better;
}

}  // namespace

Board shrink(Board board, const std::function<bool(const Board&)>& still_fails) {
  while (improve(board, still_fails)) {
  }
  return board;
}

void keep(const Board& board, const std::string& name) {
  const char* folder = std::getenv("SAGITTA_REGRESSIONS");
  if (!folder) return;
  std::filesystem::create_directories(folder);
  std::ofstream(std::filesystem::path(folder) / (name + ".toml")) << write_board(board);
}

}  // namespace sagitta::random_boards
