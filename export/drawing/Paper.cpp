#include "drawing/Paper.hpp"

#include <algorithm>
#include <cctype>

namespace sagitta {
namespace {

constexpr Paper papers[] = {{"A4", 297, 210}, {"A3", 420, 297}, {"Letter", 279.4, 215.9}, {"Tabloid", 431.8, 279.4}};

}  // namespace

const Paper* paper_named(std::string_view name) {
  const auto same = [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == std::tolower(b); };
  for (const Paper& paper : papers)
    if (std::equal(name.begin(), name.end(), paper.name.begin(), paper.name.end(), same)) return &paper;
  return nullptr;
}

}  // namespace sagitta
