#include "campaign/Record.hpp"

#include <algorithm>
#include <array>
#include <sstream>

namespace sagitta::campaign {
namespace {

constexpr std::array<std::pair<Outcome, std::string_view>, 5> names{{{Outcome::sound, "sound"},
                                                                     {Outcome::unsound, "unsound"},
                                                                     {Outcome::threw, "threw"},
                                                                     {Outcome::slow, "slow"},
                                                                     {Outcome::died, "died"}}};

}  // namespace

std::string_view name(Outcome outcome) {
  return std::find_if(names.begin(), names.end(), [&](const auto& n) { return n.first == outcome; })->second;
}

Record record_of(std::uint64_t number, const random_boards::Verdict& verdict) {
  Record record{number, Outcome::sound, verdict.stages, verdict.seconds, verdict.worst, {}};
  for (const random_boards::Refusal& refusal : verdict.refusals) ++record.refusals[refusal.key];
  if (verdict.seconds > patience) record.outcome = Outcome::slow;
  if (!verdict.trouble.empty()) record.outcome = Outcome::unsound;
  if (verdict.threw) record.outcome = Outcome::threw;
  return record;
}

std::string line(const Record& record) {
  std::ostringstream text;
  text.precision(17);
  text << record.number << " " << name(record.outcome) << " " << record.stages << " " << record.seconds << " "
       << record.worst;
  for (const auto& [key, count] : record.refusals) text << " " << key << "=" << count;
  return text.str();
}

std::optional<Record> record_from(const std::string& line) {
  std::istringstream text(line);
  Record record;
  std::string word;
  if (!(text >> record.number >> word >> record.stages >> record.seconds >> record.worst)) return std::nullopt;
  const auto outcome = std::find_if(names.begin(), names.end(), [&](const auto& n) { return n.second == word; });
  if (outcome == names.end()) return std::nullopt;
  record.outcome = outcome->first;
  while (text >> word) {
    const std::size_t sign = word.rfind('=');
    if (sign == std::string::npos) return std::nullopt;
    record.refusals[word.substr(0, sign)] = std::atoi(word.c_str() + sign + 1);
  }
  return record;
}

}  // namespace sagitta::campaign
