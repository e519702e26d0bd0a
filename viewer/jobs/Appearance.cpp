#include <charconv>

#include "board/Materials.hpp"
#include "jobs/Dressing.hpp"

namespace sagitta::viewer {

namespace {

Finish finish_of(MaterialKind kind) {
  switch (kind) {
    case MaterialKind::wood:
      return Finish::wood;
    case MaterialKind::composite:
      return Finish::composite;
    case MaterialKind::shell:
      return Finish::shell;
    case MaterialKind::plastic:
      return Finish::plastic;
    case MaterialKind::metal:
      return Finish::metal;
    case MaterialKind::bone:
      return Finish::bone;
  }
  return Finish::wood;
}

}  // namespace

Appearance appearance_of(const Board& board, const std::string& name) {
  const MaterialFacts facts = material(board, name);
  Appearance cloth{{138, 106, 76, 255}, finish_of(facts.kind)};
  unsigned hex = 0;
  const std::string& c = facts.colour;
  if (c.size() == 7 && std::from_chars(c.data() + 1, c.data() + 7, hex, 16).ec == std::errc())
    cloth.colour = {static_cast<std::uint8_t>(hex >> 16), static_cast<std::uint8_t>(hex >> 8 & 0xff),
                    static_cast<std::uint8_t>(hex & 0xff), 255};
  return cloth;
}

}  // namespace sagitta::viewer
