#include "cad/StepDress.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdio>
#include <map>
#include <stdexcept>

#include "text/StepString.hpp"

namespace sagitta {
namespace {

/// "#rrggbb" as three parts of one, as STEP files of the trade carry sRGB.
std::array<double, 3> parts_of(const std::string& hex) {
  const auto digit = [](char c) { return std::isxdigit(static_cast<unsigned char>(c)) != 0; };
  if (hex.size() != 7 || hex[0] != '#' || !std::all_of(hex.begin() + 1, hex.end(), digit))
    throw std::runtime_error("\"" + hex + "\" is not a colour");
  std::array<double, 3> parts{};
  for (std::size_t i = 0; i < 3; ++i) parts[i] = std::stoi(hex.substr(1 + 2 * i, 2), nullptr, 16) / 255.0;
  return parts;
}

class Dresser {
 public:
  explicit Dresser(int next) : next_(next) {}

  void dress(const StepDressed& item) {
    const std::string colour = entity(colour_text(item.colour));
    const std::string look = item.curves ? curve_look(colour) : surface_look(colour);
    const std::string style = entity("PRESENTATION_STYLE_ASSIGNMENT((" + look + "))");
    const std::string styled = entity("STYLED_ITEM('colour',(" + style + "),#" + std::to_string(item.item) + ")");
    entity("MECHANICAL_DESIGN_GEOMETRIC_PRESENTATION_REPRESENTATION('',(" + styled + "),#" +
           std::to_string(item.context) + ")");
  }

  void put_on_layers(const std::vector<StepDressed>& items) {
    std::vector<std::string> names;
    std::map<std::string, std::string> members;
    for (const StepDressed& item : items) {
      if (!members.contains(item.layer)) names.push_back(item.layer);
      std::string& list = members[item.layer];
      list += (list.empty() ? "#" : ",#") + std::to_string(item.item);
    }
    for (const std::string& name : names)
      entity("PRESENTATION_LAYER_ASSIGNMENT('" + step_string(name) + "','',(" + members[name] + "))");
  }

  std::string text() { return std::move(text_); }

 private:
  /// Adds an entity and gives the reference to it.
  std::string entity(const std::string& what) {
    const std::string reference = "#" + std::to_string(next_++);
    text_ += reference + " = " + what + ";\n";
    return reference;
  }

  static std::string colour_text(const std::string& hex) {
    const std::array<double, 3> parts = parts_of(hex);
    char buffer[80];
    std::snprintf(buffer, sizeof buffer, "COLOUR_RGB('',%.9f,%.9f,%.9f)", parts[0], parts[1], parts[2]);
    return buffer;
  }

  std::string surface_look(const std::string& colour) {
    const std::string fill = entity("FILL_AREA_STYLE_COLOUR(''," + colour + ")");
    const std::string area = entity("FILL_AREA_STYLE('',(" + fill + "))");
    const std::string surface = entity("SURFACE_STYLE_FILL_AREA(" + area + ")");
    const std::string side = entity("SURFACE_SIDE_STYLE('',(" + surface + "))");
    return entity("SURFACE_STYLE_USAGE(.BOTH.," + side + ")");
  }

  std::string curve_look(const std::string& colour) {
    const std::string font = entity("DRAUGHTING_PRE_DEFINED_CURVE_FONT('continuous')");
    return entity("CURVE_STYLE(''," + font + ",POSITIVE_LENGTH_MEASURE(0.1)," + colour + ")");
  }

  int next_;
  std::string text_;
};

}  // namespace

std::string step_dress(const std::vector<StepDressed>& items, int next) {
  Dresser dresser(next);
  for (const StepDressed& item : items) dresser.dress(item);
  dresser.put_on_layers(items);
  return dresser.text();
}

}  // namespace sagitta
