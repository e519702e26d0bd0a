#include "layout/Measure.hpp"

#include <cstdio>

namespace sagitta {

std::string plain(double value) {
  char text[64];
  std::snprintf(text, sizeof text, "%.4f", value);
  std::string result = text;
  while (result.back() == '0') result.pop_back();
  if (result.back() == '.') result.pop_back();
  return result == "-0" ? "0" : result;
}

std::string in_mm(double value) { return plain(value) + " mm"; }

}  // namespace sagitta
