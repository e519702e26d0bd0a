#include "jobs/Sending.hpp"

#include <algorithm>

#include "cad/Interrupt.hpp"
#include "drawing/Paper.hpp"
#include "folder/Folder.hpp"
#include "input/BoardFindings.hpp"
#include "package/HandOff.hpp"
#include "solid/Failure.hpp"
#include "trial/TrialFiles.hpp"

namespace sagitta::viewer {

namespace {

/// The board with its plans, or the first thing that keeps it from being built.
std::variant<PreparedBoard, std::string> ready(const Board& board) {
  BoardFile file;
  file.board = board;
  auto prepared = prepare(std::move(file));
  if (const auto* problems = std::get_if<Problems>(&prepared))
    return problems->front().key + ": " + problems->front().message;
  return std::get<PreparedBoard>(std::move(prepared));
}

}  // namespace

Sending::~Sending() {
  cancel_.request();
  if (thread_.joinable()) thread_.join();
}

void Sending::start(SendingOrder order, std::function<void()> wake) {
  if (state().running) return;
  if (thread_.joinable()) thread_.join();
  cancel_ = Cancel();
  wake_ = std::move(wake);
  SendingState begun;
  begun.running = true, begun.what = "the layout";
  tell(begun);
  thread_ = std::thread([this, made = std::move(order)] { run(made); });
}

SendingState Sending::state() const {
  const std::lock_guard lock(mutex_);
  return state_;
}

void Sending::forget() {
  const std::lock_guard lock(mutex_);
  if (!state_.running) state_ = {};
}

void Sending::tell(const SendingState& state) {
  {
    const std::lock_guard lock(mutex_);
    state_ = state;
  }
  if (wake_) wake_();
}

void Sending::write(const SendingOrder& order, const PreparedBoard& ready, const std::vector<Finding>& findings,
                    Folder& folder) {
  const Paper* named = paper_named(order.paper);
  const Paper paper = named ? *named : *paper_named("A4");
  if (order.trial) {
    const auto trial = trial_of(ready);
    if (const auto* problems = std::get_if<Problems>(&trial))
      throw FolderError("Nothing was written. " + problems->front().message);
    return write_trial(ready, findings, std::get<Trial>(trial), paper, folder, cancel_);
  }
  ExportOrder hand_off;
  hand_off.stages = stages_of(order.board);
  if (order.pieces) hand_off.assemblies = assemblies_of(ready);
  hand_off.kinds = order.kinds;
  hand_off.drawing.paper = paper;
  hand_off.drawing.setups = order.setups;
  hand_off.tell = [this](int done, int all, const std::string& what) {
    SendingState now;
    now.running = true, now.what = what, now.share = all > 0 ? static_cast<double>(done) / all : 0;
    tell(now);
  };
  write_hand_off(ready, findings, hand_off, folder, cancel_);
}

SendingState Sending::sent(const SendingOrder& order) {
  SendingState end;
  try {
    auto prepared = ready(order.board);
    if (const auto* why = std::get_if<std::string>(&prepared)) {
      end.outcome = "Nothing was written. " + *why;
      return end;
    }
    const std::vector<Finding> findings = board_findings(std::get<PreparedBoard>(prepared));
    const auto stop = std::find_if(findings.begin(), findings.end(),
                                   [](const Finding& finding) { return finding.severity == Severity::stop; });
    if (stop != findings.end() && !order.despite_stops) {
      end.outcome = "Nothing was written, because a finding says stop: " + stop->message;
      return end;
    }
    Folder folder(order.folder, order.replace, order.inputs);
    write(order, std::get<PreparedBoard>(prepared), findings, folder);
    folder.keep();
    end.good = true;
    end.outcome = std::to_string(folder.files()) + " files are in " + order.folder;
  } catch (const Interrupted&) {
    end.outcome = "Stopped. Nothing was written.";
  } catch (const FolderError& error) {
    end.outcome = error.what();
  }
  return end;
}

void Sending::run(const SendingOrder& order) {
  SendingState end;
  if (const auto wrong = failure_of([&] { end = sent(order); })) end.outcome = "Nothing was written: " + *wrong;
  tell(end);
}

}  // namespace sagitta::viewer
