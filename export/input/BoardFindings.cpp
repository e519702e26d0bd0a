#include "input/BoardFindings.hpp"

#include <optional>

#include "findings/Findings.hpp"
#include "input/NeckProcess.hpp"
#include "input/Touching.hpp"

namespace sagitta {

std::vector<Finding> board_findings(const PreparedBoard& ready) {
  const std::optional<NeckReading> neck = read_neck_apart(ready);
  std::vector<Finding> findings = findings_of(ready, neck ? &*neck : nullptr);
  for (Finding& finding : touching_findings(ready)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace sagitta
