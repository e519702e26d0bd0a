/// From the nodes of a board file to the values of its fields.

#include <algorithm>
#include <cmath>
#include <limits>

#include "board/Length.hpp"
#include "board/Reading.hpp"
#include "board/SourceText.hpp"
#include "board/Spelling.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

constexpr std::size_t longest_list = 1000;
constexpr std::size_t longest_text = 200;

std::string shown(const Node& node) {
  if (const auto* text = std::get_if<std::string>(&node.value)) {
    return "the text " + shown_text(*text);
  }
  if (const auto* integer = std::get_if<std::int64_t>(&node.value)) return std::to_string(*integer);
  if (const auto* real = std::get_if<double>(&node.value)) {
    const std::string digits = decimal(*real);
    return digits.find_first_not_of("-0123456789") == std::string::npos ? digits + ".0" : digits;
  }
  if (const auto* yes = std::get_if<bool>(&node.value)) return *yes ? "true" : "false";
  return std::string(node.type_name());
}

std::string example(Kind kind) {
  switch (kind) {
    case Kind::length:
    case Kind::lengths:
      return "a length is needed here: a number, or a text with its unit like \"6.35 mm\" or \"1-11/16 in\"";
    case Kind::speed:
      return "a speed is needed here: a number, or a text like \"1200 mm/min\"";
    case Kind::integer:
    case Kind::integers:
      return "a whole number is needed here, like 12";
    case Kind::point:
    case Kind::points:
      return "a place is needed here: two lengths in brackets, like [120, 4.5]";
    case Kind::yes_no:
      return "true or false is needed here, without quotes";
    case Kind::text:
    case Kind::choice:
    case Kind::choices:
      return "a text in double quotes is needed here";
    case Kind::colour:
      return "a colour is needed here, like \"#c02020\"";
    case Kind::colours:
      return "pairs of colour and material are needed here, like { \"#c02020\" = \"bone\" }";
    case Kind::pair:
      return "a length is needed here, or two in brackets, like [3.2, 3.6]";
    case Kind::depth:
      return "a length is needed here, or \"through\"";
    case Kind::fret_width:
      return "a fret and a width are needed here, like [12, 52.5]";
    case Kind::place:
    case Kind::places:
      return "three lengths in brackets are needed here, like [120, 4.5, 2]";
    case Kind::named:
      return "names with a length each are needed here, like { \"shell-01\" = 1.6 }";
    case Kind::texts:
      return "a list of texts is needed here, like [\"maple\", \"ebony\"]";
    default:
      return "a number is needed here";
  }
}

bool is_colour(std::string_view text) {
  return text.size() == 7 && text[0] == '#' &&
         text.find_first_not_of("0123456789abcdefABCDEF", 1) == std::string_view::npos;
}

/// The values of one field; `key_` is extended while lists are walked.
class ValueReader {
 public:
  ValueReader(Reading& reading, const Field& field, const std::string& key)
      : reading_(reading), field_(field), key_(key) {}

  std::optional<Value> read(const Node& node) {
    switch (field_.kind) {
      case Kind::text:
        return value_of(text(node, key_));
      case Kind::colour:
        return value_of(colour(node, key_));
      case Kind::colours:
        return colours(node);
      case Kind::yes_no:
        if (const bool* yes = std::get_if<bool>(&node.value)) return *yes;
        return wrong(node, key_);
      case Kind::choice:
        return value_of(choice(node, key_));
      case Kind::choices:
        return list<int>(node, [this](const Node& item, const std::string& key) { return choice(item, key); });
      case Kind::integer:
        return value_of(integer(node, key_));
      case Kind::integers:
        return list<int>(node, [this](const Node& item, const std::string& key) { return integer(item, key); });
      case Kind::numbers:
      case Kind::lengths:
        return list<double>(node, [this](const Node& item, const std::string& key) { return amount(item, key); });
      case Kind::point:
        return value_of(point(node, key_));
      case Kind::points:
        return list<Place2>(node, [this](const Node& item, const std::string& key) { return point(item, key); });
      case Kind::pair:
        if (node.type != Node::Type::array) return value_of(amount(node, key_));
        return pair(node);
      case Kind::depth:
        if (const auto* text = std::get_if<std::string>(&node.value); text != nullptr && *text == "through")
          return std::numeric_limits<double>::infinity();
        return value_of(amount(node, key_));
      case Kind::fret_width:
        return fret_width(node);
      case Kind::place:
        return value_of(place(node, key_));
      case Kind::places:
        return list<Place3>(node, [this](const Node& item, const std::string& key) { return place(item, key); });
      case Kind::named:
        return named(node);
      case Kind::texts:
        return list<std::string>(node, [this](const Node& item, const std::string& key) { return text(item, key); });
      default:
        return value_of(amount(node, key_));
    }
  }

 private:
  template <class T>
  static std::optional<Value> value_of(std::optional<T> read) {
    return read ? std::optional<Value>(*read) : std::nullopt;
  }

  std::nullopt_t refuse(FaultCode code, const Node& node, const std::string& key, std::string message,
                        std::string hint = "") {
    reading_.report(code, node.level, node.spot, key, std::move(message), std::move(hint));
    return std::nullopt;
  }
  std::nullopt_t wrong(const Node& node, const std::string& key) {
    return refuse(FaultCode::wrong_kind, node, key, "found " + shown(node) + "; " + example(field_.kind));
  }

  std::optional<std::string> text(const Node& node, const std::string& key) {
    const auto* text = std::get_if<std::string>(&node.value);
    if (text == nullptr) return wrong(node, key);
    if (text->size() > longest_text)
      return refuse(FaultCode::too_many, node, key, "this text is longer than 200 bytes", "make it shorter");
    const bool control = std::ranges::any_of(*text, [](char c) { return (c >= 0 && c < 0x20) || c == 0x7F; });
    if (control)
      return refuse(FaultCode::not_text, node, key, "this text holds a line break or another control character",
                    "write it on one line");
    return *text;
  }

  std::optional<std::string> colour(const Node& node, const std::string& key) {
    const auto* text = std::get_if<std::string>(&node.value);
    if (text == nullptr || !is_colour(*text)) return wrong(node, key);
    return *text;
  }

  std::optional<Value> colours(const Node& node) {
    if (node.type != Node::Type::table) return wrong(node, key_);
    std::map<std::string, std::string> read;
    bool sound = true;
    for (const Entry& entry : node.entries) {
      const std::string key = key_ + "." + entry.key;
      if (!is_colour(entry.key)) {
        reading_.report(FaultCode::wrong_kind, entry.node.level, entry.spot, key,
                        shown_text(entry.key) + " is not a colour like \"#c02020\"");
        sound = false;
      }
      const auto material = text(entry.node, key);
      sound = sound && material;
      if (material) read[entry.key] = *material;
    }
    return sound ? std::optional<Value>(read) : std::nullopt;
  }

  std::optional<int> choice(const Node& node, const std::string& key) {
    const auto* text = std::get_if<std::string>(&node.value);
    std::vector<std::string> names;
    for (std::size_t i = 0; i < field_.choices.size(); ++i) {
      const Choice& choice = field_.choices[i];
      if (text != nullptr && (*text == choice.name || (!choice.also.empty() && *text == choice.also)))
        return static_cast<int>(i);
      names.emplace_back(choice.name);
    }
    const std::string near = text == nullptr ? "" : nearest_word(*text, names);
    for (std::string& name : names) name = "\"" + name + "\"";
    return refuse(FaultCode::not_allowed, node, key, "found " + shown(node) + "; allowed are " + listed(names),
                  near.empty() ? "" : "did you mean \"" + near + "\"?");
  }

  std::optional<int> integer(const Node& node, const std::string& key) {
    const auto* integer = std::get_if<std::int64_t>(&node.value);
    if (integer == nullptr) return wrong(node, key);
    const auto value = static_cast<double>(*integer);
    if (!field_.range.holds(value))
      return refuse(FaultCode::not_allowed, node, key,
                    std::to_string(*integer) + " is not possible here; " + allowed(field_, Units::mm));
    return static_cast<int>(*integer);
  }

  /// A number in the field's unit, with or without its own.
  std::optional<double> amount(const Node& node, const std::string& key) {
    Units units = reading_.units(node.level);
    double value = 0;
    if (const auto* integer = std::get_if<std::int64_t>(&node.value)) {
      value = static_cast<double>(*integer);
    } else if (const auto* real = std::get_if<double>(&node.value)) {
      value = *real;
    } else if (const auto* text = std::get_if<std::string>(&node.value); text != nullptr && field_.is_length()) {
      const auto length = written_length(node, *text, key);
      if (!length) return std::nullopt;
      if (length->unit) units = *length->unit;
      return in_range(node, key, length->mm, units);
    } else {
      return wrong(node, key);
    }
    if (!std::isfinite(value))
      return refuse(FaultCode::not_allowed, node, key, shown(node) + " is not a number to cut by",
                    allowed(field_, units));
    return in_range(node, key, field_.is_length() ? to_mm(value, units) : value, units);
  }

  std::optional<Length> written_length(const Node& node, const std::string& text, const std::string& key) {
    const auto read = read_length(text, reading_.units(node.level));
    if (const auto* error = std::get_if<LengthError>(&read)) {
      return refuse(FaultCode::wrong_kind, node, key,
                    shown_text(text) + " cannot be read as a length: " + error->message,
                    "lengths look like \"25 1/2 in\", \"0.023 in\" or \"6.35 mm\"");
    }
    const Length length = std::get<Length>(read);
    if (!length.plain) {
      return refuse(FaultCode::wrong_kind, node, key, shown_text(text) + " is a sum; a board file holds plain lengths",
                    "write " + shown_length(length.mm, length.unit.value_or(reading_.units(node.level))));
    }
    if (length.per_minute != (field_.kind == Kind::speed) && (length.per_minute || length.unit)) {
      return refuse(FaultCode::wrong_kind, node, key, shown_text(text) + ": " + example(field_.kind));
    }
    return length;
  }

  std::optional<double> in_range(const Node& node, const std::string& key, double value, Units units) {
    if (field_.range.holds(value)) return value;
    if (!field_.is_length())
      return refuse(FaultCode::not_allowed, node, key,
                    shown(node) + " is not possible here; " + allowed(field_, units));
    const double written = value / mm_per(units);
    const std::string number =
        std::abs(written) < 1e7 ? shown_length(value, units) : decimal(written) + " " + std::string(unit_name(units));
    return refuse(FaultCode::not_allowed, node, key, number + " is not possible here; " + allowed(field_, units),
                  other_unit_hint(field_, value, units));
  }

  /// N lengths in brackets; what is wrong with each is reported.
  template <std::size_t N>
  std::optional<std::array<double, N>> tuple(const Node& node, const std::string& key) {
    if (node.type != Node::Type::array || node.items.size() != N) return wrong(node, key);
    std::array<double, N> read{};
    bool sound = true;
    for (std::size_t i = 0; i < N; ++i) {
      const auto one = amount(node.items[i], key + "[" + std::to_string(i) + "]");
      sound = sound && one;
      read[i] = one.value_or(0);
    }
    return sound ? std::optional(read) : std::nullopt;
  }
  std::optional<Place2> point(const Node& node, const std::string& key) { return tuple<2>(node, key); }
  std::optional<Place3> place(const Node& node, const std::string& key) { return tuple<3>(node, key); }

  /// Two equal ones are the same as one for both.
  std::optional<Value> pair(const Node& node) {
    const auto two = point(node, key_);
    if (!two) return std::nullopt;
    return (*two)[0] == (*two)[1] ? Value((*two)[0]) : Value(*two);
  }

  std::optional<Value> fret_width(const Node& node) {
    if (node.type != Node::Type::array || node.items.size() != 2) return wrong(node, key_);
    const auto* fret = std::get_if<std::int64_t>(&node.items[0].value);
    if (fret == nullptr) return wrong(node, key_);
    if (*fret < 1 || *fret > 96)
      return refuse(FaultCode::not_allowed, node.items[0], key_ + "[0]",
                    std::to_string(*fret) + " is not a fret here; allowed is from 1 to 96");
    const auto width = amount(node.items[1], key_ + "[1]");
    return width ? std::optional<Value>(Place2{static_cast<double>(*fret), *width}) : std::nullopt;
  }

  std::optional<Value> named(const Node& node) {
    if (node.type != Node::Type::table) return wrong(node, key_);
    std::map<std::string, double> read;
    for (const Entry& entry : node.entries) {
      const std::string key = key_ + "." + entry.key;
      reading_.place(key, entry.spot, entry.node);
      if (const auto length = amount(entry.node, key)) read[entry.key] = *length;
    }
    return read.size() == node.entries.size() ? std::optional<Value>(read) : std::nullopt;
  }

  template <class T, class Item>
  std::optional<Value> list(const Node& node, Item&& item_reader) {
    if (node.type != Node::Type::array) {
      return refuse(FaultCode::wrong_kind, node, key_,
                    "found " + shown(node) + "; a list in square brackets is needed here, like [..]");
    }
    if (node.items.size() > longest_list)
      return refuse(FaultCode::too_many, node, key_, "this list has more than 1000 entries");
    if (node.items.empty() && field_.kind != Kind::integers && field_.kind != Kind::choices) {
      return refuse(FaultCode::wrong_count, node, key_, "this list is empty", "fill it or leave the key out");
    }
    std::vector<T> read;
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      const std::string key = key_ + "[" + std::to_string(i) + "]";
      reading_.place(key, node.items[i].spot, node.items[i]);
      if (const auto item = item_reader(node.items[i], key)) read.push_back(*item);
    }
    if (read.size() != node.items.size()) return std::nullopt;
    return read;
  }

  Reading& reading_;
  const Field& field_;
  const std::string key_;
};

}  // namespace

std::optional<Value> read_value(Reading& reading, const Field& field, const Node& node, const std::string& key) {
  return ValueReader(reading, field, key).read(node);
}

std::optional<double> read_limit(Reading& reading, const Node& node, const std::string& key) {
  const auto refuse = [&](FaultCode code, std::string message) {
    reading.report(code, node.level, node.spot, key, std::move(message));
    return std::nullopt;
  };
  if (node.value.index() == 0 || std::holds_alternative<bool>(node.value))
    return refuse(FaultCode::wrong_kind, "a limit is a number or a length here");
  double value = 0;
  if (const auto* text = std::get_if<std::string>(&node.value)) {
    const auto length = read_length(*text, reading.units(node.level));
    if (const auto* error = std::get_if<LengthError>(&length))
      return refuse(FaultCode::wrong_kind, shown_text(*text) + " cannot be read as a length: " + error->message);
    value = std::get<Length>(length).mm / mm_per(reading.out.board.units);
  } else {
    const auto* integer = std::get_if<std::int64_t>(&node.value);
    value = integer != nullptr ? static_cast<double>(*integer) : std::get<double>(node.value);
  }
  if (!std::isfinite(value) || std::abs(value) > 1e9)
    return refuse(FaultCode::not_allowed, shown(node) + " is not possible as a limit");
  return value;
}

}  // namespace sagitta
