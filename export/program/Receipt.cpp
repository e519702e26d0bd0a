#include "program/Receipt.hpp"

#include <algorithm>
#include <array>
#include <cstdio>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "package/Report.hpp"
#include "text/TerminalColour.hpp"

namespace sagitta {
namespace {

std::vector<Finding> of_severity(const std::vector<Finding>& findings, Severity severity) {
  std::vector<Finding> some;
  std::copy_if(findings.begin(), findings.end(), std::back_inserter(some),
               [severity](const Finding& finding) { return finding.severity == severity; });
  return some;
}

std::string counted(std::size_t number, const std::string& word) {
  return std::to_string(number) + " " + word + (number == 1 ? "" : "s");
}

/// "940 kB", "5.2 MB": thousands, as the IEC's and the SI's prefixes count.
std::string shown_size(std::uintmax_t bytes) {
  std::array<char, 32> text{};
  const double size = static_cast<double>(bytes);
  std::snprintf(text.data(), text.size(), size < 1e6 ? "%.0f kB" : "%.1f MB", size < 1e6 ? size / 1e3 : size / 1e6);
  return text.data();
}

}  // namespace

nlohmann::ordered_json receipt_json(const Receipt& receipt) {
  return {{"board", receipt.board},
          {"folder", receipt.folder},
          {"files", receipt.files},
          {"bytes", receipt.bytes},
          {"stops", of_severity(receipt.findings, Severity::stop).size()},
          {"looks", of_severity(receipt.findings, Severity::look).size()},
          {"unchanged", receipt.unchanged}};
}

void print_receipt(const Receipt& receipt, const ReceiptStyle& style) {
  const std::vector<Finding> stops = of_severity(receipt.findings, Severity::stop),
                             looks = of_severity(receipt.findings, Severity::look);
  const bool colours = shows_colours(Stream::error);
  if (!style.quiet) std::cerr << finding_text(stops, colours) << finding_text(looks, colours);
  if (style.json) {
    std::cout << receipt_json(receipt).dump(2, ' ', true, nlohmann::json::error_handler_t::replace) << "\n";
  } else if (!style.quiet) {
    std::cout << receipt.folder << ": " << (receipt.unchanged ? "unchanged, " : "") << counted(receipt.files, "file")
              << ", " << shown_size(receipt.bytes) << ", " << counted(stops.size(), "stop") << ", "
              << counted(looks.size(), "look") << "\n";
  }
}

bool refused_for_stops(const std::vector<Finding>& findings) {
  const std::vector<Finding> stops = of_severity(findings, Severity::stop);
  if (stops.empty()) return false;
  std::cerr << finding_text(stops) << "sagitta: " << counted(stops.size(), "finding")
            << (stops.size() == 1 ? " says" : " say") << " stop; nothing was written\n";
  return true;
}

}  // namespace sagitta
