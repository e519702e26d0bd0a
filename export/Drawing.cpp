#include "export/Drawing.hpp"

#include <algorithm>
#include <cctype>

#include "export/DrawingParts.hpp"
#include "export/InlayOutlines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr std::size_t longest_name = 31;

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
      layer = plain_name("piece-" + material).substr(0, longest_name - ending.size()) + ending;
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

void mirror(Figure& figure) {
  if (figure.ellipse) figure.ellipse = figure.ellipse->mirrored();
  if (figure.closed)
    figure.pieces = mirrored(figure.pieces);
  else
    for (Piece& piece : figure.pieces) piece = piece.mirrored();
}

}  // namespace

bool is_circle(const Figure& figure) {
  if (!figure.closed || figure.pieces.empty()) return false;
  double turn = 0;
  for (const Piece& piece : figure.pieces) {
    if (!piece.is_arc() || distance(piece.centre, figure.pieces.front().centre) > tolerance::same) return false;
    turn += piece.sweep;
  }
  return std::abs(std::abs(turn) - 2 * std::numbers::pi) < tolerance::same;
}

const Layer* layer_named(const Drawing& drawing, std::string_view name) {
  for (const Layer& layer : drawing.layers)
    if (layer.name == name) return &layer;
  return nullptr;
}

std::string plain_name(std::string_view text) {
  std::string name;
  for (const char c : text) {
    const auto code = static_cast<unsigned char>(c);
    if ((code & 0xc0) == 0x80) continue;  // the rest of a letter that is not ASCII
    name += code < 0x80 && (std::isalnum(code) || c == '-' || c == '_') ? c : '_';
  }
  return name.substr(0, longest_name);
}

Drawing drawing_of(const PreparedBoard& ready, const InlayOutlines& inlays, const DrawingOptions& options) {
  const std::string& name = ready.board().name;
  const Layout& layout = ready.layout();
  Drawing drawing{name.empty() ? "fretboard" : name, notes_of(ready.slots()), bounds(layout.outline), {}};
  Pad pad(drawing);
  PieceLayers layers;
  pad.draw("pocket", "#b03030", inlays.pockets);
  for (const InlayPiece& piece : inlays.pieces) pad.draw(layers.name_of(piece.material), "#b07020", figures_of(piece));
  pad.draw("radius-area", "#808080", {radius_area_figure(layout)});
  pad.draw("slot-middle", "#2050c0", slot_middle_figures(ready.slots()));
  pad.draw("slot-outline", "#6090e0", slot_outline_figures(ready.slots()));
  pad.draw("nut-seat", "#208050", nut_seat_figures(layout));
  pad.draw("outline", "#202020", {outline_figure(layout)});
  pad.draw("tabs", "#c060a0", tab_figures(layout));
  pad.draw("binding", "#807020", binding_figures(ready));
  pad.draw("side-dots", "#30a0a0", side_dot_figures(ready.side_dots()));
  pad.draw("pins", "#8040a0", pin_figures(layout));
  pad.draw("centre-line", "#a0a0a0", {centre_line_figure(layout)});
  pad.draw("blank-centre", "#c0c0c0", blank_centre_figures(layout));
  pad.draw("blank", "#806040", {blank_figure(layout)});
  if (options.dowels) pad.draw("dowels", "#404040", dowel_figures(layout));
  pad.draw("clamps", "#d0a040", clamp_figures(ready));
  return drawing;
}

Drawing from_below(const Drawing& drawing) {
  Drawing below = mirrored(drawing);
  below.title += ", from below";
  std::erase_if(below.layers, [](const Layer& layer) {
    for (const char* kept : {"pins", "dowels", "outline", "blank", "blank-centre", "centre-line"})
      if (layer.name == kept) return false;
    return true;
  });
  below.notes = {"Seen from below: the blank is turned over about its long axis; x stays and y changes its sign.",
                 "True size, millimetres; x = 0 at the nut line on the centre line, x toward the bridge."};
  return below;
}

Drawing moved(Drawing drawing, Point by) {
  drawing.page = {drawing.page.low + by, drawing.page.high + by};
  for (Layer& layer : drawing.layers)
    for (Figure& figure : layer.figures) {
      if (figure.ellipse) figure.ellipse = figure.ellipse->moved(by);
      for (Piece& piece : figure.pieces) {
        piece.a = piece.a + by;
        piece.b = piece.b + by;
        piece.centre = piece.centre + by;
      }
    }
  return drawing;
}

Drawing mirrored(Drawing drawing) {
  drawing.page = {{drawing.page.low.x, -drawing.page.high.y}, {drawing.page.high.x, -drawing.page.low.y}};
  for (Layer& layer : drawing.layers)
    for (Figure& figure : layer.figures) mirror(figure);
  return drawing;
}

}  // namespace sagitta
