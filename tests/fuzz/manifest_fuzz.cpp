// Any bytes are either a manifest whose board and order can be carried out, or are refused with a reason: no crash, no
// hang, bounded memory, and no order out of its ranges.

#include <cmath>
#include <string_view>

#include "Demand.hpp"
#include "Mutator.hpp"
#include "drawing/JobPart.hpp"
#include "input/PreparedFile.hpp"
#include "package/OrderRules.hpp"
#include "package/Repeat.hpp"

namespace sagitta::test {
namespace {

void expect_an_order_or_refused(std::string_view text) try {
  const Repeat repeat = read_manifest_text(text, "/nonexistent/manifest.json");
  const auto prepared = prepare(repeat.file);
  if (const auto* problems = std::get_if<Problems>(&prepared))
    return demand(!problems->empty(), "a refusal has a reason");
  const auto& ready = std::get<PreparedBoard>(prepared);
  judge_order(ready, repeat.order);
  demand(repeat.order.deviation >= least_deviation && repeat.order.deviation <= most_deviation, "a deviation is sane");
  part_of(ready, repeat.order.drawing.part);
} catch (const RepeatError& error) {
  demand(*error.what(), "a refusal has a reason");
} catch (const OrderError& error) {
  demand(*error.what(), "a refusal has a reason");
} catch (const PartError& error) {
  demand(*error.what(), "a refusal has a reason");
}

}  // namespace
}  // namespace sagitta::test

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  sagitta::test::expect_an_order_or_refused(std::string_view(reinterpret_cast<const char*>(data), size));
  return 0;
}
