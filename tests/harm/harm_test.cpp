// What may happen to a program that writes a folder: it is killed, a system call fails, the disk is full, two run at
// once. Each time nothing of others is lost, the folder is whole or as it was, and after the next run nothing is left
// behind. HARM_KILLS=160 HARM_SEED=2 build/bin/test_harm kills more often; HARM_STRIDE=1 lets every call fail once.

#include "harm/Harm.hpp"

#include <gtest/gtest.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <chrono>
#include <random>

#include "Places.hpp"

extern char** environ;

namespace sagitta::test {
namespace {

using Clock = std::chrono::steady_clock;

int number_in(const char* variable, int usual) {
  const char* value = std::getenv(variable);
  return value ? std::atoi(value) : usual;
}

/// Starts the line of shell as one process.
pid_t started(const std::string& line) {
  const std::string quiet = "exec " + line + " >/dev/null 2>&1";
  const char* words[] = {"sh", "-c", quiet.c_str(), nullptr};
  pid_t process = 0;
  if (posix_spawn(&process, "/bin/sh", nullptr, nullptr, const_cast<char**>(words), environ) != 0)
    throw std::runtime_error("no process");
  return process;
}

int ended(pid_t process) {
  int status = 0;
  while (waitpid(process, &status, 0) < 0 && errno == EINTR) {
  }
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

TEST(Harm, AProgramThatIsKilledLosesNothingAndTheNextRunClearsUp) {
  const Workshop shop;
  const int kills = number_in("HARM_KILLS", 12);
  std::mt19937 chance(static_cast<unsigned>(number_in("HARM_SEED", 1)));
  const auto begin = Clock::now();
  ASSERT_EQ(shop.run().code, 0);
  const auto whole = std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - begin).count();
  int killed = 0, left = 0;
  for (int i = 0; i < kills; ++i) {
    const int signal = std::array{SIGKILL, SIGTERM, SIGINT, SIGHUP}[i % 4];
    const bool absent = i % 8 >= 4;
    if (absent) shop.remove_export();
    const pid_t process = started(shop.line());
    ::usleep(static_cast<useconds_t>(std::uniform_int_distribution<long>(0, whole)(chance)));
    ::kill(process, signal);
    killed += ended(process) != 0;
    ASSERT_EQ(shop.harm(absent), "") << "kill " << i << ", signal " << signal;
    left += !shop.left().empty();
    ASSERT_TRUE(signal == SIGKILL || shop.left().empty()) << shop.left();
    const Outcome next = shop.run();
    ASSERT_EQ(next.code, 0) << next.err;
    ASSERT_EQ(shop.harm(false), "") << "after kill " << i;
    ASSERT_EQ(shop.left(), "") << "after kill " << i;
  }
  std::cout << killed << " of " << kills << " ended early, " << left << " left something for the next run\n";
  EXPECT_GT(killed, kills / 4) << "the signals come too late to show anything";
}

TEST(Harm, ACallThatFailsLosesNothing) {
  const int stride = number_in("HARM_STRIDE", 7);
  int tried = 0;
  for (const bool exchange : {true, false})
    for (const bool absent : {false, true})
      for (const char* call : {"write", "fsync", "close", "rename", "open", "mkdir", "link"}) {
        const Workshop shop;
        const std::string common = std::string(exchange ? "" : "NO_EXCHANGE=1 ") + "FAIL_CALL=" + call;
        const fs::path count = shop.path() / "count";
        if (absent) shop.remove_export();
        ASSERT_EQ(shop.run("--replace", common + " FAIL_AT=0 FAIL_COUNT='" + count.string() + "'").code, 0);
        const int calls = std::stoi(bytes_of(count));
        ASSERT_GT(calls, 0) << call << ": the library sees nothing";
        for (int n = 1 + tried++ % stride; n <= calls; n += stride) {
          if (absent) shop.remove_export();
          const Outcome failed = shop.run("--replace", common + " FAIL_AT=" + std::to_string(n) +
                                                           " FAIL_ERROR=" + std::to_string(n % 2 ? ENOSPC : EIO));
          const std::string where = std::string(call) + " " + std::to_string(n) + " of " + std::to_string(calls) +
                                    (exchange ? "" : ", no exchange") + (absent ? ", absent" : "");
          ASSERT_TRUE(failed.code == 3 || failed.code == 0 || failed.code == 2) << where << ": " << failed.err;
          ASSERT_EQ(shop.harm(absent), "") << where << ": " << failed.err;
          ASSERT_FALSE(failed.code == 0 && !fs::exists(shop.path() / "job/out")) << where << " says all is well";
          ASSERT_EQ(shop.run().code, 0) << where;
          ASSERT_EQ(shop.harm(false), "") << where;
          ASSERT_EQ(shop.left(), "") << where;
        }
      }
}

// Where folders cannot be exchanged the old one steps aside for a moment. A program that is killed in it leaves the
// place empty; the next run puts the old folder back before it does anything else.
TEST(Harm, AFolderThatStoodAsideIsPutBack) {
  const Workshop shop;
  const fs::path job = shop.path() / "job", temporary = job / ".out.sagitta-00000000000000aa";
  fs::create_directories(temporary / "new");
  write_file(temporary / "new/frets.csv", "half");
  write_file(temporary / "sagitta-temporary.json", "{\"program\":\"sagitta\",\"temporary\":\"out\"}\n");
  fs::rename(job / "out", temporary / "old");
  const Outcome refused = shop.run("");
  EXPECT_EQ(refused.code, 3) << "the folder is there again, and not empty";
  EXPECT_EQ(shop.harm(false), "");
  EXPECT_EQ(shop.left(), "");
}

// The marker alone is not enough: what somebody put into a temporary folder stays.
TEST(Harm, ATemporaryFolderWithSomethingElseInItStays) {
  const Workshop shop;
  const fs::path job = shop.path() / "job", temporary = job / ".out.sagitta-00000000000000aa";
  fs::create_directories(temporary / "new");
  write_file(temporary / "sagitta-temporary.json", "{\"program\":\"sagitta\",\"temporary\":\"out\"}\n");
  write_file(temporary / "letter.txt", "mine");
  ASSERT_EQ(shop.run().code, 0);
  EXPECT_EQ(bytes_of(temporary / "letter.txt"), "mine");
  fs::remove(temporary / "letter.txt");
  fs::rename(job / "out", temporary / "old");
  write_file(temporary / "old/letter.txt", "mine");
  EXPECT_EQ(shop.run("").code, 0);
  EXPECT_EQ(bytes_of(temporary / "old/letter.txt"), "mine");
}

TEST(Harm, TwoExportsAtOnceDoNotMix) {
  const Workshop shop;
  for (const bool absent : {false, true})
    for (int i = 0; i < 3; ++i) {
      if (absent) shop.remove_export();
      const pid_t one = started(shop.line()), other = started(shop.line());
      const int first = ended(one), second = ended(other);
      EXPECT_TRUE((first == 0 || first == 3) && (second == 0 || second == 3)) << first << " " << second;
      EXPECT_TRUE(first == 0 || second == 0);
      ASSERT_EQ(shop.harm(false), "");
      ASSERT_EQ(shop.left(), "");
    }
}

// A limit on the size of files stands for a full disk; sh counts it in blocks of 512 bytes.
TEST(Harm, AFullDiskLosesNothing) {
  const Workshop shop;
  int failed = 0;
  for (int size = 0; size < 30; ++size) {
    const bool absent = size % 2;
    if (absent) shop.remove_export();
    const Outcome tried = shell("ulimit -f " + std::to_string(size) + "; " + shop.line() + " >/dev/null 2>&1");
    ASSERT_TRUE(tried.code == 3 || tried.code == 0) << tried.code;
    failed += tried.code == 3;
    ASSERT_EQ(fs::exists(shop.path() / "job/out"), !absent || tried.code == 0) << size;
    ASSERT_EQ(shop.harm(absent), "") << size;
    ASSERT_EQ(shop.left(), "") << size;
    if (absent && tried.code != 0) {
      ASSERT_EQ(shop.run().code, 0);
    }
  }
  EXPECT_GT(failed, 5);
}

// Whatever is written is said to be written only when it is: a preset, too.
TEST(Harm, ANewBoardIsWholeOrNotThere) {
  const ScratchFolder scratch;
  const std::string line = places::program() + " new egret-figure --to '" + (scratch / "mine").string() + "'";
  ASSERT_EQ(shell(line).code, 0);
  const std::string whole = listing(scratch.path());
  fs::remove_all(scratch / "mine");
  for (const char* call : {"write", "fsync", "close", "open", "link"})
    for (int n = 1; n <= 4; ++n) {
      const Outcome failed =
          shell("FAIL_BELOW='" + scratch.path().string() + "' FAIL_CALL=" + call + " FAIL_AT=" + std::to_string(n) +
                " FAIL_ERROR=28 LD_PRELOAD='" + places::failing_calls() + "' " + line);
      EXPECT_EQ(listing(scratch.path()), failed.code == 0 ? whole : "") << call << " " << n << failed.err;
      EXPECT_TRUE(failed.code == 0 || failed.code == 3) << failed.err;
      fs::remove_all(scratch / "mine");
    }
}

}  // namespace
}  // namespace sagitta::test
