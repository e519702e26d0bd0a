#include "export/CsvRow.hpp"

#include <cstdio>

namespace sagitta {

CsvRow& CsvRow::field(const std::string& value) {
  if (begun_) row_ += ',';
  begun_ = true;
  row_ += value;
  return *this;
}

CsvRow& CsvRow::text(const std::string& value) {
  if (value.find_first_of(",\"\r\n") == std::string::npos) return field(value);
  std::string quoted = "\"";
  for (const char c : value) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
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
