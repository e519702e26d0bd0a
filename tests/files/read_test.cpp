#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include "files/ReadFile.hpp"
#include "files/ScratchFolder.hpp"

namespace sagitta::test {
namespace {

Unreadable kind_of(const fs::path& path, std::size_t most = 100) {
  const auto read = read_file(path, most);
  if (std::holds_alternative<std::string>(read)) throw std::runtime_error("it was read");
  return std::get<ReadFailure>(read).kind;
}

TEST(ReadFile, GivesEveryByte) {
  const ScratchFolder scratch;
  std::string bytes;
  for (int i = 0; i < 1000; ++i) bytes += static_cast<char>(i % 256);
  write_file(scratch / "a", bytes);
  EXPECT_EQ(std::get<std::string>(read_file(scratch / "a", 1000)), bytes);
  write_file(scratch / "empty", "");
  EXPECT_EQ(std::get<std::string>(read_file(scratch / "empty", 0)), "");
  fs::create_symlink(scratch / "a", scratch / "link");
  EXPECT_EQ(std::get<std::string>(read_file(scratch / "link", 1000)), bytes);
}

TEST(ReadFile, StopsAtTheSizeAllowed) {
  const ScratchFolder scratch;
  write_file(scratch / "a", std::string(101, 'x'));
  EXPECT_EQ(kind_of(scratch / "a", 100), Unreadable::too_large);
  EXPECT_EQ(std::get<std::string>(read_file(scratch / "a", 101)).size(), 101U);
}

// proc(5): the files there have the size 0, whatever they hold.
TEST(ReadFile, ReadsAFileThatDoesNotTellItsSize) {
  const auto read = read_file("/proc/self/status", 1 << 20);
  EXPECT_NE(std::get<std::string>(read).find("VmPeak"), std::string::npos);
  EXPECT_EQ(kind_of("/proc/self/status", 10), Unreadable::too_large);
}

// A pipe that nobody writes into blocks open() for ever, and /dev/zero never ends: pipe(7), zero(4).
TEST(ReadFile, IsNeverHeldUpByWhatIsNoFile) {
  const ScratchFolder scratch;
  ASSERT_EQ(mkfifo((scratch / "pipe").c_str(), 0600), 0);
  fs::create_symlink(scratch / "pipe", scratch / "link");
  EXPECT_EQ(kind_of(scratch / "pipe"), Unreadable::special);
  EXPECT_EQ(kind_of(scratch / "link"), Unreadable::special);
  EXPECT_EQ(kind_of("/dev/zero"), Unreadable::special);
  EXPECT_EQ(kind_of("/dev/null"), Unreadable::special);
  const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
  sockaddr_un address{};
  address.sun_family = AF_UNIX;
  (scratch / "socket").string().copy(address.sun_path, sizeof address.sun_path - 1);
  ASSERT_EQ(bind(socket, reinterpret_cast<sockaddr*>(&address), sizeof address), 0);
  EXPECT_EQ(kind_of(scratch / "socket"), Unreadable::special);
  ::close(socket);
}

TEST(ReadFile, TellsWhatKeptItFromReading) {
  const ScratchFolder scratch;
  write_file(scratch / "a", "x");
  EXPECT_EQ(kind_of(scratch / "no-such"), Unreadable::missing);
  EXPECT_EQ(kind_of(scratch / "a/below"), Unreadable::missing);
  EXPECT_EQ(kind_of(scratch.path()), Unreadable::folder);
  fs::create_symlink(scratch / "round", scratch / "round");
  EXPECT_EQ(kind_of(scratch / "round"), Unreadable::failed);
}

}  // namespace
}  // namespace sagitta::test
