#include "program/Receipt.hpp"

#include <algorithm>
#include <iostream>
#include <iterator>

#include "package/Report.hpp"

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

}  // namespace

void print_receipt(const std::string& folder, std::size_t files, const std::vector<Finding>& findings) {
  const std::vector<Finding> stops = of_severity(findings, Severity::stop),
                             looks = of_severity(findings, Severity::look);
  std::cerr << finding_text(stops) << finding_text(looks);
  std::cout << folder << ": " << counted(files, "file") << ", " << counted(stops.size(), "stop") << ", "
            << counted(looks.size(), "look") << "\n";
}

bool refused_for_stops(const std::vector<Finding>& findings) {
  const std::vector<Finding> stops = of_severity(findings, Severity::stop);
  if (stops.empty()) return false;
  std::cerr << finding_text(stops) << "sagitta: " << counted(stops.size(), "finding")
            << (stops.size() == 1 ? " says" : " say") << " stop; nothing was written\n";
  return true;
}

}  // namespace sagitta
