#include "cad/StepFileNames.hpp"

#include "text/StepString.hpp"

namespace sagitta {
namespace {

constexpr std::string_view start = "SAGITTA-NAME-";
constexpr std::size_t digits = 6;

std::string mark_of(std::size_t number) {
  const std::string shown = std::to_string(number);
  return std::string(start) + std::string(digits - shown.size(), '0') + shown;
}

}  // namespace

std::string StepNames::mark(const std::string& name) {
  names_.push_back(name);
  return mark_of(names_.size() - 1);
}

std::string StepNames::put_in(const std::string& whole) const {
  std::string result;
  result.reserve(whole.size());
  std::size_t from = 0;
  for (std::size_t at; (at = whole.find(start, from)) != std::string::npos; from = at + start.size() + digits) {
    result.append(whole, from, at - from);
    result += step_string(names_.at(std::stoul(whole.substr(at + start.size(), digits))));
  }
  return result.append(whole, from);
}

}  // namespace sagitta
