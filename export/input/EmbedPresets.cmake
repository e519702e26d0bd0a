# Writes OUT, a C++ source with the text of every board file of FOLDER and of the drawings it names in it, so that the program needs no files beside it.
file(GLOB boards ${FOLDER}/*.toml)
list(SORT boards)
set(rows "")
foreach(board IN LISTS boards)
  get_filename_component(name ${board} NAME_WE)
  file(READ ${board} text)
  set(drawings "")
  string(REGEX MATCHALL "\nfile = \"[^\"]+\"" named "${text}")
  list(REMOVE_DUPLICATES named)
  foreach(line IN LISTS named)
    string(REGEX REPLACE "\nfile = \"([^\"]+)\"" "\\1" file "${line}")
    file(READ ${FOLDER}/${file} drawing)
    string(APPEND drawings "{\"${file}\", R\"board(${drawing})board\"}, ")
  endforeach()
  string(APPEND rows "      {\"${name}\", R\"board(${text})board\", {${drawings}}},\n")
endforeach()
file(WRITE ${OUT} "#include \"input/Presets.hpp\"

namespace sagitta {

const std::vector<Preset>& presets() {
  static const std::vector<Preset> all = {
${rows}  };
  return all;
}

}  // namespace sagitta
")
