#pragma once

#include <TopoDS_Solid.hxx>
#include <string>

namespace sagitta {

/// What a body is called and how it looks.
struct BodyLook {
  std::string product;  ///< name of the product, UTF-8: "heron-six board"
  std::string colour;   ///< "#rrggbb" in sRGB
};

/// The solid as the text of a STEP file: AP214, millimetres, one product, the colour on the whole solid. Nothing in it
/// depends on the hour, the machine or the user: the same solid gives the same bytes. The solid is not changed.
/// Throws std::runtime_error when the kernel cannot write it. Not to be called from two threads at once: the
/// kernel keeps its writing options in one place for the whole program.
std::string step_text(const TopoDS_Solid& solid, const BodyLook& look);

}  // namespace sagitta
