#include "app/SavedPicture.hpp"

#include <utility>

#include "document/WholeFile.hpp"
#include "paper/PngFile.hpp"

namespace sagitta::viewer {

void save_picture(Desk& desk, const Picture& picture) {
  const std::filesystem::path file = *std::exchange(desk.picture_wanted, std::nullopt);
  const std::string why = write_whole(file, png_bytes({picture.width(), picture.height(), picture.pixels()}));
  if (why.empty())
    desk.view.say("The picture is in " + file.string());
  else
    desk.view.fail(why, "Save it elsewhere", "save picture");
}

}  // namespace sagitta::viewer
