# Writes OUT, a C++ source with the text of every board file of FOLDER in it, so that the program needs no files beside it.
file(GLOB boards ${FOLDER}/*.toml)
list(SORT boards)
set(rows "")
foreach(board IN LISTS boards)
  get_filename_component(name ${board} NAME_WE)
  file(READ ${board} text)
  string(APPEND rows "      {\"${name}\", R\"board(${text})board\"},\n")
endforeach()
file(WRITE ${OUT} "#include \"export/Presets.hpp\"

namespace sagitta {

const std::vector<Preset>& presets() {
  static const std::vector<Preset> all = {
${rows}  };
  return all;
}

}  // namespace sagitta
")
