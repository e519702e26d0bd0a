#pragma once

/// Labels over a picture that do not cover each other.

#include <array>
#include <optional>
#include <vector>

#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Words on small sheets of paper over a picture, none over another: one that finds its place taken moves off and is
/// tied to it by a line. Made anew for each frame.
class Labels {
 public:
  /// The sheets are noted as `name` and their number.
  Labels(Ui& ui, ImDrawList* paint, std::string name = "label ") : ui_(ui), paint_(paint), name_(std::move(name)) {}

  ~Labels() { draw(); }
  Labels(const Labels&) = delete;
  Labels& operator=(const Labels&) = delete;

  /// Finds room for the words with their middle at `at`, or as near to it as they go inside the picture, in pixels.
  /// What they belong to stands at `anchor`: a line ties them to it when they had to move. Drawn last, over all lines;
  /// left out where there is no room at all.
  void put(ImVec2 at, const std::string& text, ImVec2 anchor);
  /// Keeps words put from now on off a convex shape as well, wherever there is room beside it.
  void keep_off(const std::array<ImVec2, 4>& shape) { shape_ = shape; }
  /// Keeps words off a spot.
  void keep_clear(ImVec2 low, ImVec2 high) { taken_.push_back({low.x, low.y, high.x, high.y}); }

 private:
  struct Sheet {
    ImVec4 box;
    std::string text;
    ImVec2 anchor;
    bool tied;
  };
  bool free(const ImVec4& box) const;
  /// The free place nearest to the wanted one, with this much room about it; nothing when there is none.
  std::optional<ImVec2> free_place(ImVec2 at, ImVec2 half, bool beside_shape) const;
  void draw();
  Ui& ui_;
  ImDrawList* paint_;
  std::string name_;
  std::vector<Sheet> sheets_;
  std::optional<std::array<ImVec2, 4>> shape_;
  std::vector<ImVec4> taken_;  ///< low x, low y, high x, high y
};

}  // namespace sagitta::viewer
