#include "jobsheet/JobHtml.hpp"

#include <openssl/evp.h>

#include <algorithm>

#include "drawing/SvgFile.hpp"
#include "text/Markup.hpp"

namespace sagitta {
namespace {

constexpr const char* style = R"(
body { font: 15px/1.45 sans-serif; color: #1c1a17; max-width: 60rem; margin: 1.5rem auto; padding: 0 1rem }
h1 { font-size: 1.7rem; margin: 0 } h2 { font-size: 1.25rem; margin: 2rem 0 .4rem; border-bottom: 2px solid #1c1a17 }
h3 { font-size: 1.05rem; margin: 1.2rem 0 .3rem } p, ul { margin: .3rem 0 }
table { border-collapse: collapse; margin: .4rem 0 } td, th { border-bottom: 1px solid #c9c2b8; padding: .15rem .9rem .15rem 0;
text-align: left; vertical-align: top; font-variant-numeric: tabular-nums }
figure { display: inline-block; margin: .4rem 1rem .4rem 0; width: 45%; font-size: .85rem } figure.wide { width: 100% }
img { width: 100%; height: auto; display: block } .ticks { columns: 3; list-style: none; padding: 0 }
.measured { min-width: 7rem; border-bottom: 1px solid #1c1a17 } .units { color: #6b645b }
@media print { h2 { break-after: avoid } figure, tr, li { break-inside: avoid } section { break-before: page } }
)";

std::string base64(const std::string& bytes) {
  std::string text(4 * ((bytes.size() + 2) / 3) + 1, '\0');
  const int size =
      EVP_EncodeBlock(reinterpret_cast<unsigned char*>(text.data()),
                      reinterpret_cast<const unsigned char*>(bytes.data()), static_cast<int>(bytes.size()));
  text.resize(static_cast<std::size_t>(size));
  return text;
}

std::string image(const std::string& type, const std::string& bytes, const std::string& words) {
  return "<img alt=\"" + markup_text(words) + "\" src=\"data:" + type + ";base64," + base64(bytes) + "\">";
}

std::string figure_of(const std::string& stage, const std::string& when, const JobPictures& pictures) {
  if (stage.empty()) return {};
  const std::string words = when + ": " + stage;
  const auto found = pictures.find(stage);
  const std::string shown = found == pictures.end() ? "" : image("image/png", found->second, words);
  return "<figure>" + shown + "<figcaption>" + markup_text(words) + "</figcaption></figure>\n";
}

std::string list_of(const std::vector<std::string>& items, const std::string& none) {
  if (items.empty()) return "<p>" + none + "</p>\n";
  std::string text = "<ul>\n";
  for (const std::string& item : items) text += "<li>" + markup_text(item) + "</li>\n";
  return text + "</ul>\n";
}

std::string table_of(const JobTable& table) {
  std::string text = "<table>\n<tr>";
  for (const std::string& head : table.heads) text += "<th>" + markup_text(head) + "</th>";
  text += "</tr>\n";
  for (const std::vector<std::string>& row : table.rows) {
    text += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i)
      text += (table.heads[i] == "measured" ? "<td class=\"measured\">" : "<td>") + markup_text(row[i]) + "</td>";
    text += "</tr>\n";
  }
  return text + "</table>\n";
}

std::string part(const std::string& heading, const JobTable& table) {
  return table.rows.empty() ? std::string() : "<h2>" + heading + "</h2>\n" + table_of(table);
}

std::string ticks_of(const std::vector<std::string>& ticks) {
  if (ticks.empty()) return {};
  std::string text = "<ul class=\"ticks\">\n";
  for (const std::string& tick : ticks)
    text += "<li><label><input type=\"checkbox\"> " + markup_text(tick) + "</label></li>\n";
  return text + "</ul>\n";
}

std::string job_of(const JobStep& step, const JobPictures& pictures) {
  std::string text = "<table>\n";
  for (const auto& [name, what] : step.facts)
    text += "<tr><th>" + markup_text(name) + "</th><td>" + markup_text(what) + "</td></tr>\n";
  text += "</table>\n" + figure_of(step.before, "before", pictures) + figure_of(step.after, "after", pictures);
  return text + ticks_of(step.ticks);
}

/// From the blank's top down, as it lies.
std::string levels_of(const std::vector<JobLevel>& levels) {
  std::string text = "<table class=\"levels\">\n";
  for (auto level = levels.rbegin(); level != levels.rend(); ++level)
    text += "<tr><td>" + markup_text(level->what) + "</td><td>" + markup_text(level->z) +
            (level->zero ? " (the zero)" : "") + "</td><td>" +
            (level->above.empty() ? "" : "above it: " + markup_text(level->above)) + "</td></tr>\n";
  return text + "</table>\n";
}

std::string hold_down_of(const JobSetup& setup) {
  return "<figure class=\"wide\">" + image("image/svg+xml", svg_text(setup.hold_down.drawing), setup.title) +
         "<figcaption>The blank from above: its centre lines, where clamps may stand, what is cut; the cross is "
         "the zero. In true size: setups/" +
         markup_text(setup.folder) + "</figcaption></figure>\n" + list_of(setup.notes, "") + levels_of(setup.levels);
}

std::string rows_of(const std::string& name, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string text = "<tr><th>" + name + "</th><td>";
  for (const std::string& item : items) text += std::string(&item == &items.front() ? "" : "<br>") + markup_text(item);
  return text + "</td></tr>\n";
}

std::string walk_of(const JobSheet& sheet, const WalkStep& step, std::size_t number, const JobPictures& pictures) {
  const JobSetup* setup = step.setup < 0 ? nullptr : &sheet.setups[static_cast<std::size_t>(step.setup)];
  const bool sets_up = setup && step.kind == WalkKind::set_up;
  std::string text = std::string(sets_up ? "<section>\n<h2>" : "<h3>") + "<label><input type=\"checkbox\"> " +
                     std::to_string(number) + ". " + markup_text(step.title) + "</label> <small>" +
                     (step.machine ? "machine" : "bench") + "</small>" + (sets_up ? "</h2>\n" : "</h3>\n");
  if (sets_up) text += hold_down_of(*setup);
  text += "<table>\n" + rows_of("need", step.need) + rows_of("do", step.act) + rows_of("check", step.check) +
          rows_of("beware", step.wrong) + rows_of("finding", step.findings) + "</table>\n";
  if (!step.levels.empty()) text += levels_of(step.levels);
  if (shows_wire(step)) text += table_of(sheet.wire);
  if (shows_lines(step)) text += table_of(sheet.lines);
  if (setup && step.job >= 0) text += job_of(setup->steps[static_cast<std::size_t>(step.job)], pictures);
  return text + ticks_of(step.ticks) + (sets_up ? "</section>\n" : "");
}

}  // namespace

std::string job_html(const JobSheet& sheet, const JobPictures& pictures) {
  std::string text = "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>" +
                     markup_text(sheet.title) + "</title>\n<style>" + style + "</style>\n</head>\n<body>\n<h1>" +
                     markup_text(sheet.title) + "</h1>\n<p class=\"units\">All lengths in " + sheet.units + ".</p>\n";
  text +=
      "<h2>The board</h2>\n" + figure_of(sheet.picture, "finished on the machine", pictures) + table_of(sheet.facts);
  text += part("Tool changes, in order", sheet.tools) +
          part("Time of cutting, without moves and tool changes", sheet.clock);
  if (!sheet.no_clock.empty()) text += "<h2>Time of cutting</h2>\n" + list_of({sheet.no_clock}, "");
  text += "<h2>Findings of the whole board</h2>\n" + list_of(sheet.findings, "None.");
  text += "<h2>Cautions</h2>\n" + list_of(sheet.cautions, "None.") + part("Pieces", sheet.pieces);
  if (!sheet.notes.empty()) text += "<h2>Notes</h2>\n" + list_of(sheet.notes, "");
  if (!sheet.done.empty()) text += "<h2>Cut already</h2>\n" + list_of(sheet.done, "");
  text += part("As measured", sheet.record);
  for (std::size_t i = 0; i < sheet.walk.size(); ++i) text += walk_of(sheet, sheet.walk[i], i + 1, pictures);
  text += part("Check by caliper", sheet.checks) + part("Material", sheet.material);
  if (!sheet.no_room.empty()) text += "<h2>Pieces without a sheet</h2>\n" + list_of(sheet.no_room, "");
  text += part("Sheets", sheet.sheets);
  if (std::ranges::none_of(sheet.walk, shows_wire)) text += part("Wire", sheet.wire);
  if (std::ranges::none_of(sheet.walk, shows_lines)) text += part("Lines", sheet.lines);
  return text + "</body>\n</html>\n";
}

}  // namespace sagitta
