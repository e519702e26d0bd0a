#pragma once

/// The boxes of the house as the build knows them, and the floors that they stand on.

#include <map>
#include <regex>
#include <set>

#include "Source.hpp"

namespace sagitta::test {

/// From the ground up; a box may use those on lower floors only.
inline const std::vector<std::set<std::string>>& floors() {
  static const std::vector<std::set<std::string>> all = {{"plane", "files", "font"},
                                                         {"polygon", "board"},
                                                         {"artwork"},
                                                         {"layout"},
                                                         {"surface", "inlay"},
                                                         {"plan", "measured"},
                                                         {"lift"},
                                                         {"mesh", "prepared"},
                                                         {"rules"},
                                                         {"frets", "inlaid", "wood", "neck"},
                                                         {"findings"},
                                                         {"solid", "rescue"},
                                                         {"text", "input", "folder", "manual"},
                                                         {"drawing", "cad", "tables"},
                                                         {"paper"},
                                                         {"jobsheet"},
                                                         {"package"},
                                                         {"trial", "release"},
                                                         {"gpu", "document", "scene"},
                                                         {"view", "jobs", "widgets"},
                                                         {"requests"},
                                                         {"decisions"},
                                                         {"overlay", "dialogs", "picture", "window"},
                                                         {"app"}};
  return all;
}

/// -1 for what is no box.
inline int floor_of(const std::string& box) {
  for (std::size_t i = 0; i < floors().size(); ++i)
    if (floors()[i].count(box)) return static_cast<int>(i);
  return -1;
}

struct BoxTarget {
  std::string folder;
  std::set<std::string> arrows;
};

/// Every `box(name folder ARROWS .. LIBS ..)` of the text.
inline std::map<std::string, BoxTarget> boxes_in(const std::string& cmake) {
  static const std::regex call(R"(^box\(([^)]*)\))", std::regex::multiline);
  std::map<std::string, BoxTarget> boxes;
  for (std::sregex_iterator at(cmake.begin(), cmake.end(), call), end; at != end; ++at) {
    std::istringstream words((*at)[1].str());
    std::string name, word;
    BoxTarget box;
    words >> name >> box.folder;
    for (bool arrows = false; words >> word;) {
      if (word == "ARROWS" || word == "LIBS")
        arrows = word == "ARROWS";
      else if (arrows)
        box.arrows.insert(word);
    }
    boxes[name] = box;
  }
  return boxes;
}

/// All boxes of the project.
inline std::map<std::string, BoxTarget> boxes() {
  std::map<std::string, BoxTarget> all = boxes_in(text_of(source() / "CMakeLists.txt"));
  for (const char* part : {"export", "viewer"})
    if (fs::exists(source() / part / "CMakeLists.txt"))
      all.merge(boxes_in(text_of(source() / part / "CMakeLists.txt")));
  return all;
}

/// Our files of a box: those below its folder that lie in no box further down.
inline std::vector<fs::path> files_of(const std::map<std::string, BoxTarget>& boxes, const std::string& name) {
  const std::string& folder = boxes.at(name).folder;
  std::vector<fs::path> files = code_below(folder);
  for (const auto& [other, box] : boxes)
    if (box.folder.starts_with(folder + "/"))
      std::erase_if(files, [&](const fs::path& file) { return shown(file).starts_with(box.folder + "/"); });
  return files;
}

/// What a box reaches along its arrows, itself included.
inline std::set<std::string> reach(const std::map<std::string, BoxTarget>& boxes, const std::string& box) {
  std::set<std::string> found{box};
  for (std::vector<std::string> open{box}; !open.empty();) {
    const std::string next = open.back();
    open.pop_back();
    const auto target = boxes.find(next);
    if (target == boxes.end()) continue;
    for (const std::string& arrow : target->second.arrows)
      if (found.insert(arrow).second) open.push_back(arrow);
  }
  return found;
}

/// The box whose header an include line names, or "".
inline std::string included_box(const std::string& line) {
  static const std::regex include(R"re(^\s*#\s*include\s*"([a-z_]+)/)re");
  std::smatch match;
  return std::regex_search(line, match, include) && floor_of(match[1]) >= 0 ? match[1].str() : "";
}

}  // namespace sagitta::test
