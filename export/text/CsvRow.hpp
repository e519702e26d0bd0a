#pragma once

/// A row of comma-separated values.

#include <optional>
#include <string>

namespace sagitta {

/// One row of comma-separated values (RFC 4180). Lengths to 0.0001.
class CsvRow {
 public:
  /// Foreign text: visible_text, quoted where it holds what separates cells. A cell that a spreadsheet would take for a
  /// formula, one that begins with = + - @ or their full-width kin, gets an apostrophe before it, which spreadsheets
  /// take for "this is text". Source: OWASP, CSV Injection.
  CsvRow& text(const std::string& value);
  CsvRow& whole(int value);
  CsvRow& number(double value);
  /// An empty field when there is none.
  CsvRow& number(const std::optional<double>& value);
  /// The row with its line end.
  std::string line() const { return row_ + "\n"; }

 private:
  CsvRow& field(const std::string& value);
  std::string row_;
  bool begun_ = false;
};

}  // namespace sagitta
