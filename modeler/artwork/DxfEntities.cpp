#include "artwork/DxfEntities.hpp"

#include <charconv>
#include <cstdlib>
#include <limits>

#include "artwork/Scan.hpp"

namespace sagitta {
namespace {

std::optional<int> whole_number(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<double> decimal_number(std::string_view text) {
  Scan scan{trimmed(text)};
  const auto value = scan.number();
  return scan.done() ? value : std::nullopt;
}

/// Group codes whose values are decimals.
bool holds_decimal(int code) { return (code >= 10 && code <= 59) || (code >= 210 && code <= 239); }

class DxfWalk {
 public:
  explicit DxfWalk(std::string_view text) : text_(text) {}

  std::variant<DxfFile, Faults> read() {
    next();
    while (!faults_.size() && !done_) {
      const bool section = tag_.code == 0 && tag_.value == "SECTION";
      if (tag_.code == 0 && tag_.value == "EOF") break;
      next();
      if (section) this->section();
    }
    if (faults_.empty() && !seen_)
      fail(FaultCode::wrong_kind, 1, "there is no SECTION in this file",
           "check that this is a DXF file in its text form (ASCII)");
    if (!faults_.empty()) return faults_;
    return std::move(file_);
  }

 private:
  void fail(FaultCode code, int line, const std::string& what, const std::string& hint) {
    if (faults_.empty()) faults_.push_back({code, "", "line " + std::to_string(line) + ": " + what, hint});
    done_ = true;
  }

  std::optional<std::string_view> text_line() {
    if (at_ >= text_.size()) return std::nullopt;
    const std::size_t end = std::min(text_.find('\n', at_), text_.size());
    std::string_view line = text_.substr(at_, end - at_);
    at_ = end + 1;
    ++line_;
    if (line.ends_with('\r')) line.remove_suffix(1);
    return line;
  }

  void next() {
    if (done_) return;
    const auto code = text_line();
    if (!code || (at_ >= text_.size() && trimmed(*code).empty())) {
      done_ = true;
      return;
    }
    const auto number = whole_number(*code);
    if (!number)
      return fail(FaultCode::not_well_formed, line_,
                  "a group code, a whole number, was expected, not \"" + std::string(code->substr(0, 20)) + "\"",
                  "save the drawing again as a DXF in its text form (ASCII)");
    const auto value = text_line();
    if (!value)
      return fail(FaultCode::not_well_formed, line_, "the file ends in the middle of an entry",
                  "save the drawing again; this copy is cut off");
    tag_ = {*number, line_, trimmed(*value)};
  }

  bool at(std::string_view type) const { return !done_ && tag_.code == 0 && tag_.value == type; }

  void section() {
    seen_ = true;
    const std::string_view name = tag_.code == 2 ? tag_.value : std::string_view{};
    next();
    if (name == "HEADER") return header();
    while (!done_ && !at("ENDSEC")) {
      if (tag_.code != 0) {
        next();
      } else if (name == "ENTITIES") {
        file_.entities.push_back(entity());
      } else if (name == "BLOCKS" && tag_.value == "BLOCK") {
        block();
      } else if (name == "TABLES" && tag_.value == "LAYER") {
        layer(entity());
      } else {
        next();
      }
    }
  }

  void header() {
    bool units = false;
    while (!done_ && tag_.code != 0) {
      if (tag_.code == 9) units = tag_.value == "$INSUNITS";
      if (units && tag_.code == 70) file_.units = whole_number(tag_.value);
      next();
    }
  }

  /// The tags up to the next entity.
  std::vector<DxfTag> tags() {
    std::vector<DxfTag> all;
    for (next(); !done_ && tag_.code != 0; next()) {
      all.push_back(tag_);
      if (holds_decimal(tag_.code) && !decimal_number(tag_.value))
        fail(FaultCode::not_well_formed, line_,
             "a number was expected, not \"" + std::string(tag_.value.substr(0, 20)) + "\"", "save the drawing again");
    }
    return all;
  }

  /// An entity, and the vertices of a polyline.
  DxfEntity entity() {
    DxfEntity one{tag_.value, tag_.line, {}, {}};
    one.tags = tags();
    if (one.type == "POLYLINE" || (one.type == "INSERT" && one.whole(66) == 1)) {
      while (at("VERTEX") || at("ATTRIB")) {
        DxfEntity part{tag_.value, tag_.line, {}, {}};
        part.tags = tags();
        one.parts.push_back(std::move(part));
      }
    }
    return one;
  }

  void block() {
    const DxfEntity head = entity();
    DxfBlock block{head.point(10), {}};
    while (!done_ && !at("ENDBLK") && !at("ENDSEC")) block.entities.push_back(entity());
    file_.blocks.emplace(std::string(head.text(2).value_or("")), std::move(block));
  }

  /// OverlaySource: group codes of a layer: 2 name, 62 colour (negative: off), 70 bit 1 frozen, 420 true colour.
  void layer(const DxfEntity& entry) {
    const auto name = entry.text(2);
    if (!name) return;
    DrawnLayer layer;
    const int colour = entry.whole(62, 7);
    layer.colour = colour == std::numeric_limits<int>::min() ? 7 : std::abs(colour);
    layer.shown = colour >= 0 && (entry.whole(70) & 1) == 0;
    if (entry.text(420)) layer.true_colour = entry.whole(420);
    file_.layers.emplace(std::string(*name), layer);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int line_ = 0;
  DxfTag tag_;
  bool done_ = false, seen_ = false;
  DxfFile file_;
  Faults faults_;
};

}  // namespace

std::optional<std::string_view> DxfEntity::text(int code) const {
  for (const DxfTag& tag : tags)
    if (tag.code == code) return tag.value;
  return std::nullopt;
}

double DxfEntity::number(int code, double otherwise) const {
  const auto value = text(code);
  return value ? decimal_number(*value).value_or(otherwise) : otherwise;
}

int DxfEntity::whole(int code, int otherwise) const {
  const auto value = text(code);
  return value ? whole_number(*value).value_or(otherwise) : otherwise;
}

std::vector<double> DxfEntity::numbers(int code) const {
  std::vector<double> all;
  for (const DxfTag& tag : tags)
    if (tag.code == code) all.push_back(decimal_number(tag.value).value_or(0));
  return all;
}

std::string DxfEntity::where() const { return "line " + std::to_string(line) + ", " + std::string(type.substr(0, 40)); }

std::variant<DxfFile, Faults> read_dxf(std::string_view text) {
  if (text.substr(0, 4096).find('\0') != std::string_view::npos)
    return Faults{{FaultCode::wrong_kind, "", "this is a DXF in its binary form, which is not read",
                   "save it as a text (ASCII) DXF, or as SVG"}};
  return DxfWalk(text).read();
}

}  // namespace sagitta
