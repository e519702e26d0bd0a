#include "board/Length.hpp"

#include <charconv>
#include <cmath>
#include <limits>

#include "board/Writer.hpp"

namespace sagitta {
namespace {

/// Differences up to this are rounding: the same as tolerance::same of the plane, which the board does not know. mm.
constexpr double same_length = 1e-9;

/// A number on the way through an expression: bare, or a length in mm.
struct Amount {
  double value = 0;
  bool is_length = false;
};

struct Unit {
  std::string_view name;
  Units family;
  double scale;  ///< of the family's own unit
};
constexpr Unit units_known[] = {{"mm", Units::mm, 1},      {"cm", Units::mm, 10},  {"inches", Units::inch, 1},
                                {"inch", Units::inch, 1},  {"in", Units::inch, 1}, {"\"", Units::inch, 1},
                                {"\u2033", Units::inch, 1}};

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// The number that the digits say, whatever the locale; infinite when there is no such double.
double parsed(std::string_view digits) {
  double value = 0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return result.ec == std::errc() ? value : std::numeric_limits<double>::infinity();
}

class Reader {
 public:
  Reader(std::string_view text, Units units) : text_(text), units_(units) {}

  std::variant<Length, LengthError> read() {
    Amount amount = sum();
    if (!failed_) read_per_minute();
    if (!failed_) skip();
    if (!failed_ && at_ < text_.size()) fail(unexpected());
    if (failed_) return error_;
    length_.mm = in_mm(amount);
    if (!std::isfinite(length_.mm)) return LengthError{1, "this is too large a number"};
    return length_;
  }

 private:
  double in_mm(Amount amount) const { return amount.is_length ? amount.value : to_mm(amount.value, units_); }

  void fail(std::string message) {
    if (failed_) return;
    failed_ = true;
    error_ = {static_cast<int>(at_) + 1, std::move(message)};
  }
  std::string unexpected() const {
    if (at_ >= text_.size()) return "a number is missing at the end";
    if (text_[at_] == ',') return "write a point, not a comma, in a number";
    std::size_t end = at_ + 1;
    while (end < text_.size() && text_[end] != ' ' && !is_digit(text_[end])) ++end;
    return shown_text(text_.substr(at_, end - at_)) + " is not a unit or a number; units are mm, cm and in";
  }
  void skip() {
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t')) ++at_;
  }
  bool take(char c) {
    skip();
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }

  Amount sum() {
    Amount total = product();
    while (!failed_) {
      const bool plus = take('+');
      if (!plus && !take('-')) break;
      length_.plain = false;
      const Amount next = product();
      const double sign = plus ? 1 : -1;
      if (total.is_length == next.is_length) {
        total.value += sign * next.value;
      } else {
        total = {in_mm(total) + sign * in_mm(next), true};
      }
    }
    return total;
  }

  Amount product() {
    Amount total = factor();
    while (!failed_) {
      if (take('*')) {
        const Amount next = factor();
        if (total.is_length && next.is_length) fail("a length times a length is not a length");
        total = {total.value * next.value, total.is_length || next.is_length};
      } else if (!minute_follows() && take('/')) {
        const Amount next = factor();
        if (next.is_length) fail("a length cannot be divided by a length here");
        if (next.value == 0) fail("this divides by zero");
        total.value /= next.value;
      } else {
        break;
      }
      length_.plain = false;
    }
    return total;
  }

  Amount factor() {
    if (++depth_ > 64) fail("too many brackets and signs");
    if (failed_) return {};
    Amount amount;
    if (take('(')) {
      length_.plain = false;
      amount = sum();
      if (!failed_ && !take(')')) fail("a closing bracket is missing");
    } else if (take('-')) {
      amount = factor();
      amount.value = -amount.value;
    } else {
      take('+');
      amount = quantity();
    }
    --depth_;
    return amount;
  }

  /// A number or a mixed number, and a unit if one follows.
  Amount quantity() {
    skip();
    bool whole = true;
    double value = number(whole);
    if (failed_) return {};
    if (whole) value = with_fraction(value);
    if (const Unit* unit = take_unit()) {
      if (!length_.unit) length_.unit = unit->family;
      return {to_mm(value, unit->family) * unit->scale, true};
    }
    return {value, false};
  }

  double number(bool& whole) {
    const std::size_t start = at_;
    while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
    if (at_ < text_.size() && text_[at_] == '.') {
      whole = false;
      ++at_;
      while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
    }
    if (at_ == start || (at_ == start + 1 && !whole)) {
      at_ = start;
      fail(unexpected());
      return 0;
    }
    const std::size_t mantissa = at_;
    if (at_ < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E')) {
      ++at_;
      if (at_ < text_.size() && (text_[at_] == '-' || text_[at_] == '+')) ++at_;
      const std::size_t digits = at_;
      while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
      if (at_ == digits) at_ = mantissa;
      whole = whole && at_ == mantissa;
    }
    return parsed(text_.substr(start, at_ - start));
  }

  /// Whole numbers may go on: "1/2" (value over), "25 1/2", "1-11/16".
  double with_fraction(double value) {
    const std::size_t start = at_;
    if (const auto under = over_digits()) {
      length_.fraction = true;
      return value / *under;
    }
    at_ = start;
    if (at_ < text_.size() && text_[at_] == '-') {
      ++at_;
    } else {
      skip();
      if (at_ == start) return value;
    }
    const std::size_t digits = at_;
    while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
    if (at_ > digits) {
      const double over = parsed(text_.substr(digits, at_ - digits));
      if (const auto under = over_digits()) {
        length_.fraction = true;
        return value + over / *under;
      }
    }
    at_ = start;
    return value;
  }

  /// "/16" right here: the number under the stroke.
  std::optional<double> over_digits() {
    if (at_ >= text_.size() || text_[at_] != '/') return std::nullopt;
    std::size_t end = at_ + 1;
    while (end < text_.size() && is_digit(text_[end])) ++end;
    if (end == at_ + 1 || (end < text_.size() && text_[end] == '.')) return std::nullopt;
    const double under = parsed(text_.substr(at_ + 1, end - at_ - 1));
    if (under == 0) fail("this divides by zero");
    at_ = end;
    return under;
  }

  const Unit* take_unit() {
    const std::size_t start = at_;
    skip();
    for (const Unit& unit : units_known) {
      if (!text_.substr(at_).starts_with(unit.name)) continue;
      const std::size_t end = at_ + unit.name.size();
      if (is_letter(unit.name[0]) && end < text_.size() && is_letter(text_[end])) continue;
      at_ = end;
      return &unit;
    }
    at_ = start;
    return nullptr;
  }

  bool minute_follows() {
    const std::string_view rest = text_.substr(at_);
    return rest.starts_with("/min") || rest.starts_with(" /min");
  }
  void read_per_minute() {
    skip();
    if (!minute_follows()) return;
    at_ += 4;
    length_.per_minute = true;
  }

  std::string_view text_;
  Units units_;
  std::size_t at_ = 0;
  int depth_ = 0;
  bool failed_ = false;
  LengthError error_;
  Length length_;
};

std::string rounded(double value, int decimals) {
  char buffer[400];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals).ptr;
  std::string text(buffer, end);
  if (text.find('.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

}  // namespace

double to_mm(double value, Units units) {
  if (units == Units::mm || !std::isfinite(value)) return value;
  const std::string written = decimal(value);
  long double exact = value;
  std::from_chars(written.data(), written.data() + written.size(), exact);
  return static_cast<double>(exact * 127 / 5);
}

std::string_view unit_name(Units units) { return units == Units::inch ? "in" : "mm"; }

std::variant<Length, LengthError> read_length(std::string_view text, Units units) { return Reader(text, units).read(); }

std::string decimal(double value) {
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

std::optional<std::string> bare_length(double mm, Units units) {
  if (units == Units::mm) return decimal(mm);
  const double inches = mm / mm_per_inch;
  for (int digits = 1; digits <= 17; ++digits) {
    char buffer[64];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, inches, std::chars_format::general, digits).ptr;
    const double read = parsed({buffer, end});
    if (to_mm(read, Units::inch) == mm) return decimal(read);
  }
  for (const double near : {std::nextafter(inches, 0.0), std::nextafter(inches, 2 * inches)}) {
    if (to_mm(near, Units::inch) == mm) return decimal(near);
  }
  return std::nullopt;
}

std::string shown_length(double mm, Units units, int decimals) {
  return rounded(mm / mm_per(units), decimals) + " " + std::string(unit_name(units));
}

std::optional<std::string> inch_fraction(double mm) {
  const double parts = std::abs(mm) / mm_per_inch * 64;
  const double nearest = std::round(parts);
  if (nearest > 1e9 || std::abs(parts - nearest) * mm_per_inch / 64 > same_length) return std::nullopt;
  long over = std::lround(nearest);
  const long whole = over / 64;
  over %= 64;
  long under = 64;
  while (over != 0 && over % 2 == 0) {
    over /= 2;
    under /= 2;
  }
  std::string text = mm < 0 && nearest != 0 ? "-" : "";
  if (whole != 0 || over == 0) text += std::to_string(whole);
  if (over == 0) return text;
  if (whole != 0) text += " ";
  return text + std::to_string(over) + "/" + std::to_string(under);
}

}  // namespace sagitta
