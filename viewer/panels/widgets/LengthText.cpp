#include "widgets/LengthText.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <limits>

namespace sagitta::viewer {

namespace {

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(" \t"), to = text.find_last_not_of(" \t");
  return from == text.npos ? "" : text.substr(from, to - from + 1);
}

std::vector<std::string> parts_of(const std::string& text, char separator) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  for (;;) {
    const std::size_t to = text.find(separator, from);
    const std::string part = trimmed(text.substr(from, to == text.npos ? to : to - from));
    if (!part.empty()) parts.push_back(part);
    if (to == text.npos) return parts;
    from = to + 1;
  }
}

template <class T, class F>
std::string joined(const std::vector<T>& items, F&& word, const char* between = ", ") {
  std::string text;
  for (const T& item : items) text += (text.empty() ? "" : between) + word(item);
  return text;
}

using Typed = std::variant<double, std::string>;

/// A comma between two digits is a decimal point where no comma parts anything: "25,4" is 25.4.
std::string with_points(std::string text) {
  const auto digit = [&](std::size_t i) { return std::isdigit(static_cast<unsigned char>(text[i])) != 0; };
  for (std::size_t i = 1; i + 1 < text.size(); ++i)
    if (text[i] == ',' && digit(i - 1) && digit(i + 1)) text[i] = '.';
  return text;
}

/// The parts of a list: parted by semicolons where there are any, and then with decimal commas; else by commas.
std::vector<std::string> list_parts(const std::string& text) {
  if (text.find(';') == text.npos) return parts_of(text, ',');
  std::vector<std::string> parts = parts_of(text, ';');
  for (std::string& part : parts) part = with_points(part);
  return parts;
}

Typed typed_number(const Field& field, const std::string& text, const Manner& manner) {
  const auto read = read_length(text, field.is_length() ? manner.units : Units::mm);
  if (const auto* error = std::get_if<LengthError>(&read)) return error->message;
  const Length& length = std::get<Length>(read);
  if (!field.is_length() && length.unit) return std::string("This is a plain number: leave the unit out.");
  return length.mm;
}

std::variant<Value, std::string> typed_list(const Field& field, const std::string& text, const Manner& manner) {
  std::vector<double> numbers;
  for (const std::string& part : list_parts(text)) {
    const Typed one = typed_number(field, part, manner);
    if (const auto* why = std::get_if<std::string>(&one)) return "\u201c" + part + "\u201d: " + *why;
    numbers.push_back(std::get<double>(one));
  }
  if (field.kind != Kind::integers) return Value(numbers);
  std::vector<int> whole;
  for (const double n : numbers) {
    if (n != std::floor(n) || std::abs(n) > 1e9)
      return std::string("Whole numbers only, with commas between: 3, 5, 7, 9.");
    whole.push_back(static_cast<int>(n));
  }
  return Value(whole);
}

/// Places of N lengths each, parted by semicolons; `many`: any number of them, else one.
template <std::size_t N>
std::variant<Value, std::string> typed_places(const Field& field, const std::string& text, const Manner& manner,
                                              bool many, const char* form, const char* single_form) {
  std::vector<std::array<double, N>> places;
  for (const std::string& part : parts_of(text, ';')) {
    const auto lengths = parts_of(part, ',');
    if (lengths.size() != N) return std::string(form);
    std::array<double, N> place{};
    for (std::size_t i = 0; i < N; ++i) {
      const Typed one = typed_number(field, lengths[i], manner);
      if (const auto* why = std::get_if<std::string>(&one)) return *why;
      place[i] = std::get<double>(one);
    }
    places.push_back(place);
  }
  if (many) return Value(places);
  if (places.size() != 1) return std::string(single_form);
  return Value(places.front());
}

std::variant<Value, std::string> typed_points(const Field& field, const std::string& text, const Manner& manner) {
  return typed_places<2>(field, text, manner, field.kind == Kind::points,
                         "A place is two lengths with a comma: 12, -8. Places are parted by semicolons.",
                         "One place: two lengths with a comma, 12, -8.");
}

std::variant<Value, std::string> typed_triples(const Field& field, const std::string& text, const Manner& manner) {
  return typed_places<3>(field, text, manner, field.kind == Kind::places,
                         "Three lengths with commas: 120, 4.5, 2. Several are parted by semicolons.",
                         "Three lengths with commas: 120, 4.5, 2.");
}

/// A fret and a width, or one or two lengths.
std::variant<Value, std::string> typed_pair(const Field& field, const std::string& text, const Manner& manner) {
  std::vector<double> numbers;
  const auto parts = list_parts(text);
  for (const std::string& part : parts) {
    const bool fret = field.kind == Kind::fret_width && numbers.empty();
    const Typed one = typed_number(field, part, fret ? Manner{Units::mm, false} : manner);
    if (const auto* why = std::get_if<std::string>(&one)) return *why;
    numbers.push_back(std::get<double>(one));
  }
  if (field.kind == Kind::pair && numbers.size() == 1) return Value(numbers[0]);
  if (numbers.size() == 2) return Value(Place2{numbers[0], numbers[1]});
  return field.kind == Kind::pair ? std::string("One length, or two with a comma: 3.2, 3.6.")
                                  : std::string("A fret and a width with a comma: 12, 52.5.");
}

std::variant<Value, std::string> typed_named(const Field& field, const std::string& text, const Manner& manner) {
  std::map<std::string, double> named;
  for (const std::string& part : parts_of(text, ',')) {
    const auto pair = parts_of(part, '=');
    if (pair.size() != 2) return std::string("A name and a length: shell-01 = 1.6, with commas between.");
    const Typed one = typed_number(field, pair[1], manner);
    if (const auto* why = std::get_if<std::string>(&one)) return *why;
    named[pair[0]] = std::get<double>(one);
  }
  return Value(named);
}

std::variant<Value, std::string> typed_choices(const Field& field, const std::string& text) {
  std::vector<int> chosen;
  for (const std::string& part : parts_of(text, ',')) {
    const auto found = std::find_if(field.choices.begin(), field.choices.end(),
                                    [&](const Choice& c) { return c.name == part || c.also == part; });
    if (found == field.choices.end()) {
      std::string all;
      for (const Choice& c : field.choices) all += (all.empty() ? "" : ", ") + std::string(c.name);
      return "\u201c" + part + "\u201d is not one of: " + all + ".";
    }
    chosen.push_back(static_cast<int>(found - field.choices.begin()));
  }
  return Value(chosen);
}

/// A number's decimal point as the user's mark.
std::string marked(std::string number, const Manner& manner) {
  if (manner.comma) std::replace(number.begin(), number.end(), '.', ',');
  return number;
}

std::string number_refusal(const Field& field, double number, const Manner& manner) {
  if (!std::isfinite(number)) return field.kind == Kind::depth ? "" : "This is no number.";
  if (field.range.holds(number) || field.range.least == field.range.most) return "";
  const std::string now = field.is_length() ? shown(number, manner) : marked(shown_number(number), manner);
  return now + " cannot be: " + shown_range(field, manner) + ".";
}

}  // namespace

Manner manner_of(Display display, const Board& board) {
  switch (display) {
    case Display::mm:
      return {Units::mm, false};
    case Display::inch_decimal:
      return {Units::inch, false};
    case Display::inch_fraction:
      return {Units::inch, true};
    case Display::as_file:
      break;
  }
  return {board.units, board.units == Units::inch};
}

std::string fixed_number(double value, int decimals) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

std::string shown_number(double value, int decimals) {
  std::string s = fixed_number(value, decimals);
  if (s.find('.') != s.npos) s.erase(s.find_last_not_of('0') + 1);
  if (!s.empty() && s.back() == '.') s.pop_back();
  return s == "-0" ? "0" : s;
}

std::string shown_bare(double mm, const Manner& manner, int decimals) {
  if (manner.units == Units::mm) return shown_number(mm, decimals);
  if (manner.fractions)
    if (const auto fraction = inch_fraction(mm)) return *fraction;
  return shown_number(mm / mm_per_inch, decimals + 1);
}

std::string shown(double mm, const Manner& manner, int decimals) {
  return marked(shown_bare(mm, manner, decimals), manner) + " " + std::string(unit_name(manner.units));
}

std::string shown_in_column(double mm, const Manner& manner, int decimals) {
  if (manner.units == Units::inch) {
    if (manner.fractions && inch_fraction(mm)) return shown(mm, manner, decimals);
    return marked(fixed_number(mm / mm_per_inch, decimals + 1), manner) + " in";
  }
  return marked(fixed_number(mm, decimals), manner) + " mm";
}

std::string shown_range(const Field& field, const Manner& manner) {
  constexpr double no_end = 1e5;  // longer than anything in a shop: a bound for the arithmetic, not for the builder
  const auto word = [&](double v) { return field.is_length() ? shown(v, manner) : marked(shown_number(v), manner); };
  if (field.is_length() && field.kind != Kind::speed && field.range.most >= no_end)
    return word(field.range.least) + " or more" + (field.range.zero ? ", or 0" : "");
  return word(field.range.least) + " to " + word(field.range.most) + (field.range.zero ? ", or 0" : "");
}

std::string shown_value(const Field& field, const Value& value, const Manner& manner) {
  const auto length = [&](double v) {
    // A pair's one length: with a comma it would read as two.
    if (field.kind == Kind::pair) return shown_bare(v, manner) + " " + std::string(unit_name(manner.units));
    if (field.kind == Kind::speed) return shown(v, manner) + "/min";
    if (field.kind == Kind::angle) return marked(shown_number(v), manner) + "\u00b0";
    if (!field.is_length())
      return marked(shown_number(v), manner) + (field.unit.empty() ? "" : " " + std::string(field.unit));
    return shown(v, manner);
  };
  const auto bare = [&](double v) { return field.is_length() ? shown_bare(v, manner) : shown_number(v); };
  const auto choice = [&](int i) {
    return i >= 0 && i < static_cast<int>(field.choices.size())
               ? std::string(field.choices[static_cast<std::size_t>(i)].name)
               : std::to_string(i);
  };
  const auto place = [&](const Place2& p) { return bare(p[0]) + ", " + bare(p[1]); };
  const auto triple = [&](const Place3& p) { return bare(p[0]) + ", " + bare(p[1]) + ", " + bare(p[2]); };
  return std::visit(
      [&](const auto& v) -> std::string {
        using T = std::decay_t<decltype(v)>;
        if constexpr (std::is_same_v<T, bool>)
          return v ? "yes" : "no";
        else if constexpr (std::is_same_v<T, int>)
          return field.kind == Kind::choice ? choice(v) : std::to_string(v);
        else if constexpr (std::is_same_v<T, double>)
          return std::isinf(v) ? "through" : length(v);
        else if constexpr (std::is_same_v<T, std::string>)
          return v;
        else if constexpr (std::is_same_v<T, std::vector<int>>)
          return joined(v, [&](int i) { return field.kind == Kind::choices ? choice(i) : std::to_string(i); });
        else if constexpr (std::is_same_v<T, std::vector<double>>)
          return manner.comma && v.size() > 1 ? joined(
                                                    v, [&](double n) { return marked(bare(n), manner); }, "; ")
                                              : joined(v, bare);
        else if constexpr (std::is_same_v<T, Place2>)
          return field.kind == Kind::fret_width ? shown_number(v[0]) + ", " + bare(v[1]) : place(v);
        else if constexpr (std::is_same_v<T, std::vector<Place2>>)
          return joined(v, place, "; ");
        else if constexpr (std::is_same_v<T, Place3>)
          return triple(v);
        else if constexpr (std::is_same_v<T, std::vector<Place3>>)
          return joined(v, triple, "; ");
        else if constexpr (std::is_same_v<T, std::vector<std::string>>)
          return joined(v, [](const std::string& word) { return word; });
        else if constexpr (std::is_same_v<T, std::map<std::string, double>>) {
          std::string text;
          for (const auto& [name, v2] : v) text += (text.empty() ? "" : ", ") + name + " = " + bare(v2);
          return text;
        } else if constexpr (std::is_same_v<T, std::map<std::string, std::string>>) {
          std::string text;
          for (const auto& [from, to] : v) text += (text.empty() ? "" : ", ") + from + " = " + to;
          return text;
        } else
          return "";
      },
      value);
}

std::variant<Value, std::string> typed_value(const Field& field, const std::string& raw, const Manner& manner) {
  const std::string text = trimmed(raw);
  switch (field.kind) {
    case Kind::text:
    case Kind::colour:
      return text.empty() ? Value() : Value(text);
    case Kind::integers:
    case Kind::numbers:
    case Kind::lengths:
      return typed_list(field, text, manner);
    case Kind::choices:
      return typed_choices(field, text);
    case Kind::point:
    case Kind::points:
      if (text.empty()) return Value();
      return typed_points(field, text, manner);
    case Kind::pair:
    case Kind::fret_width:
      return text.empty() ? std::variant<Value, std::string>(Value()) : typed_pair(field, text, manner);
    case Kind::place:
    case Kind::places:
      return text.empty() ? std::variant<Value, std::string>(Value()) : typed_triples(field, text, manner);
    case Kind::named:
      return typed_named(field, text, manner);
    case Kind::texts:
      return Value(parts_of(text, ','));
    case Kind::depth:
      if (text == "through") return Value(std::numeric_limits<double>::infinity());
      break;
    default:
      break;
  }
  if (text.empty()) return std::string("Nothing is typed yet.");
  std::string plain = text;
  if (field.kind == Kind::angle && plain.size() > 2 && plain.ends_with("\u00b0")) plain.resize(plain.size() - 2);
  if (!field.unit.empty() && plain.ends_with(field.unit)) plain.resize(plain.size() - field.unit.size());
  const Typed number = typed_number(field, with_points(plain), manner);
  if (const auto* why = std::get_if<std::string>(&number)) return *why;
  const double value = std::get<double>(number);
  if (field.kind != Kind::integer) return Value(value);
  if (value != std::floor(value) || std::abs(value) > 1e9) return std::string("A whole number is needed.");
  return Value(static_cast<int>(value));
}

std::string refusal(const Field& field, const Value& value, const Manner& manner) {
  if (const auto* number = std::get_if<double>(&value)) return number_refusal(field, *number, manner);
  if (const auto* whole = std::get_if<int>(&value))
    return field.kind == Kind::integer ? number_refusal(field, *whole, manner) : "";
  if (const auto* many = std::get_if<std::vector<double>>(&value))
    for (const double n : *many)
      if (const std::string why = number_refusal(field, n, manner); !why.empty()) return why;
  if (const auto* many = std::get_if<std::vector<int>>(&value))
    if (field.kind == Kind::integers)
      for (const int n : *many)
        if (const std::string why = number_refusal(field, n, manner); !why.empty()) return why;
  if (field.kind == Kind::pair || field.kind == Kind::fret_width)
    if (const auto* pair = std::get_if<Place2>(&value))
      for (std::size_t i = field.kind == Kind::pair ? 0 : 1; i < 2; ++i)
        if (const std::string why = number_refusal(field, (*pair)[i], manner); !why.empty()) return why;
  if (field.kind == Kind::colour)
    if (const auto* text = std::get_if<std::string>(&value);
        text &&
        (text->size() != 7 || (*text)[0] != '#' || text->find_first_not_of("0123456789abcdefABCDEF", 1) != text->npos))
      return "A colour is written #rrggbb.";
  return "";
}

}  // namespace sagitta::viewer
