#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

class Input : public testing::Test {
 protected:
  Input() : shop(fs::temp_directory_path() / ("sagitta_input_" + std::to_string(::getpid()))) {
    fs::create_directories(shop / "boards");
  }
  ~Input() override { fs::remove_all(shop); }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(shop / name, std::ios::binary) << text;
    return (shop / name).string();
  }
  fs::path shop;
};

TEST_F(Input, StaysInTheBoardsFolder) {
  const auto where = [](const std::string& file, Outside outside = Outside::refused) {
    return input_path({"drawing", "/shop/boards", file, "/shop/boards"}, outside);
  };
  EXPECT_EQ(std::get<std::string>(where("heron.svg")), "/shop/boards/heron.svg");
  EXPECT_EQ(std::get<std::string>(where("birds/../heron.svg")), "/shop/boards/heron.svg");
  for (const char* file : {"/etc/passwd", "../heron.svg", "birds/../../heron.svg", "..", "/shop/boards/heron.svg"})
    EXPECT_TRUE(std::holds_alternative<Fault>(where(file))) << file;
  EXPECT_EQ(std::get<std::string>(where("../heron.svg", Outside::allowed)), "/shop/heron.svg");
  EXPECT_EQ(std::get<std::string>(where("/birds/heron.svg", Outside::allowed)), "/birds/heron.svg");
  const std::string cut_short("heron.svg\0.png", 14);
  EXPECT_TRUE(std::holds_alternative<Fault>(where(cut_short)));
  EXPECT_TRUE(std::holds_alternative<Fault>(where(cut_short, Outside::allowed)));
}

TEST_F(Input, LeavesTheBoardsFolderByNoLink) {
  write("heron.svg", "x"), write("boards/inside.svg", "y");
  fs::create_symlink("../heron.svg", shop / "boards/link.svg");
  fs::create_symlink("inside.svg", shop / "boards/near.svg");
  fs::create_directory_symlink("..", shop / "boards/up");
  const std::string boards = (shop / "boards").string();
  const auto where = [&](const char* file) { return input_path({"drawing", boards, file, boards}, Outside::refused); };
  EXPECT_TRUE(std::holds_alternative<Fault>(where("link.svg")));
  EXPECT_TRUE(std::holds_alternative<Fault>(where("up/heron.svg")));
  EXPECT_TRUE(std::holds_alternative<std::string>(where("near.svg")));
}

// A base is a file of the board like any other, and so is its base, which starts from another folder.
TEST_F(Input, BasesLieInTheBoardsFolderToo) {
  write("base.toml", sample::text);
  fs::create_directories(shop / "boards/deep");
  write("boards/near.toml", sample::text);
  write("boards/deep/up.toml", "base = \"../near.toml\"\n");
  write("boards/deep/out.toml", "base = \"../../base.toml\"\n");
  const auto board = [&](const std::string& base, Outside outside) {
    return read_board(write("boards/own.toml", "format = 1\nbase = \"" + base + "\"\n"), outside);
  };
  EXPECT_TRUE(board("near.toml", Outside::refused).sound());
  EXPECT_TRUE(board("deep/up.toml", Outside::refused).sound());
  for (const std::string& base :
       {std::string("../base.toml"), (shop / "base.toml").string(), std::string("deep/out.toml")}) {
    const BoardFile file = board(base, Outside::refused);
    ASSERT_EQ(file.problems.size(), 1U) << base << sample::told(file.problems);
    EXPECT_EQ(file.problems[0].key, "base") << base;
    EXPECT_TRUE(board(base, Outside::allowed).sound()) << base;
  }
  ASSERT_EQ(::mkfifo((shop / "boards/pipe.toml").c_str(), 0600), 0);
  EXPECT_EQ(board("pipe.toml", Outside::refused).problems.size(), 1U);
}

}  // namespace
}  // namespace sagitta
