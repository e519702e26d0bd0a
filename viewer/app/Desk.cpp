#include "app/Desk.hpp"

namespace sagitta::viewer {

void Desk::edit(Board draft, Edit how, const std::string& what) {
  switch (how) {
    case Edit::none:
      return;
    case Edit::moving:
      return document.preview(std::move(draft));
    case Edit::given_up:
      return document.abandon();
    case Edit::done:
      return document.change(std::move(draft), what);
  }
}

}  // namespace sagitta::viewer
