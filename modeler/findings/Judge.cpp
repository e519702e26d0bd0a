#include "findings/Judge.hpp"

#include "board/Length.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

double Judge::limit(const Rule& rule) const {
  const auto own = board_.limits.find(std::string(rule.name));
  if (own == board_.limits.end()) return rule.limit;
  return rule.unit == "mm" ? to_mm(own->second, board_.units) : own->second;
}

bool Judge::breaks(const Rule& rule, double value) const {
  const double over = rule.bar == Bar::most ? value - limit(rule) : limit(rule) - value;
  return over > tolerance::same;
}

bool Judge::hold(const Rule& rule, double value, const Spot& spot, const std::string& message,
                 const std::string& suggestion) {
  if (!breaks(rule, value)) return false;
  found_.push_back({std::string(rule.name),
                    rule.severity,
                    value,
                    limit(rule),
                    std::string(rule.unit),
                    {spot.at.x, spot.at.y, spot.z},
                    spot.feature,
                    message,
                    suggestion});
  return true;
}

std::string Judge::shown(double mm) const { return shown_length(mm, board_.units, board_.units == Units::mm ? 2 : 4); }

}  // namespace sagitta
