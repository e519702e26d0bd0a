#include "dialogs/SendOutDialog.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "dialogs/SendOutFolder.hpp"
#include "dialogs/SentPage.hpp"
#include "document/OnDisk.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "rules/Work.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

ExportKinds kinds_of(const Settings& s) {
  return {.step = s.export_step,
          .stl = s.export_stl,
          .dxf = s.export_dxf,
          .svg = s.export_svg,
          .pdf = s.export_pdf,
          .csv = s.export_csv,
          .three_mf = s.export_three_mf,
          .png = s.export_png,
          .html = s.export_html};
}

void draw_paper(const SendingPage& page) {
  const std::vector<std::string> names{"A4", "A3", "Letter", "Tabloid"};
  const auto now = std::find(names.begin(), names.end(), page.settings.export_paper);
  int chosen = now == names.end() ? 0 : static_cast<int>(now - names.begin());
  ImGui::SetNextItemWidth(page.ui.px(100));
  if (page.ui.choice("paper", names, chosen)) page.settings.export_paper = names[static_cast<std::size_t>(chosen)];
}

void draw_setups(const SendingPage& page) {
  const Model& model = *page.results.good;
  const std::vector<ResolvedSetup> setups = setups_of(*model.prepared);
  if (setups.size() < 2) return;
  page.ui.quiet("Drawings for these set-ups:");
  for (const ResolvedSetup& setup : setups) {
    bool wanted = !page.form.left_out.contains(setup.folder);
    std::string operations;
    for (const Operation operation : setup.operations)
      operations += (operations.empty() ? ": " : ", ") + std::string(operation_name(operation));
    const std::string name = setup.name.empty() ? "Set-up " + std::to_string(setup.number) : setup.name;
    if (!page.ui.tick(name + operations, wanted)) continue;
    if (wanted)
      page.form.left_out.erase(setup.folder);
    else
      page.form.left_out.insert(setup.folder);
  }
}

void draw_job_ticks(const SendingPage& page) {
  Ui& ui = page.ui;
  Settings& s = page.settings;
  ui.tick("STEP: each stage as an exact solid, for CAM", s.export_step);
  ui.tick("STL: each stage as triangles within 0.005 mm", s.export_stl);
  ui.tick("3MF: the same triangles with unit, name and colour", s.export_three_mf);
  if (page.results.good && !page.results.good->prepared->inlays().pieces.empty())
    ui.tick("Inlay pieces as solids too, flat and in place", s.export_pieces);
  ui.tick("DXF: outlines by operation, for each set-up in its own zero", s.export_dxf);
  ui.tick("SVG: the same outlines in true size", s.export_svg);
  if (page.results.good && (s.export_dxf || s.export_svg || s.export_pdf)) draw_setups(page);
  ui.tick("PDF: template, drawings and job sheet", s.export_pdf);
  if (s.export_pdf) {
    ImGui::SameLine();
    if (ImGui::GetContentRegionAvail().x < ui.px(100)) ImGui::NewLine();
    draw_paper(page);
  }
  ui.tick("CSV: frets, wire and pieces as tables", s.export_csv);
  ui.tick("PNG: a picture of each stage", s.export_png);
  ui.tick("HTML: the job sheet for the machine, set-up by set-up", s.export_html);
}

/// The job or the trial strip; the folder goes with it where it is the usual one.
void choose(const SendingPage& page, bool trial) {
  std::string& folder = page.form.folder;
  if (folder == usual_folder(page.document, !trial)) folder = usual_folder(page.document, trial);
  page.form.trial = trial;
  page.form.page = 0;
}

/// What is written and where.
void draw_form(const SendingPage& page) {
  Ui& ui = page.ui;
  SendingForm& form = page.form;
  bool job = !form.trial, trial = form.trial;
  if (ui.toggle("The job", job)) choose(page, false);
  ImGui::SameLine();
  if (ui.toggle("A trial strip", trial)) choose(page, true);
  if (form.trial) {
    ui.quiet(
        "A strip of waste with slots and pockets a little tighter and looser than wanted, as STEP, STL, DXF and "
        "SVG, and a sheet that says what to measure on it and which decision to change by it.");
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted("Paper of the sheet");
    ImGui::SameLine();
    draw_paper(page);
  } else {
    ui.quiet("One folder for the machine, the bench and next month, with a list of its files.");
    draw_job_ticks(page);
  }
  draw_folder(page);
}

/// The pages of one document, from the page that is shown.
std::pair<std::size_t, std::size_t> document_around(const std::vector<PrintedPage>& pages, std::size_t shown) {
  const std::size_t first = shown - static_cast<std::size_t>(pages[shown].number - 1);
  return {first, first + static_cast<std::size_t>(pages[shown].of)};
}

void draw_page_choice(const SendingPage& page, const std::vector<PrintedPage>& pages) {
  Ui& ui = page.ui;
  std::size_t& shown = page.form.page;
  std::vector<std::string> documents;
  std::vector<std::size_t> firsts;
  int chosen = 0;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (pages[i].number == 1) documents.push_back(pages[i].document), firsts.push_back(i);
    if (i == shown) chosen = static_cast<int>(documents.size()) - 1;
  }
  const auto [first, end] = document_around(pages, shown);
  ImGui::SetNextItemWidth(std::max(ImGui::GetContentRegionAvail().x - ui.px(200), ui.px(120)));
  if (ui.choice("document", documents, chosen)) shown = firsts[static_cast<std::size_t>(chosen)];
  ImGui::SameLine();
  if (ui.button("Back", shown > first)) --shown;
  ImGui::SameLine();
  if (ui.button("Next", shown + 1 < end)) ++shown;
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  const std::string which = "Page " + std::to_string(shown - first + 1) + " of " + std::to_string(end - first);
  ImGui::TextUnformatted(which.c_str());
  ui.note("page", which);
}

/// A button that prints the document shown, and how that came out.
void draw_printer(const SendingPage& page, Requests& asked) {
  const std::string& document = page.pages->pages[page.form.page].document;
  if (page.ui.button("Print these pages"))
    asked.push_back(asked::SendToPrinter{page.pages, document, page.settings.export_paper});
  page.ui.help("Prints all pages of " + document + " in true size on " + page.settings.export_paper +
               ", with the printer that is set up on this computer.");
  const Printed& printed = page.form.printed;
  if (printed.words.empty()) return;
  if (printed.good)
    page.ui.quiet(printed.words);
  else
    page.ui.warning(printed.words);
  page.ui.note("printed", printed.words);
}

/// The papers as they will print.
void draw_print(const SendingPage& page, Requests& asked) {
  Ui& ui = page.ui;
  const bool trial = page.form.trial;
  if (!trial && !page.settings.export_pdf) return;
  asked.push_back(asked::Print{page.results.good, page.settings.export_paper, trial});
  const auto& printed = page.pages;
  if (!printed) return ui.quiet("Printing the pages to look at \u2026");
  if (printed->pages.empty()) return ui.warning(printed->trouble);
  page.form.page = std::min(page.form.page, printed->pages.size() - 1);
  draw_page_choice(page, printed->pages);
  draw_printer(page, asked);
  if (!page.form.picture) return;
  const ImVec2 room = ImGui::GetContentRegionAvail();
  ImVec2 size(room.x, room.x / page.form.shape);
  if (size.y > room.y && room.y > ui.px(120)) size = ImVec2(room.y * page.form.shape, room.y);
  const ImVec2 low = ImGui::GetCursorScreenPos();
  ImGui::Image(page.form.picture, size);
  ImGui::GetWindowDrawList()->AddRect(low, low + size, ui.theme.quiet);
  ui.note("print", printed->pages[page.form.page].document);
}

SendingOrder order_of(const SendingPage& page) {
  SendingOrder order;
  order.board = page.document.board();
  order.folder = page.form.folder;
  order.kinds = kinds_of(page.settings);
  order.paper = page.settings.export_paper;
  order.replace = replaces(page);
  order.despite_stops = page.form.despite_stops;
  order.inputs = inputs(page.document);
  order.pieces = page.settings.export_pieces;
  order.trial = page.form.trial;
  if (page.results.good && !page.form.left_out.empty())
    for (const ResolvedSetup& setup : setups_of(*page.results.good->prepared))
      if (!page.form.left_out.contains(setup.folder)) order.setups.insert(setup.folder);
  return order;
}

void draw_foot(const SendingPage& page, Requests& asked) {
  Ui& ui = page.ui;
  const ExportKinds k = kinds_of(page.settings);
  const bool any =
      page.form.trial || k.step || k.stl || k.three_mf || k.dxf || k.svg || k.pdf || k.csv || k.png || k.html;
  const bool sound = page.results.model && page.results.model->prepared && page.results.model->faults.empty();
  const char* go = replaces(page) ? "Replace" : "Export";
  const float buttons = button_width(ui, "Close") + button_width(ui, go) + ui.px(8);
  const float room = ImGui::GetContentRegionMax().x - buttons - ui.px(30);
  dialog_foot(ui, ImGui::GetContentRegionMax().x - ui.px(14));
  const float row = ImGui::GetCursorPosY();
  draw_stops(page, room);
  ImGui::SetCursorPosY(row);  // the buttons stand in the same row
  dialog_foot(ui, buttons);
  if (ui.button("Close")) asked.push_back(asked::Show{Dialog::none});
  ImGui::SameLine();
  if (ui.primary(go, any && sound && may_be_written(page))) asked.push_back(asked::Export{order_of(page)});
}

void draw_warnings(const SendingPage& page) {
  if (page.results.model && !page.results.model->faults.empty())
    page.ui.warning("The board has problems: see the list of checks.");
}

/// The form, beside it the print where there is room, else below.
Requests draw_page(const SendingPage& page) {
  Requests asked;
  Ui& ui = page.ui;
  follow_board(page);
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const float foot = ImGui::GetFrameHeight() + ui.px(16), form = ui.px(420);
  const bool beside = room.x > 1.8f * form, prints = page.results.good && page.results.good->prepared;
  ImGui::BeginChild("form", ImVec2(beside ? form : 0, room.y - foot));
  draw_form(page);
  draw_warnings(page);
  if (!beside && prints) draw_print(page, asked);
  ImGui::EndChild();
  if (beside && prints) {
    ImGui::SameLine(0, ui.px(18));
    ImGui::BeginChild("print", ImVec2(0, room.y - foot));
    draw_print(page, asked);
    ImGui::EndChild();
  }
  draw_foot(page, asked);
  return asked;
}

}  // namespace

Requests draw_send_out(const SendingPage& page) {
  Ui& ui = page.ui;
  const SendingState& state = page.sending;
  // Whatever came into the folder while the page was closed is seen when it opens.
  if (ImGui::IsWindowAppearing() || state.running) page.form.looked_at.clear();
  if (!state.running && state.outcome.empty()) return draw_page(page);
  if (state.running) {
    ui.quiet("Writing " + state.what + " \u2026");
    const std::string percent = std::to_string(static_cast<int>(100 * state.share)) + " %";
    ImGui::ProgressBar(static_cast<float>(state.share), ImVec2(-1, ui.px(8)), "");
    ui.note("progress", percent);
    dialog_foot(ui, button_width(ui, "Stop"));
    if (ui.button("Stop")) return {asked::StopExport{}};
    return {};
  }
  return draw_sent(page);
}

}  // namespace sagitta::viewer
