#pragma once

/// What the user chose about the window, kept between sessions.

#include <filesystem>
#include <string>
#include <vector>

namespace sagitta::viewer {

enum class Display { as_file, mm, inch_decimal, inch_fraction };

/// The mark between whole numbers and decimals.
enum class Decimal { as_system, point, comma };
/// Whether this user's system writes a comma there (its locale: LC_ALL, LC_NUMERIC, LANG).
bool system_writes_comma();

struct Settings {
  double text_size = 1;  ///< 0.75 .. 2.5
  bool dark = false;
  bool parallel = false;
  Display display = Display::as_file;
  Decimal decimal = Decimal::as_system;
  bool desktop_dialogs = true;      ///< the desktop's own dialog for files, where it has one
  bool way_shown = false;           ///< the first-run page has been seen
  std::vector<std::string> recent;  ///< newest first, at most `most_recent`
  bool export_step = true, export_stl = true, export_three_mf = true, export_dxf = true, export_svg = true,
       export_pdf = true, export_csv = true, export_png = true, export_html = true, export_pieces = true;
  std::string export_paper = "A4";
  int width = 1280, height = 800;
  friend bool operator==(const Settings&, const Settings&) = default;
};

inline constexpr std::size_t most_recent = 8;
inline constexpr double least_text = 0.75, most_text = 2.5;

/// Whether decimals are shown with a comma.
inline bool shows_comma(const Settings& settings) {
  static const bool system = system_writes_comma();
  return settings.decimal == Decimal::as_system ? system : settings.decimal == Decimal::comma;
}

struct LoadedSettings {
  Settings settings;
  std::string message;  ///< empty, or that a broken file was set aside and where
};

/// Reads the settings file of that folder; what it does not say keeps its default. A broken file is renamed to
/// "viewer.json.broken" and said so.
LoadedSettings load_settings(const std::filesystem::path& folder);
/// Returns "" or why it could not be written.
std::string save_settings(const std::filesystem::path& folder, const Settings& settings);
/// The path put first, without doubles.
void remember(Settings& settings, const std::filesystem::path& board);

}  // namespace sagitta::viewer
