#include "artwork/Scan.hpp"

#include <charconv>
#include <cmath>

namespace sagitta {
namespace {

/// Numbers beyond this are a slip or an attack; their products must stay finite.
constexpr double largest_number = 1e12;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_word(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace

void Scan::skip_space() {
  while (!done() && is_space(text[at])) ++at;
}

void Scan::skip_comma() {
  skip_space();
  if (take(',')) skip_space();
}

bool Scan::take(char c) {
  if (done() || text[at] != c) return false;
  ++at;
  return true;
}

std::optional<double> Scan::number() {
  const std::size_t sign = here() == '+' || here() == '-' ? 1 : 0;
  const std::string_view digits = rest().substr(std::min(sign, rest().size()));
  const bool starts =
      !digits.empty() && (is_digit(digits[0]) || (digits[0] == '.' && digits.size() > 1 && is_digit(digits[1])));
  if (!starts) return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  const bool tiny = error == std::errc::result_out_of_range && value == 0;
  if ((error != std::errc() && !tiny) || std::abs(value) > largest_number) return std::nullopt;
  const bool minus = here() == '-';
  at += sign + static_cast<std::size_t>(end - digits.data());
  return minus ? -value : value;
}

std::optional<bool> Scan::flag() {
  if (here() != '0' && here() != '1') return std::nullopt;
  return text[at++] == '1';
}

std::string_view Scan::word() {
  const std::size_t from = at;
  while (!done() && is_word(text[at])) ++at;
  return text.substr(from, at - from);
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

}  // namespace sagitta
