#pragma once

/// What decides how an SVG element is painted: attributes, style sheets, inheritance.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "artwork/Notes.hpp"
#include "board/Problem.hpp"

namespace pugi {
class xml_node;
}

namespace sagitta {

enum class Property {
  fill,
  fill_rule,
  fill_opacity,
  stroke,
  color,
  visibility,
  display,
  opacity,
  clip_path,
  mask,
  filter
};
inline constexpr std::size_t properties = 11;

/// The values that hold for an element, as written; "" where nothing is said.
struct Style {
  std::array<std::string, properties> values;
  const std::string& operator[](Property property) const { return values[static_cast<std::size_t>(property)]; }
  std::string& operator[](Property property) { return values[static_cast<std::size_t>(property)]; }
};

/// The rules of all <style> elements: element names, classes, ids and their combinations in one selector. Others are
/// noted and left out.
class StyleSheet {
 public:
  /// No drawing has more rules.
  static constexpr std::size_t most_rules = 2000;

  /// Returns a fault for rules from outside the file or too many of them.
  std::optional<Fault> add(std::string_view css, const std::string& where, Notes& notes);

  /// The style of an element below a parent of the given style (SVG 1.1, section 6; CSS2, chapter 6).
  Style style_of(const pugi::xml_node& element, std::string_view name, const Style& parent) const;

 private:
  struct Declaration {
    Property property;
    std::string value;
    bool important = false;
  };
  struct Rule {
    std::string element, id;
    std::vector<std::string> classes;
    int weight = 0;  ///< specificity, then order
    std::vector<Declaration> declarations;
  };
  static std::vector<Declaration> declarations(std::string_view text);
  std::optional<Fault> add_selectors(std::string_view selectors, std::string_view body, const std::string& where,
                                     Notes& notes);
  std::vector<Rule> rules_;
};

}  // namespace sagitta
