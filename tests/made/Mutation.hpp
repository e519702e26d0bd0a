#pragma once

/// Changes a text as a careless or hostile hand would: numbers, quoted texts and lines, so that most of what comes out
/// still has a form that is read on. The same seed makes the same change.

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace sagitta::test {

class Mutation {
 public:
  explicit Mutation(unsigned seed) : random_(seed) {}

  std::string of(std::string text) {
    const std::size_t changes = 1 + below(4);
    for (std::size_t i = 0; i < changes && !text.empty(); ++i) {
      switch (below(8)) {
        case 0:
        case 1:
        case 2:
          change_number(text);
          break;
        case 3:
          change_quoted(text);
          break;
        case 4:
          change_bytes(text);
          break;
        default:
          change_line(text);
      }
    }
    return text;
  }

 private:
  using Span = std::pair<std::size_t, std::size_t>;  ///< from, size

  std::size_t below(std::size_t n) { return random_() % n; }

  static bool is_digit(char c) { return c >= '0' && c <= '9'; }

  void change_number(std::string& text) {
    std::vector<Span> numbers;
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (!is_digit(text[i])) continue;
      const std::size_t from = i > 0 && text[i - 1] == '-' ? i - 1 : i;
      while (i < text.size() && (is_digit(text[i]) || text[i] == '.')) ++i;
      numbers.emplace_back(from, i - from);
    }
    if (numbers.empty()) return;
    const auto [from, size] = numbers[below(numbers.size())];
    text.replace(from, size, another_number(std::atof(text.substr(from, size).c_str())));
  }

  std::string another_number(double value) {
    static const char* const odd[] = {"0",   "-1",     "1",          "0.001",      "1e-9",       "1e9",     "1e300",
                                      "nan", "inf",    "2147483648", "4294967296", "-0.0",       "24",      "1000",
                                      "0.5", "1e-320", "99999",      "36",         "\"1/2 in\"", "\"3 mm\""};
    static const double factors[] = {0.5, 2, -1, 10, 0.1, 1.0001, 1 + 1e-9, 0.9, 1.1};
    if (below(2) == 0) return odd[below(std::size(odd))];
    char written[32];
    std::snprintf(written, sizeof written, "%.12g",
                  value * factors[below(std::size(factors))] + (below(4) == 0 ? 1 : 0));
    return written;
  }

  void change_quoted(std::string& text) {
    static const char* const words[] = {
        "shell",   "bone",    "ebony",   "",       "flat",  "single",   "compound", "string-line", "even-edge", "blind",
        "through", "arc",     "fret",    "hollow", "slot",  "shelf",    "block",    "diamond",     "trapezoid", "../x",
        "=1+1",    "\\u0000", "\\u202E", "<&>",    "board", "pocketed", "stl",      "outline"};
    std::vector<Span> quoted;
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] != '"') continue;
      const std::size_t end = text.find('"', i + 1);
      if (end == std::string::npos) break;
      quoted.emplace_back(i + 1, end - i - 1);
      i = end;
    }
    if (quoted.empty()) return;
    const auto [from, size] = quoted[below(quoted.size())];
    text.replace(from, size, words[below(std::size(words))]);
  }

  void change_bytes(std::string& text) {
    static const std::string likely = "0123456789.-\"'[]{}=,#\n\t eE_<>/&;:";
    const std::size_t at = below(text.size());
    switch (below(6)) {
      case 0:
        text[at] = static_cast<char>(below(256));
        break;
      case 1:
        text[at] = likely[below(likely.size())];
        break;
      case 2:
        text.erase(at, 1 + below(8));
        break;
      case 3:
        text.insert(at, text.substr(below(text.size()), below(40)));
        break;
      case 4:
        if (below(4) == 0) text.resize(at);
        break;
      default:
        text.insert(at, 1, likely[below(likely.size())]);
    }
  }

  void change_line(std::string& text) {
    std::vector<Span> lines;
    for (std::size_t from = 0; from < text.size();) {
      const std::size_t end = std::min(text.find('\n', from), text.size() - 1) + 1;
      lines.emplace_back(from, end - from);
      from = end;
    }
    const auto [from, size] = lines[below(lines.size())];
    const auto [to, other_size] = lines[below(lines.size())];
    const std::string line = text.substr(from, size), other = text.substr(to, other_size);
    switch (below(3)) {
      case 0:
        text.erase(from, size);
        break;
      case 1:
        text.insert(to, line);
        break;
      default:
        text.replace(from, size, other);
    }
  }

  std::mt19937 random_;
};

}  // namespace sagitta::test
