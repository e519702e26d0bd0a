#include "app/Lag.hpp"

#include <algorithm>

namespace sagitta::viewer {

namespace {

/// Seconds after which a picture that has not followed fades; a hand that drags gets a new one well within that.
constexpr double patience = 0.06;

/// Made from the board as it is now, and from the drawings as they lie on the disk now.
bool of_now(const Model* model, const Document& document, const Results& results) {
  return model && model->board == document.board() && model->reading == results.reading;
}

std::string why_behind(const Document& document, const Results& results, bool stopped) {
  const Model* model = results.model.get();
  if (of_now(model, document, results)) {
    if (!model->faults.empty()) return model->faults.front().message;
    if (!model->trouble.empty()) return model->trouble;
  }
  if (stopped) return "the work was stopped";
  return results.working.what.empty() ? "the new one is being made" : results.working.what;
}

}  // namespace

Behind Lag::judged(const Document& document, const View& view, const Results& results, bool idle, double seconds) {
  const Model* good = results.good.get();
  const bool there = of_now(good, document, results) && good->at(view.stage);
  const bool another = good != shown_;
  shown_ = good;
  if (there || !good) {
    since_ = -1, told_ = false;
    return {};
  }
  if (since_ < 0 || (another && !told_)) since_ = seconds;
  told_ = told_ || seconds - since_ >= patience;
  if (!told_) return {};
  const Model* model = results.model.get();
  const bool answered = of_now(model, document, results) && (!model->faults.empty() || !model->trouble.empty());
  const bool stopped = idle && !answered;
  return {true, stopped, why_behind(document, results, stopped)};
}

std::optional<double> Lag::due(double seconds) const {
  if (since_ < 0 || told_) return std::nullopt;
  return std::max(since_ + patience - seconds, 0.0);
}

}  // namespace sagitta::viewer
