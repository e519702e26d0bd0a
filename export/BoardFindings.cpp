#include "export/BoardFindings.hpp"

#include <algorithm>
#include <optional>

#include "export/NeckProcess.hpp"
#include "export/Touching.hpp"
#include "findings/ArtworkFindings.hpp"

namespace sagitta {

std::vector<Finding> board_findings(const ReadyBoard& ready) {
  const std::optional<NeckReading> neck = read_neck_apart(ready.board(), ready.layout);
  std::vector<Finding> findings = findings_of(ready.board(), ready.layout, ready.surface, neck ? &*neck : nullptr);
  for (Finding& finding : artwork_findings(ready.board(), ready.layout, ready.surface, ready.inlays))
    findings.push_back(std::move(finding));
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
  for (Finding& finding : touching_findings(ready)) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace sagitta
