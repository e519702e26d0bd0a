#include "drawing/BoardDrawing.hpp"

#include <algorithm>
#include <cctype>

#include "board/SlotCut.hpp"
#include "drawing/DrawingParts.hpp"

namespace sagitta {
namespace {

/// Layers in the order of the work, each opened when something is drawn on it.
class Pad {
 public:
  explicit Pad(Drawing& drawing) : drawing_(drawing) {}

  /// Does not draw what is there already: the same pocket from two inlays is one pocket.
  void draw(const std::string& layer, const std::string& colour, std::vector<Figure> figures) {
    for (Figure& figure : figures) {
      if (figure.pieces.empty()) continue;
      Layer& on = opened(layer, colour);
      const bool there = std::any_of(on.figures.begin(), on.figures.end(),
                                     [&](const Figure& other) { return same_figure(other, figure); });
      if (!there) on.figures.push_back(std::move(figure));
    }
  }

 private:
  Layer& opened(const std::string& name, const std::string& colour) {
    for (Layer& layer : drawing_.layers)
      if (layer.name == name) return layer;
    return drawing_.layers.emplace_back(Layer{name, colour, {}});
  }

  Drawing& drawing_;
};

/// Readers of DXF take capital and small letters of a layer's name for the same.
bool same_layer(std::string_view a, std::string_view b) {
  const auto same = [](unsigned char c, unsigned char d) { return std::tolower(c) == std::tolower(d); };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), same);
}

/// A layer a material. Names that come out alike are told apart by a number.
class PieceLayers {
 public:
  std::string name_of(const std::string& material) {
    for (const auto& [known, layer] : names_)
      if (known == material) return layer;
    std::string layer = plain_name("piece-" + material);
    for (int n = 2; taken(layer); ++n) {
      const std::string ending = "-" + std::to_string(n);
      layer = plain_name("piece-" + material).substr(0, longest_layer_name - ending.size()) + ending;
    }
    names_.emplace_back(material, layer);
    return layer;
  }

 private:
  bool taken(const std::string& layer) const {
    return std::any_of(names_.begin(), names_.end(), [&](const auto& name) { return same_layer(name.second, layer); });
  }

  std::vector<std::pair<std::string, std::string>> names_;
};

std::vector<std::string> notes_of(const std::vector<Slot>& slots) {
  std::vector<std::string> notes = {
      "True size, millimetres; nut to the left, x = 0 at the nut line on the centre line, x toward the bridge.",
      "Slots, nut seat and binding lines run 2 mm past the finished edge.",
      "Lines are lines and arcs are arcs: nothing is approximated."};
  static_assert(drawing_overrun == 2, "the note above says so");
  if (!slots.empty() && slots.front().blind)
    notes.push_back(
        "A blind slot's middle line ends at the centre of its round end, where a cutter of its width turns.");
  return notes;
}

}  // namespace

Drawing drawing_of(const PreparedBoard& ready, const InlayOutlines& inlays, const DrawingOptions& options) {
  const std::string& name = ready.board().name;
  const Layout& layout = ready.layout();
  Drawing drawing{name.empty() ? "fretboard" : name, notes_of(ready.slots()), bounds(layout.outline), {}};
  Pad pad(drawing);
  PieceLayers layers;
  pad.draw("pocket", "#b03030", inlays.pockets);
  for (const InlayPiece& piece : inlays.pieces) pad.draw(layers.name_of(piece.material), "#b07020", figures_of(piece));
  pad.draw("cuts-top", "#c04868", cut_figures(ready, CutLayer::top));
  pad.draw("cuts-through", "#d02040", cut_figures(ready, CutLayer::through));
  pad.draw("radius-area", "#808080", {radius_area_figure(layout)});
  pad.draw("slot-middle", "#2050c0", slot_middle_figures(ready.slots()));
  pad.draw("slot-outline", "#6090e0", slot_outline_figures(ready.slots()));
  if (slot_cut(ready.board()) == SlotCut::none) pad.draw("fret-places", "#90a0c0", fret_place_figures(layout));
  pad.draw("nut-seat", "#208050", nut_seat_figures(layout));
  pad.draw("outline", "#202020", {outline_figure(layout)});
  pad.draw("tabs", "#c060a0", tab_figures(layout));
  pad.draw("binding", "#807020", binding_figures(ready));
  pad.draw("side-dots", "#30a0a0", side_dot_figures(ready.side_dots()));
  pad.draw("cuts-below", "#9a50b8", cut_figures(ready, CutLayer::below));
  pad.draw("pins", "#8040a0", pin_figures(layout));
  pad.draw("centre-line", "#a0a0a0", {centre_line_figure(layout)});
  pad.draw("blank-centre", "#c0c0c0", blank_centre_figures(layout));
  pad.draw("blank", "#806040", {blank_figure(layout)});
  if (options.dowels) pad.draw("dowels", "#404040", dowel_figures(layout));
  pad.draw("clamps", "#d0a040", clamp_figures(ready));
  return drawing;
}

}  // namespace sagitta
