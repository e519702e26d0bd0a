#include "cad/ZipDate.hpp"

#include <cstdint>
#include <stdexcept>
#include <string_view>

namespace sagitta {
namespace {

using namespace std::string_view_literals;

// PKWARE, APPNOTE.TXT 6.3: 4.3.7 local header, 4.3.12 directory, 4.3.14 and 4.3.16 its end, 4.5.3 large sizes. Dates as
// MS-DOS has them: year from 1980, month and day in 7, 4 and 5 bits.
constexpr std::uint16_t date = (20U << 9U) | (1U << 5U) | 1U, time = 0;
constexpr std::uint64_t elsewhere = 0xFFFFFFFF;  ///< the number stands in a field for large sizes

[[noreturn]] void refuse() {
  throw std::runtime_error("the 3MF file could not be made: its archive is not as it should be");
}

std::uint64_t number(const std::string& bytes, std::size_t at, std::size_t size) {
  if (at > bytes.size() || bytes.size() - at < size) refuse();
  std::uint64_t value = 0;
  for (std::size_t i = 0; i < size; ++i) value |= std::uint64_t{static_cast<unsigned char>(bytes[at + i])} << (8U * i);
  return value;
}

void demand_mark(const std::string& bytes, std::size_t at, std::string_view mark) {
  if (at > bytes.size() || std::string_view(bytes).substr(at, mark.size()) != mark) refuse();
}

/// Time, then date, two bytes each, the lesser first.
void put_date(std::string& bytes, std::size_t at) {
  number(bytes, at, 4);
  for (const std::uint16_t value : {time, date}) {
    bytes[at++] = static_cast<char>(value & 0xFFU);
    bytes[at++] = static_cast<char>(value >> 8U);
  }
}

/// Where the directory begins.
std::size_t directory_of(const std::string& archive) {
  const std::size_t end = archive.rfind("PK\5\6"sv);
  if (end == std::string::npos) refuse();
  const std::uint64_t begin = number(archive, end + 16, 4);
  if (begin != elsewhere) return begin;
  const std::size_t large = archive.rfind("PK\6\6"sv);
  if (large == std::string::npos) refuse();
  return number(archive, large + 48, 8);
}

/// Where the local header lies of the directory's entry at `at`.
std::size_t local_of(const std::string& archive, std::size_t at) {
  const std::uint64_t place = number(archive, at + 42, 4);
  if (place != elsewhere) return place;
  std::size_t field = at + 46 + number(archive, at + 28, 2);
  const std::size_t last = field + number(archive, at + 30, 2);
  while (field + 4 <= last && number(archive, field, 2) != 1) field += 4 + number(archive, field + 2, 2);
  if (field + 4 > last) refuse();
  const bool size = number(archive, at + 24, 4) == elsewhere, packed = number(archive, at + 20, 4) == elsewhere;
  return number(archive, field + 4 + (size ? 8 : 0) + (packed ? 8 : 0), 8);
}

}  // namespace

std::string with_fixed_date(std::string archive) {
  std::size_t at = directory_of(archive);
  demand_mark(archive, at, "PK\1\2"sv);
  for (; archive.compare(at, 4, "PK\1\2"sv) == 0;
       at += 46 + number(archive, at + 28, 2) + number(archive, at + 30, 2) + number(archive, at + 32, 2)) {
    const std::size_t local = local_of(archive, at);
    demand_mark(archive, local, "PK\3\4"sv);
    put_date(archive, at + 12);
    put_date(archive, local + 10);
  }
  return archive;
}

}  // namespace sagitta
