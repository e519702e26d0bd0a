/// What a field allows, and what was probably meant by a value that it does not allow.

#include <algorithm>
#include <cmath>
#include <optional>

#include "board/Length.hpp"
#include "board/Reading.hpp"

namespace sagitta {

std::string allowed(const Field& field, Units units) {
  const bool length = field.is_length();
  const auto shown_end = [&](double value) {
    return length ? shown_length(value, units)
                  : decimal(value) + (field.unit.empty() ? "" : " " + std::string(field.unit));
  };
  if (field.range.least == field.range.most) return "it must be " + shown_end(field.range.least);
  const std::string zero = field.range.zero ? "0, or " : "";
  const std::string minute = field.kind == Kind::speed ? "/min" : "";
  return "allowed is " + zero + "from " + shown_end(field.range.least) + " to " + shown_end(field.range.most) + minute;
}

namespace {

/// How far a length is from the middle of what is allowed, as a ratio: the logarithm of it.
double off_middle(const Range& range, double mm) {
  constexpr double smallest = 1e-3;  // of the most: a range that begins at or below 0 has no ratio
  const double least = std::max(range.least, smallest * range.most);
  return std::abs(std::log(mm * mm / (least * range.most)));
}

/// What a number may have been meant as, and how far that is from the middle of what the field allows.
struct Meant {
  double far = 0;
  std::string hint;
};

/// The number taken in the other unit: mm for inches, inches for mm.
std::optional<Meant> meant_in_other_unit(const Field& field, double written, Units other) {
  const double mm = to_mm(written, other);
  if (!field.range.holds(mm)) return std::nullopt;
  const std::string word = other == Units::inch ? "inches" : "millimetres";
  return Meant{off_middle(field.range, mm), "this looks like " + word + ": write \"" + shown_length(mm, other, 6) +
                                                "\", or set units = \"" + std::string(unit_name(other)) +
                                                "\" if the whole file is in " + word};
}

/// The number taken in centimetres, which is also a decimal point one place too far to the left.
std::optional<Meant> meant_in_centimetres(const Field& field, double written, Units units) {
  const double mm = 10 * written;
  if (units != Units::mm || !field.range.holds(mm)) return std::nullopt;
  std::string number = shown_length(written, Units::mm, 6);
  number.replace(number.size() - 2, 2, "cm");
  return Meant{off_middle(field.range, mm), "this looks like centimetres or a slip of the decimal point: write \"" +
                                                number + "\" or \"" + shown_length(mm, Units::mm, 6) + "\""};
}

}  // namespace

std::string other_unit_hint(const Field& field, double mm, Units units) {
  if (!field.is_length() || mm <= 0) return "";
  const double written = mm / mm_per(units);
  std::vector<Meant> meant;
  for (const auto& each : {meant_in_other_unit(field, written, units == Units::mm ? Units::inch : Units::mm),
                           meant_in_centimetres(field, written, units)})
    if (each) meant.push_back(*each);
  std::ranges::stable_sort(meant, {}, &Meant::far);
  std::string hint;
  for (const Meant& each : meant) hint += (hint.empty() ? "" : "; or ") + each.hint;
  return hint;
}

std::string radius_hint(const Board& board, double mm) {
  constexpr Range usual_radius{100, 1000};  // mm; 4 to 40 in
  const bool usual = board.units == Units::mm && usual_radius.holds(to_mm(mm, Units::inch));
  return usual ? other_unit_hint(*find_field("surface.radius_at_nut"), mm, Units::mm) : "";
}

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace sagitta
