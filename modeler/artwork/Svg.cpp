#include "artwork/Svg.hpp"

#include <algorithm>
#include <cstdio>
#include <pugixml.hpp>

#include "artwork/ReadArtwork.hpp"
#include "artwork/Scan.hpp"
#include "artwork/SvgBasics.hpp"
#include "artwork/SvgPaint.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double mm_per_px = 25.4 / 96;
/// Elements that are looked at, copies by `use` counted.
constexpr std::size_t most_elements = 200'000;
/// Tags of a whole file.
constexpr std::ptrdiff_t most_tags = 1'000'000;

std::string_view link_of(const pugi::xml_node& node) {
  const auto plain = node.attribute("href");
  return trimmed(plain ? plain.value() : node.attribute("xlink:href").value());
}

bool one_of(std::string_view name, std::string_view list) {
  Scan scan{list};
  for (scan.skip_space(); !scan.done(); scan.skip_space())
    if (scan.word() == name) return true;
  return false;
}

/// What stands around an element while the drawing is walked.
struct Around {
  Affine frame;
  Viewport viewport;
  Style style;
  int depth = 0;
};

class SvgWalk {
 public:
  SvgWalk(std::string_view text, Units units) : text_(text), notes_(units) {
    for (std::size_t i = 0; i < text.size(); ++i)
      if (text[i] == '\n') breaks_.push_back(i);
  }

  std::variant<DrawnShapes, Faults> read() {
    if (!walk()) return faults_;
    out_.notes = notes_.faults();
    return std::move(out_);
  }

  std::variant<std::vector<Run>, Faults> read_runs() {
    lines_ = true;
    if (!walk()) return faults_;
    return std::move(runs_);
  }

 private:
  bool walk() {
    if (!look_over() || !parse()) return false;
    const pugi::xml_node root = document_.document_element();
    if (plain_name(root) != "svg")
      return fail(FaultCode::wrong_kind, where(root), "the outermost element is not <svg>",
                  "check that this is the right file");
    return collect() && walk_root(root);
  }

  /// Remembers why the drawing is refused.
  bool fail(FaultCode code, const std::string& where, const std::string& what, const std::string& hint) {
    faults_.push_back({code, "", where.empty() ? what : where + ": " + what, hint});
    return false;
  }

  std::string line_at(std::ptrdiff_t offset) const {
    const auto at = static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, offset));
    const auto lines = std::lower_bound(breaks_.begin(), breaks_.end(), at) - breaks_.begin();
    return "line " + std::to_string(lines + 1);
  }

  std::string where(const pugi::xml_node& node) const {
    const std::string name = std::string(std::string_view(node.name()).substr(0, 40));
    const std::string id = std::string(std::string_view(node.attribute("id").value()).substr(0, 40));
    return line_at(node.offset_debug()) + ", <" + name + (id.empty() ? ">" : " id=\"" + id + "\">");
  }

  bool look_over() {
    if (std::count(text_.begin(), text_.end(), '<') > most_tags)
      return fail(FaultCode::drawing_too_complex, "", "the drawing has more than a million tags",
                  "simplify it, or split it into several");
    const std::size_t entity = text_.find("<!ENTITY");
    if (entity != std::string_view::npos)
      return fail(FaultCode::outside_folder, line_at(static_cast<std::ptrdiff_t>(entity)),
                  "the drawing defines entities, which are not read", "save it as plain SVG");
    const std::size_t sheet = text_.find("<?xml-stylesheet");
    if (sheet != std::string_view::npos)
      return fail(FaultCode::outside_folder, line_at(static_cast<std::ptrdiff_t>(sheet)),
                  "the drawing asks for a style sheet in another file", "save it as plain SVG with its styles inside");
    return true;
  }

  bool parse() {
    const pugi::xml_parse_result parsed = document_.load_buffer(text_.data(), text_.size());
    if (parsed) return true;
    return fail(FaultCode::not_well_formed, line_at(parsed.offset),
                std::string("this is not sound XML (") + parsed.description() + ")",
                "open it in the drawing program and save it again");
  }

  /// Style sheets and the elements that have names.
  bool collect() {
    for (pugi::xml_node node = document_.document_element(); node; node = next_in_file(node)) {
      const std::string_view id = node.attribute("id").value();
      if (!id.empty()) by_id_.emplace(id, node);
      if (plain_name(node) != "style") continue;
      std::string css;
      for (const pugi::xml_node& part : node.children()) css += part.value();
      if (const auto fault = sheet_.add(css, where(node), notes_)) {
        faults_.push_back(*fault);
        return false;
      }
    }
    return true;
  }

  pugi::xml_node next_in_file(pugi::xml_node node) const {
    if (node.first_child()) return node.first_child();
    while (node && !node.next_sibling()) node = node.parent();
    return node ? node.next_sibling() : node;
  }

  /// The drawing's size in px: what it states, else what its viewBox has.
  bool walk_root(const pugi::xml_node& root) {
    const auto box = read_view_box(root.attribute("viewBox").value());
    if (root.attribute("viewBox") && (!box || box->width == 0 || box->height == 0))
      return fail(FaultCode::not_well_formed, where(root), "viewBox has no area or is not four numbers",
                  "write viewBox=\"0 0 WIDTH HEIGHT\"");
    const Viewport natural = box ? Viewport{box->width, box->height} : Viewport{};
    Viewport size = natural;
    bool stated = true;
    const auto side = [&](const char* name, double& value) {
      const std::string_view text = root.attribute(name).value();
      if (text.empty() || text.ends_with("%") || text == "auto") {
        stated = false;
        return true;
      }
      const auto length = svg_length(text, natural, Along::x);
      if (!length || *length <= 0)
        return fail(FaultCode::not_well_formed, where(root),
                    std::string(name) + "=\"" + std::string(text.substr(0, 40)) + "\" is no size of a drawing",
                    "write it in mm, as in width=\"120mm\"");
      value = *length;
      return true;
    };
    if (!side("width", size.width) || !side("height", size.height)) return false;
    if (!stated) {
      notes_.add(where(root),
                 "the drawing does not state its size; one unit was taken as one px, " + notes_.length(mm_per_px),
                 "the size on the board is set there and is not affected");
      if (root.attribute("width") || root.attribute("height")) size = natural;
    }
    Around around;
    around.style[Property::fill] = "#000000";
    around.style = sheet_.style_of(root, "svg", around.style);
    around.viewport = box ? Viewport{box->width, box->height} : size;
    around.frame = Affine{mm_per_px, 0, 0, -mm_per_px, 0, mm_per_px * size.height} *
                   (box ? fit_view_box(*box, size, root.attribute("preserveAspectRatio").value()) : Affine{});
    return is_shown(root, around.style) ? children(root, around) : true;
  }

  bool children(const pugi::xml_node& parent, const Around& around) {
    for (const pugi::xml_node& child : parent.children())
      if (child.type() == pugi::node_element && !element(child, around)) return false;
    return true;
  }

  /// display="none" and what cannot be shown; what is left out on the way is noted.
  bool is_shown(const pugi::xml_node& node, const Style& style) {
    if (style[Property::display] == "none") return false;
    const char* const unread[] = {"clip-path", "mask", "filter"};
    for (std::size_t i = 0; i < 3; ++i) {
      const std::string& value = style[static_cast<Property>(static_cast<std::size_t>(Property::clip_path) + i)];
      if (!value.empty() && value != "none")
        notes_.add(where(node), std::string("a ") + unread[i] + " is not read; the whole shape was taken",
                   "apply it to the shapes in the drawing program");
    }
    return true;
  }

  bool element(const pugi::xml_node& node, const Around& outer) {
    const std::string_view name = plain_name(node);
    if (name.find(':') != std::string_view::npos) return true;  // a program's own notes
    if (one_of(name,
               "title desc metadata defs style linearGradient radialGradient clipPath mask filter pattern marker "
               "symbol cursor view color-profile font font-face stop"))
      return true;
    if (++elements_ > most_elements)
      return fail(FaultCode::drawing_too_complex, where(node),
                  "the drawing has more than 200,000 elements, copies counted", "simplify it, or split it");
    if (outer.depth >= most_nested)
      return fail(FaultCode::drawing_too_complex, where(node), "groups and copies go more than 64 deep",
                  "check for a <use> that copies itself, or ungroup");
    Around around = outer;
    ++around.depth;
    around.style = sheet_.style_of(node, name, outer.style);
    const auto transform = read_transform(node.attribute("transform").value());
    if (!transform)
      return fail(FaultCode::not_well_formed, where(node),
                  "transform=\"" + std::string(std::string_view(node.attribute("transform").value()).substr(0, 60)) +
                      "\" cannot be read",
                  "write translate(..), rotate(..), scale(..), skewX(..), skewY(..) or matrix(..)");
    around.frame = outer.frame * *transform;
    if (!is_sound(around.frame))
      return fail(FaultCode::drawing_too_complex, where(node), "the transforms here multiply to more than can be drawn",
                  "check the scales");
    if (!is_shown(node, around.style)) return true;
    if (one_of(name, "g a switch")) return children(node, around);
    if (is_basic_shape(name)) return shape(node, name, around);
    if (name == "svg") return inner_drawing(node, around, node);
    if (name == "use") return use(node, around);
    return left_out(node, name);
  }

  static bool is_sound(const Affine& f) {
    constexpr double largest = 1e9;
    for (const double part : {f.a, f.b, f.c, f.d, f.e, f.f})
      if (!(std::abs(part) < largest)) return false;
    return true;
  }

  bool left_out(const pugi::xml_node& node, std::string_view name) {
    const std::string tag = "<" + std::string(name.substr(0, 40)) + ">";
    const std::string_view link = link_of(node);
    if (one_of(name, "image script tref") && !link.empty() && !link.starts_with("#") && !link.starts_with("data:"))
      return fail(FaultCode::outside_folder, where(node),
                  tag + " asks for something outside the file, which is not read", "delete it, or draw it as outlines");
    if (name == "text" || name == "tref")
      notes_.add(where(node), "text is no outline and was left out", "convert it to paths in the drawing program");
    else if (name == "image")
      notes_.add(where(node), "a picture is no outline and was left out", "trace it into paths");
    else
      notes_.add(where(node), tag + " is not read and was left out", "convert it to paths, or delete it");
    return true;
  }

  /// Another viewport: <svg> in a drawing, or a <symbol> by way of the <use> that says its size (section 7.9).
  bool inner_drawing(const pugi::xml_node& node, Around around, const pugi::xml_node& sizes) {
    const auto length = [&](const char* name, double otherwise, Along along) {
      const auto attribute = sizes.attribute(name);
      return attribute ? svg_length(attribute.value(), around.viewport, along).value_or(otherwise) : otherwise;
    };
    const Viewport size{length("width", around.viewport.width, Along::x),
                        length("height", around.viewport.height, Along::y)};
    if (plain_name(sizes) == "svg")
      around.frame = around.frame * shift_by({length("x", 0, Along::x), length("y", 0, Along::y)});
    const auto box = read_view_box(node.attribute("viewBox").value());
    if (size.width <= 0 || size.height <= 0 || (box && (box->width == 0 || box->height == 0))) return true;
    around.viewport = size;
    if (box) {
      around.frame = around.frame * fit_view_box(*box, size, node.attribute("preserveAspectRatio").value());
      around.viewport = {box->width, box->height};
    }
    return children(node, around);
  }

  bool use(const pugi::xml_node& node, Around around) {
    const std::string_view link = link_of(node);
    if (!link.empty() && !link.starts_with("#"))
      return fail(FaultCode::outside_folder, where(node),
                  "<use> copies something from outside the file, which is not read", "put a copy into the drawing");
    const auto found = by_id_.find(link.substr(std::min<std::size_t>(1, link.size())));
    if (found == by_id_.end()) {
      notes_.add(where(node), "<use> copies \"" + std::string(link.substr(0, 40)) + "\", which is not in the drawing",
                 "delete it, or draw what is missing");
      return true;
    }
    const auto shift = [&](const char* name, Along along) {
      return svg_length(node.attribute(name).value(), around.viewport, along).value_or(0);
    };
    around.frame = around.frame * shift_by({shift("x", Along::x), shift("y", Along::y)});
    const pugi::xml_node copied = found->second;
    if (plain_name(copied) == "symbol") {
      around.style = sheet_.style_of(copied, "symbol", around.style);
      return is_shown(copied, around.style) ? inner_drawing(copied, around, node) : true;
    }
    return element(copied, around);
  }

  /// A line has no inside (SVG 1.1, section 9.5).
  bool leave_out(const Around& around, const std::string& line) {
    const std::string& stroke = around.style[Property::stroke];
    if (!stroke.empty() && stroke != "none")
      notes_.add(line, "a line without a fill has no area and was left out",
                 "turn the stroke into an outline in the drawing program");
    return true;
  }

  bool shape(const pugi::xml_node& node, std::string_view name, const Around& around) {
    const auto trails = basic_shape(node, name, around.viewport);
    if (const auto* error = std::get_if<std::string>(&trails))
      return fail(FaultCode::not_well_formed, where(node), *error, "open it in the drawing program and save it again");
    if (std::get<0>(trails).empty()) return true;
    if (lines_) return take_lines(std::get<0>(trails), around, where(node));
    if (name == "line") return leave_out(around, where(node));
    const auto colour = fill_of(around.style, by_id_, where(node), notes_);
    if (!colour) return true;
    DrawnShape shape{{},
                     around.style[Property::fill_rule] == "evenodd" ? FillRule::evenodd : FillRule::nonzero,
                     *colour,
                     where(node)};
    for (const Subpath& trail : std::get<0>(trails)) {
      PathLoop strokes;
      if (!take(trail, around, shape.where, strokes)) return false;
      if (strokes.empty()) continue;
      close(strokes, trail.closed, shape.where);
      shape.loops.push_back(std::move(strokes));
    }
    if (!shape.loops.empty()) out_.shapes.push_back(std::move(shape));
    return true;
  }

  /// The strokes of one subpath, counted.
  bool take(const Subpath& trail, const Around& around, const std::string& place, PathLoop& strokes) {
    for (const Curve& curve : trail.curves) draw(curve, around.frame, strokes);
    segments_ += strokes.size();
    return segments_ <= most_segments ||
           fail(FaultCode::drawing_too_complex, place, "the drawing has more than 200,000 segments, copies counted",
                "simplify it, or split it");
  }

  bool take_lines(const std::vector<Subpath>& trails, const Around& around, const std::string& place) {
    for (const Subpath& trail : trails) {
      Run run{{}, place};
      if (!take(trail, around, place, run.strokes)) return false;
      if (!run.strokes.empty()) runs_.push_back(std::move(run));
    }
    return true;
  }

  /// A fill closes what is open (section 11.3).
  void close(PathLoop& strokes, bool said, const std::string& place) {
    const Point from = end_of(strokes.back()), to = start_of(strokes.front());
    if (from == to) return;
    if (!said && distance(from, to) > tolerance::drawn_join)
      notes_.add(place, "an open outline was closed by a straight line",
                 "close it in the drawing if that is not meant");
    strokes.push_back(line(from, to));
  }

  std::string_view text_;
  std::vector<std::size_t> breaks_;
  pugi::xml_document document_;
  ElementsById by_id_;
  StyleSheet sheet_;
  bool lines_ = false;  ///< runs are wanted, not what is filled
  DrawnShapes out_;
  std::vector<Run> runs_;
  Notes notes_;
  Faults faults_;
  std::size_t elements_ = 0, segments_ = 0;
};

}  // namespace

std::variant<DrawnShapes, Faults> svg_shapes(std::string_view text, Units units) { return SvgWalk(text, units).read(); }

std::variant<std::vector<Run>, Faults> svg_runs(std::string_view text, Units units) {
  return SvgWalk(text, units).read_runs();
}

bool svg_says_its_size(std::string_view text) {
  pugi::xml_document document;
  if (!document.load_buffer(text.data(), text.size())) return false;
  const pugi::xml_node root = document.document_element();
  for (const char* side : {"width", "height"}) {
    const std::string_view size = trimmed(root.attribute(side).value());
    for (const std::string_view unit : {"mm", "cm", "in", "pt", "pc"})
      if (size.ends_with(unit) && svg_length(size, {}, Along::x)) return true;
  }
  return false;
}

}  // namespace sagitta
