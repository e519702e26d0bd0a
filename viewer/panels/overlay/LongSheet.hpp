#pragma once

/// A drawing along the whole board with its heights stretched: its scales and the strokes that it is made of.

#include <imgui.h>

#include <string>
#include <vector>

#include "jobs/Results.hpp"
#include "scene/LongSlice.hpp"
#include "view/View.hpp"
#include "widgets/Labels.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What is to be seen: x along the board and z up, mm.
struct LongExtent {
  double x_low = 0, x_high = 1, z_low = 0, z_high = 1;
  void take(double z);
};

/// From x and z to the window. Heights are drawn `times` larger, a whole number.
struct LongFrame {
  ImVec2 origin;  ///< where x_low and z_low land
  double x_low = 0, z_low = 0, along = 1;
  int times = 1;
  ImVec2 at(double x, double z) const {
    return {origin.x + static_cast<float>((x - x_low) * along),
            origin.y - static_cast<float>((z - z_low) * along * times)};
  }
  double x_at(float pixel) const { return x_low + static_cast<double>(pixel - origin.x) / along; }
};
LongFrame long_frame(const LongExtent& extent, ImVec2 low, ImVec2 high);

/// What such a drawing is made with. Between `low` and `high` lies the drawing; labels may stand beside it.
struct LongSheet {
  Ui& ui;
  const View& view;
  const Manner& manner;
  const Model& model;
  const StageModel& stage;
  LongFrame frame;
  ImVec2 low, high;
  Labels& labels;
  ImDrawList* paint = ImGui::GetWindowDrawList();

  const PreparedBoard& board() const { return *model.prepared; }
  ImVec2 at(double x, double z) const { return frame.at(x, z); }
  std::string mm(double v) const { return shown(v, manner, 2); }
  void lines(const std::vector<SliceLine>& all, ImU32 ink, float thick) const;
  /// What lies between the lowest and the highest of the lines, column by column.
  void fill(const std::vector<SliceLine>& all, ImU32 ink) const;
  void path(const std::vector<Point>& points, ImU32 ink, float thick) const;
  void line(Point a, Point b, ImU32 ink, float thick) const;
  /// An upright dimension at x with its words beside it: -1 to the left, 1 to the right; `off`: their middle lies so
  /// far from the dimension's, pixels.
  void upright(double x, double from, double to, float side, const std::string& text, float off = 0) const;
  /// An upright hair line over the whole drawing.
  void hair(double x, ImU32 ink) const;
  /// Numbers of the frets that usually have a marker, in a row whose middle is y.
  void fret_numbers(float y) const;
  /// "Heights drawn 12 times larger", in the upper left corner.
  void state_factor(const std::string& more = {}) const;
};

}  // namespace sagitta::viewer
