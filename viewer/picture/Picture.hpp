#pragma once

/// The board's picture and the small pictures of its stages: drawn again only when something in them changed.

#include <array>
#include <memory>

#include "jobs/Results.hpp"
#include "picture/Scene.hpp"
#include "view/View.hpp"

namespace sagitta::viewer {

/// The colours that a picture is drawn in.
struct Look {
  bool dark = false;
  Ink ink;
};

class Picture {
 public:
  Picture();
  /// Makes room; call before the panels are laid out, so that the texture they name is the one drawn into.
  void resize(int width, int height, bool moving);
  /// Brings new render meshes to the graphics card and draws what changed.
  void refresh(const View& view, const Results& results, const Look& look);
  /// Draws at most one small picture that is out of date. True while more are.
  bool refresh_stages(const View& view, const Results& results, const Look& look);
  /// Makes room for the small pictures; call before the panels are laid out.
  void resize_stages(int width, int height);

  GLuint texture() const { return target().texture(); }
  /// 0 while nothing is drawn in it.
  GLuint stage_texture(Stage stage) const {
    const auto i = static_cast<std::size_t>(stage);
    return stage_drawn_[i] ? stage_targets_[i].texture() : 0;
  }
  /// Grows whenever any of the pictures is drawn again.
  std::uint64_t changes() const { return changes_; }
  int drawn() const { return drawn_; }  ///< pictures so far
  std::vector<std::uint8_t> pixels() const { return target().pixels(); }
  int width() const { return target().width(); }
  int height() const { return target().height(); }

 private:
  const Target& target() const { return moving_ ? fast_ : fine_; }
  void load(const View& view, const Results& results);
  struct Drawn {
    Camera camera;
    Showing showing;
    bool dark = false;
    std::uint64_t loads = 0;
    bool moving = false;
    int width = 0, height = 0;
    bool operator==(const Drawn&) const = default;
  };

  Scene scene_, small_;
  Target fast_, fine_;  ///< without and with several samples a pixel
  bool moving_ = false, software_ = false;
  std::array<Target, stage_count> stage_targets_;
  std::array<std::shared_ptr<const StageModel>, stage_count> stage_drawn_;
  bool stages_dark_ = false, stages_pieces_ = true;
  int stages_width_ = 0;
  std::shared_ptr<const StageModel> loaded_;
  std::shared_ptr<const Fittings> fitted_;
  std::shared_ptr<const StageModel> compared_;
  std::uint64_t loads_ = 0;
  double largest_change_ = 1;
  Drawn last_;
  int drawn_ = 0;
  std::uint64_t changes_ = 0;
};

/// What of the scene the view asks for.
Showing showing_of(const View& view, const Results& results, double largest_change);
/// The shadow's shape: the blank or the outline's four corners.
Footprint footprint_of(const Model& model, Stage stage);

}  // namespace sagitta::viewer
