#include "harm/Harm.hpp"

#include "Places.hpp"
#include "folder/FolderState.hpp"

namespace sagitta::test {
namespace {

constexpr const char* drawing =
    "<svg xmlns='http://www.w3.org/2000/svg' width='12mm' height='12mm' viewBox='0 0 12 12'>"
    "<circle cx='6' cy='6' r='5' fill='#c02020'/></svg>";

constexpr const char* letter = "to the youth orchestra";

/// Every file below a folder with its bytes.
std::string contents(const fs::path& folder) {
  std::string all;
  std::istringstream names(listing(folder));
  for (std::string name; std::getline(names, name);)
    all += name + (fs::is_directory(folder / name) ? "/\n" : ":" + bytes_of(folder / name) + "\n");
  return all;
}

}  // namespace

Workshop::Workshop() {
  fs::create_directory(path() / "job");
  write_file(path() / "job/reeds.svg", drawing);
  write_file(path() / "job/board.toml", bytes_of(preset_path("reed-tenor")) +
                                            "\n[[inlays]]\nshape = \"artwork\"\nfile = \"reeds.svg\"\n"
                                            "frets = [4]\nalong = 8\ndepth = 1.2\n");
  write_file(path() / "job/letter.txt", letter);
  // Names like those of a temporary folder, without its marker or with more in it.
  fs::create_directories(path() / "job/.out.sagitta-0123456789abcdef/new");
  write_file(path() / "job/.out.sagitta-0123456789abcdef/new/letter.txt", letter);
  fs::create_directories(path() / "job/.out.AbCdEf");
  write_file(path() / "job/.out.AbCdEf/letter.txt", letter);
  const Outcome made = run("");
  if (made.code != 0) throw std::runtime_error("the first export failed: " + made.err);
  first_ = contents(path() / "job/out");
}

std::string Workshop::line(const std::string& options) const {
  return places::program() + " export '" + (path() / "job/board.toml").string() + "' --to '" +
         (path() / "job/out").string() + "' --only csv,svg " + options;
}

Outcome Workshop::run(const std::string& options, const std::string& variables) const {
  return shell(variables.empty() ? line(options)
                                 : variables + " FAIL_BELOW='" + (path() / "job").string() + "' LD_PRELOAD='" +
                                       places::failing_calls() + "' " + line(options));
}

std::string Workshop::harm(bool may_be_absent) const {
  const fs::path job = path() / "job";
  for (const char* mine : {"letter.txt", ".out.sagitta-0123456789abcdef/new/letter.txt", ".out.AbCdEf/letter.txt"})
    if (!fs::exists(job / mine) || bytes_of(job / mine) != letter) return std::string(mine) + " is lost";
  if (bytes_of(job / "reeds.svg") != drawing) return "the drawing is lost";
  if (!fs::exists(job / "out")) return may_be_absent ? "" : "the folder is gone";
  if (contents(job / "out") != first_) return "the folder is not whole:\n" + listing(job / "out");
  return look_at_folder(job / "out", {}).kind == FolderState::Kind::ours ? "" : "the folder is not known for ours";
}

std::string Workshop::left() const {
  std::string names;
  for (const auto& entry : fs::directory_iterator(path() / "job")) {
    const std::string name = entry.path().filename();
    if (name != "out" && name != "board.toml" && name != "reeds.svg" && name != "letter.txt" &&
        name != ".out.sagitta-0123456789abcdef" && name != ".out.AbCdEf")
      names += name + " ";
  }
  return names;
}

void Workshop::remove_export() const { fs::remove_all(path() / "job/out"); }

}  // namespace sagitta::test
