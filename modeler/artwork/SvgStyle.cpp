#include "artwork/SvgStyle.hpp"

#include <pugixml.hpp>

#include "artwork/Scan.hpp"

namespace sagitta {
namespace {

constexpr std::array<std::string_view, properties> names = {"fill",      "fill-rule",  "fill-opacity", "stroke",
                                                            "color",     "visibility", "display",      "opacity",
                                                            "clip-path", "mask",       "filter"};

bool is_inherited(Property property) { return property < Property::display; }

std::string without_comments(std::string_view css) {
  std::string out;
  while (true) {
    const std::size_t begin = css.find("/*");
    out += css.substr(0, begin);
    if (begin == std::string_view::npos) return out;
    const std::size_t end = css.find("*/", begin + 2);
    if (end == std::string_view::npos) return out;
    out += ' ';
    css.remove_prefix(end + 2);
  }
}

/// Behind the brace that closes the one at `open`.
std::size_t block_end(std::string_view css, std::size_t open) {
  int depth = 0;
  for (std::size_t i = open; i < css.size(); ++i) {
    if (css[i] == '{') ++depth;
    if (css[i] == '}' && --depth == 0) return i + 1;
  }
  return css.size();
}

bool has_class(std::string_view list, std::string_view name) {
  Scan scan{list};
  for (scan.skip_space(); !scan.done(); scan.skip_space()) {
    const std::size_t from = scan.at;
    while (!scan.done() && !is_space(scan.here())) ++scan.at;
    if (list.substr(from, scan.at - from) == name) return true;
  }
  return false;
}

}  // namespace

std::vector<StyleSheet::Declaration> StyleSheet::declarations(std::string_view text) {
  std::vector<Declaration> all;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(';'), text.size());
    const std::string_view one = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t colon = one.find(':');
    if (colon == std::string_view::npos) continue;
    const std::string_view name = trimmed(one.substr(0, colon));
    std::string_view value = trimmed(one.substr(colon + 1));
    const std::size_t mark = value.find('!');
    const bool important = mark != std::string_view::npos && trimmed(value.substr(mark + 1)) == "important";
    if (important) value = trimmed(value.substr(0, mark));
    for (std::size_t i = 0; i < properties; ++i)
      if (name == names[i]) all.push_back({static_cast<Property>(i), std::string(value), important});
  }
  return all;
}

std::optional<Fault> StyleSheet::add(std::string_view text, const std::string& where, Notes& notes) {
  const std::string plain = without_comments(text);
  std::string_view css = plain;
  while (!(css = trimmed(css)).empty()) {
    const std::size_t open = css.find('{'), stop = css.find(';');
    if (css.starts_with("<!--") || css.starts_with("-->")) {
      css.remove_prefix(css.starts_with("-->") ? 3 : 4);
      continue;
    }
    if (css.starts_with("@import"))
      return Fault{FaultCode::outside_folder, "", where + ": the style sheet asks for another file, which is not read",
                   "put the rules into the drawing itself"};
    if (css[0] == '@') {
      const bool line = stop < open;
      if (!line)
        notes.add(where, "a rule of the style sheet that begins with @ was left out",
                  "use plain rules: .name { fill: .. }");
      css.remove_prefix(line ? stop + 1 : block_end(css, std::min(open, css.size())));
      continue;
    }
    if (open == std::string_view::npos) break;
    const std::size_t end = block_end(css, open);
    const std::string_view body = css.substr(open + 1, end - open - 1);
    if (auto fault = add_selectors(css.substr(0, open), body.substr(0, body.find('}')), where, notes)) return fault;
    css.remove_prefix(end);
  }
  return std::nullopt;
}

std::optional<Fault> StyleSheet::add_selectors(std::string_view selectors, std::string_view body,
                                               const std::string& where, Notes& notes) {
  const std::vector<Declaration> said = declarations(body);
  while (!selectors.empty()) {
    const std::size_t comma = std::min(selectors.find(','), selectors.size());
    const std::string_view selector = trimmed(selectors.substr(0, comma));
    selectors.remove_prefix(std::min(comma + 1, selectors.size()));
    if (rules_.size() >= most_rules)
      return Fault{FaultCode::too_many, "", where + ": the style sheets have more than 2,000 rules",
                   "let the drawing program write plain fills"};
    Rule rule;
    Scan scan{selector};
    if (!scan.take('*')) rule.element = scan.word();
    bool known = !selector.empty();
    while (known && !scan.done()) {
      const bool by_class = scan.take('.'), by_id = !by_class && scan.take('#');
      const std::string_view word = scan.word();
      known = (by_class || by_id) && !word.empty();
      if (by_class) rule.classes.emplace_back(word);
      if (by_id) rule.id = word;
    }
    if (!known) {
      notes.add(where,
                "the style rule for \"" + std::string(selector.substr(0, 60)) + "\" is of a kind that is not read",
                "use names, .classes and #ids alone, or let the drawing program write plain fills");
      continue;
    }
    const int specificity = (rule.id.empty() ? 0 : 100) +
                            10 * static_cast<int>(std::min<std::size_t>(9, rule.classes.size())) +
                            (rule.element.empty() ? 0 : 1);
    rule.weight = specificity * static_cast<int>(most_rules) + static_cast<int>(rules_.size());
    rule.declarations = said;
    rules_.push_back(std::move(rule));
  }
  return std::nullopt;
}

Style StyleSheet::style_of(const pugi::xml_node& element, std::string_view name, const Style& parent) const {
  constexpr int by_style = 1 << 24, by_importance = 1 << 25;
  Style style;
  std::array<int, properties> weight;
  weight.fill(-2);
  const auto say = [&](Property property, std::string_view value, int heavy) {
    const auto i = static_cast<std::size_t>(property);
    if (heavy < weight[i]) return;
    weight[i] = heavy;
    style.values[i] = value == "inherit" ? parent.values[i] : std::string(value);
  };
  for (std::size_t i = 0; i < properties; ++i) {
    const Property property = static_cast<Property>(i);
    if (is_inherited(property)) style.values[i] = parent.values[i];
    if (const auto attribute = element.attribute(names[i].data())) say(property, trimmed(attribute.value()), -1);
  }
  const std::string_view classes = element.attribute("class").value(), id = element.attribute("id").value();
  for (const Rule& rule : rules_) {
    bool fits = (rule.element.empty() || rule.element == name) && (rule.id.empty() || rule.id == id);
    for (const std::string& wanted : rule.classes) fits = fits && has_class(classes, wanted);
    if (!fits) continue;
    for (const Declaration& one : rule.declarations)
      say(one.property, one.value, rule.weight + (one.important ? by_importance : 0));
  }
  for (const Declaration& one : declarations(without_comments(element.attribute("style").value())))
    say(one.property, one.value, by_style + (one.important ? by_importance : 0));
  return style;
}

}  // namespace sagitta
