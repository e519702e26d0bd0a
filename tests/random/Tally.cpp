#include "random/Tally.hpp"

#include <algorithm>
#include <iomanip>

namespace sagitta::random_boards {

void Tally::Line::add(const Verdict& verdict) {
  ++boards;
  failed += !verdict.trouble.empty();
  refused += !verdict.refusals.empty();
  overruled += verdict.overruled;
  slowest = std::max(slowest, verdict.seconds);
  worst = std::max(worst, verdict.worst);
}

void Tally::add(const Sample& sample, const Verdict& verdict) {
  all_.add(verdict);
  draws_ += sample.draws;
  for (const std::string& name : categories(sample.board)) by_category_[name].add(verdict);
}

void Tally::print(std::ostream& out) const {
  const auto line = [&](const std::string& name, const Line& l) {
    out << std::left << std::setw(16) << name << std::right << std::setw(7) << l.boards << std::setw(8) << l.failed
        << std::setw(10) << l.refused << std::setw(14) << l.overruled << std::fixed << std::setprecision(2)
        << std::setw(11) << l.slowest << std::scientific << std::setprecision(1) << std::setw(12) << l.worst << "\n"
        << std::defaultfloat;
  };
  out << std::left << std::setw(16) << ""
      << " boards  failed   refused     overruled  slowest s   worst rel\n";
  line("all", all_);
  for (const auto& [name, figures] : by_category_) line(name, figures);
  out << "sound boards per draw: " << std::setprecision(3) << (draws_ ? double(all_.boards) / draws_ : 0.0) << "\n";
}

}  // namespace sagitta::random_boards
