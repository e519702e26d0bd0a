#include "text/CsvRow.hpp"

#include <algorithm>
#include <cstdio>
#include <string_view>

#include "text/ForeignText.hpp"

namespace sagitta {
namespace {

bool begins_formula(std::string_view cell) {
  cell.remove_prefix(std::min(cell.find_first_not_of(' '), cell.size()));
  if (cell.empty()) return false;
  const char32_t first = first_character(cell).code;
  constexpr std::u32string_view signs = U"=+-@\uFF1D\uFF0B\uFF0D\uFF20";
  return signs.find(first) != signs.npos;
}

}  // namespace

CsvRow& CsvRow::field(const std::string& value) {
  if (begun_) row_ += ',';
  begun_ = true;
  row_ += value;
  return *this;
}

CsvRow& CsvRow::text(const std::string& value) {
  std::string cell = visible_text(value);
  if (begins_formula(cell)) cell.insert(0, "'");
  // Some spreadsheets separate cells by semicolons.
  if (cell.find_first_of(",;\"") == std::string::npos) return field(cell);
  std::string quoted = "\"";
  for (const char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return field(quoted + "\"");
}

CsvRow& CsvRow::whole(int value) { return field(std::to_string(value)); }

CsvRow& CsvRow::number(double value) {
  char buffer[400];
  std::snprintf(buffer, sizeof buffer, "%.4f", value);
  return field(std::string(buffer) == "-0.0000" ? "0.0000" : buffer);
}

CsvRow& CsvRow::number(const std::optional<double>& value) { return value ? number(*value) : field(""); }

}  // namespace sagitta
