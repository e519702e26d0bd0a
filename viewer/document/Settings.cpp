#include "document/Settings.hpp"

#include <langinfo.h>
#include <locale.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string_view>

#include "document/WholeFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;
using Json = nlohmann::json;

namespace {

const char* const file_name = "viewer.json";

Settings from_json(const Json& json) {
  Settings s;
  s.text_size = std::clamp(json.value("text_size", s.text_size), least_text, most_text);
  s.dark = json.value("dark", s.dark);
  s.parallel = json.value("parallel", s.parallel);
  s.display = static_cast<Display>(std::clamp(json.value("display", 0), 0, 3));
  s.decimal = static_cast<Decimal>(std::clamp(json.value("decimal", 0), 0, 2));
  s.desktop_dialogs = json.value("desktop_dialogs", s.desktop_dialogs);
  s.way_shown = json.value("way_shown", s.way_shown);
  s.recent = json.value("recent", s.recent);
  if (s.recent.size() > most_recent) s.recent.resize(most_recent);
  s.export_step = json.value("export_step", s.export_step);
  s.export_stl = json.value("export_stl", s.export_stl);
  s.export_three_mf = json.value("export_3mf", s.export_three_mf);
  s.export_dxf = json.value("export_dxf", s.export_dxf);
  s.export_svg = json.value("export_svg", s.export_svg);
  s.export_pdf = json.value("export_pdf", s.export_pdf);
  s.export_csv = json.value("export_csv", s.export_csv);
  s.export_png = json.value("export_png", s.export_png);
  s.export_html = json.value("export_html", s.export_html);
  s.export_pieces = json.value("export_pieces", s.export_pieces);
  s.export_paper = json.value("export_paper", s.export_paper);
  s.width = std::clamp(json.value("width", s.width), 640, 8192);
  s.height = std::clamp(json.value("height", s.height), 480, 8192);
  return s;
}

Json to_json(const Settings& s) {
  return {{"text_size", s.text_size},
          {"dark", s.dark},
          {"parallel", s.parallel},
          {"display", static_cast<int>(s.display)},
          {"decimal", static_cast<int>(s.decimal)},
          {"desktop_dialogs", s.desktop_dialogs},
          {"way_shown", s.way_shown},
          {"recent", s.recent},
          {"export_step", s.export_step},
          {"export_stl", s.export_stl},
          {"export_3mf", s.export_three_mf},
          {"export_dxf", s.export_dxf},
          {"export_svg", s.export_svg},
          {"export_pdf", s.export_pdf},
          {"export_csv", s.export_csv},
          {"export_png", s.export_png},
          {"export_html", s.export_html},
          {"export_pieces", s.export_pieces},
          {"export_paper", s.export_paper},
          {"width", s.width},
          {"height", s.height}};
}

LoadedSettings set_aside(const fs::path& path) {
  const fs::path aside = path.string() + ".broken";
  std::error_code trouble;
  fs::rename(path, aside, trouble);
  if (trouble)
    return {{},
            "The settings file " + path.string() +
                " cannot be read; it was left as it is and the usual settings are in force."};
  return {
      {},
      "The settings file could not be read. It is kept as " + aside.string() + "; the usual settings are in force."};
}

}  // namespace

bool system_writes_comma() {
  const locale_t own = ::newlocale(LC_NUMERIC_MASK, "", nullptr);
  if (own == nullptr) return false;  // a locale that is not installed: as programs without one write
  const bool comma = std::string_view(::nl_langinfo_l(RADIXCHAR, own)) == ",";
  ::freelocale(own);
  return comma;
}

LoadedSettings load_settings(const fs::path& folder) {
  const fs::path path = folder / file_name;
  std::error_code trouble;
  if (!fs::exists(path, trouble)) return {};
  const auto text = read_whole(path);
  if (!std::holds_alternative<std::string>(text)) return set_aside(path);
  try {
    return {from_json(Json::parse(std::get<std::string>(text))), ""};
  } catch (const Json::exception&) {
    return set_aside(path);
  }
}

std::string save_settings(const fs::path& folder, const Settings& settings) {
  std::error_code trouble;
  fs::create_directories(folder, trouble);
  if (trouble) return "Settings cannot be kept in " + folder.string() + ": " + trouble.message() + ".";
  return write_whole(folder / file_name, to_json(settings).dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

void remember(Settings& settings, const fs::path& board) {
  std::error_code trouble;
  const std::string path = fs::absolute(board, trouble).string();
  std::erase(settings.recent, path);
  settings.recent.insert(settings.recent.begin(), path);
  if (settings.recent.size() > most_recent) settings.recent.resize(most_recent);
}

}  // namespace sagitta::viewer
