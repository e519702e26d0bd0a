#include "oracle/Catalogue.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <map>
#include <sstream>
#include <string_view>

namespace sagitta::oracle {
namespace {

/// A slot or a corner meets an end (S50, S51, S52, S55), no wood left before a blind slot's tip (S63), a radius under
/// half the strip's width (S90).
constexpr std::array<std::string_view, 6> refused{"S50", "S51", "S52", "S55", "S63", "S90"};

using RowValues = std::map<std::string, std::string>;

std::vector<std::string> cells(const std::string& line) {
  std::vector<std::string> values;
  std::istringstream text(line);
  for (std::string cell; std::getline(text, cell, ',');) values.push_back(cell);
  return values;
}

std::vector<RowValues> table(const std::string& path) {
  std::ifstream file(path);
  std::string line;
  std::getline(file, line);
  const std::vector<std::string> heads = cells(line);
  std::vector<RowValues> rows;
  while (std::getline(file, line)) {
    const std::vector<std::string> values = cells(line);
    RowValues row;
    for (std::size_t i = 0; i < heads.size() && i < values.size(); ++i) row[heads[i]] = values[i];
    if (row.contains("volume_mm3")) rows.push_back(row);
  }
  return rows;
}

}  // namespace

std::vector<Case> catalogue(const std::string& folder) {
  std::vector<Case> cases;
  for (const auto& [file, inside] :
       {std::pair{"/volumes.csv", "/"}, {"/singles.csv", "/singles/"}, {"/families.csv", "/families/"}}) {
    for (const RowValues& row : table(folder + file)) {
      const std::string& name = row.at("case");
      cases.push_back({name, folder + inside + name + ".toml", std::stod(row.at("volume_mm3")),
                       std::stoi(row.at("faces")), std::stoi(row.at("genus")),
                       std::find(refused.begin(), refused.end(), name) != refused.end()});
    }
  }
  return cases;
}

}  // namespace sagitta::oracle
