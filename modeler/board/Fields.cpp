#include "board/Fields.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "board/BoardFields.hpp"
#include "board/WorkFields.hpp"

namespace sagitta {
namespace {

constexpr auto table_of_fields = [] {
  std::array<Field, std::size(rows::board_fields) + std::size(rows::work_fields)> all;
  std::ranges::copy(rows::work_fields, std::ranges::copy(rows::board_fields, all.begin()).out);
  return all;
}();

}  // namespace

std::span<const Field> fields() { return table_of_fields; }

}  // namespace sagitta
