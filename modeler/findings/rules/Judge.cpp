#include "rules/Judge.hpp"

#include <cmath>

#include "board/Length.hpp"
#include "plane/Tolerance.hpp"
#include "rules/ShownMeasures.hpp"

namespace sagitta {
namespace {

/// Steps in a unit that a builder would write a length to.
double steps_per(Units units) { return units == Units::mm ? 100 : 2000; }

}  // namespace

double Judge::limit(const Rule& rule) const {
  const auto own = board_.limits.find(std::string(rule.name));
  if (own == board_.limits.end()) return rule.limit;
  return rule.unit == "mm" ? to_mm(own->second, board_.units) : own->second;
}

bool Judge::breaks(const Rule& rule, double value) const {
  const double over = rule.bar == Bar::most ? value - limit(rule) : limit(rule) - value;
  return rule.bar == Bar::above ? over >= -tolerance::same : over > tolerance::same;
}

bool Judge::hold(const Rule& rule, double value, const Spot& spot, const std::string& message,
                 const std::string& suggestion, const std::optional<Fix>& fix) {
  if (!breaks(rule, value)) return false;
  const bool own = board_.limits.count(std::string(rule.name)) > 0;
  found_.push_back({std::string(rule.name),
                    rule.severity,
                    value,
                    limit(rule),
                    std::string(rule.unit),
                    {spot.at.x, spot.at.y, spot.z},
                    spot.where,
                    spot.feature,
                    message,
                    std::string(rule.cost),
                    own ? "key limits." + std::string(rule.name) : std::string(rule.source),
                    suggestion,
                    fix && can_apply(board_, *fix) ? fix : std::nullopt});
  return true;
}

double Judge::up(double mm) const {
  const double steps = steps_per(board_.units);
  return to_mm(std::ceil((mm - tolerance::same) / mm_per(board_.units) * steps) / steps, board_.units);
}

double Judge::down(double mm) const {
  const double steps = steps_per(board_.units);
  return to_mm(std::floor((mm + tolerance::same) / mm_per(board_.units) * steps) / steps, board_.units);
}

bool Judge::shows(double mm) const { return mm >= 0.5 / steps_per(board_.units) * mm_per(board_.units); }

std::string Judge::wood_left(double mm) const {
  return shows(mm) ? "only " + shown(mm) + " of wood is left" : "no wood is left";
}

std::string Judge::shown_area(double mm2) const { return sagitta::shown_area(board_, mm2); }

std::string Judge::shown(double mm) const { return shown_length(mm, board_.units, board_.units == Units::mm ? 2 : 4); }

}  // namespace sagitta
