#include "artwork/SvgPaint.hpp"

#include "artwork/Colour.hpp"
#include "artwork/Scan.hpp"

namespace sagitta {
namespace {

/// A fill by gradient or pattern: its colour to fall back on, if it names one.
std::optional<std::string> painted(const std::string& paint, const ElementsById& by_id, const std::string& where,
                                   Notes& notes) {
  const std::size_t close = paint.find(')');
  const std::size_t hash = paint.find('#');
  std::string server;
  if (hash != std::string::npos && hash < close)
    server = paint.substr(hash + 1, paint.find_first_of(")\"'", hash) - hash - 1);
  const auto found = by_id.find(server);
  const std::string kind = found == by_id.end() ? "something that is not in the drawing"
                                                : "a " + std::string(plain_name(found->second).substr(0, 40));
  const auto colour =
      close == std::string::npos ? std::nullopt : read_colour(std::string_view(paint).substr(close + 1));
  notes.add(where,
            "the fill is " + kind + " (" + paint.substr(0, 40) + "), and a piece has one plain colour: " +
                (colour ? "its other colour was taken" : "the shape was left out"),
            "give the shape one plain colour");
  return colour;
}

bool is_opaque(const Style& style, const std::string& where, Notes& notes) {
  for (const Property property : {Property::opacity, Property::fill_opacity}) {
    Scan scan{style[property]};
    const double value = scan.number().value_or(1);
    if (value <= 0) {
      notes.add(where, "a shape that cannot be seen (opacity 0) was left out", "nothing needs doing if that is meant");
      return false;
    }
    if (value < 1)
      notes.add(where, "opacity is not read; the shape was taken as solid", "nothing needs doing if that is meant");
  }
  return true;
}

}  // namespace

/// The name without the prefix of SVG's namespace; other namespaces keep theirs.
std::string_view plain_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.starts_with("svg:") ? name.substr(4) : name;
}

std::optional<std::string> fill_of(const Style& style, const ElementsById& by_id, const std::string& where,
                                   Notes& notes) {
  std::string paint = style[Property::fill];
  if (paint == "currentColor" || paint == "currentcolor")
    paint = style[Property::color].empty() ? "#000000" : style[Property::color];
  const bool stroked = !style[Property::stroke].empty() && style[Property::stroke] != "none";
  if (style[Property::visibility] == "hidden" || style[Property::visibility] == "collapse") return std::nullopt;
  if (paint == "none" || paint == "transparent") {
    if (stroked)
      notes.add(where, "a line without a fill has no area and was left out",
                "turn the stroke into an outline in the drawing program");
    return std::nullopt;
  }
  if (paint.starts_with("url")) return painted(paint, by_id, where, notes);
  const auto colour = read_colour(paint);
  if (!colour) {
    notes.add(where, "the fill \"" + paint.substr(0, 40) + "\" is no colour that is known; the shape was left out",
              "write it as #rrggbb");
    return std::nullopt;
  }
  if (!is_opaque(style, where, notes)) return std::nullopt;
  if (stroked)
    notes.add(where, "the stroke of a filled shape is not cut; the fill ends at its middle line",
              "turn the stroke into an outline if it is meant");
  return colour;
}

}  // namespace sagitta
