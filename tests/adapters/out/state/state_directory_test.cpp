// XDG Base Directory Specification 0.8 and systemd.exec(5), StateDirectory=.
#include "adapters/out/state/state_directory.hpp"

#include <gmock/gmock.h>

#include <cstdlib>

#include "tests/support/run_program.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

class StateDirectory : public ::testing::Test {
 protected:
  void SetUp() override {
    for (const char* variable : {"STATE_DIRECTORY", "XDG_STATE_HOME", "HOME"}) ::unsetenv(variable);
  }
  static void set(const char* variable, const std::filesystem::path& value) { ::setenv(variable, value.c_str(), 1); }
  [[nodiscard]] std::filesystem::path folder() const { return scratch_.path(); }

 private:
  ScratchFolder scratch_;
};

TEST_F(StateDirectory, IsTheServiceManagersThenTheUsersThenTheHomes) {
  set("HOME", folder() / "home");
  EXPECT_EQ(state_directory().value(), folder() / "home/.local/state/floatwright");
  set("XDG_STATE_HOME", folder() / "xdg");
  EXPECT_EQ(state_directory().value(), folder() / "xdg/floatwright");
  set("STATE_DIRECTORY", (folder() / "a").string() + ":" + (folder() / "b").string());
  EXPECT_EQ(state_directory().value(), folder() / "a");
}

TEST_F(StateDirectory, IsMadeForItsOwnerAlone) {
  set("HOME", folder());
  const auto made = state_directory().value();
  ASSERT_TRUE(std::filesystem::is_directory(made));
  EXPECT_EQ(std::filesystem::status(made).permissions(), std::filesystem::perms::owner_all);
  EXPECT_EQ(state_directory().value(), made) << "the second time it is there already";
}

TEST_F(StateDirectory, PassesARelativePathOver) {
  set("HOME", folder());
  set("XDG_STATE_HOME", "state");
  EXPECT_EQ(state_directory().value(), folder() / ".local/state/floatwright");
}

TEST_F(StateDirectory, ThatCannotBeIsToldWithWhatToSet) {
  const auto none = state_directory();
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().exit_code, kExitCantCreate);
  EXPECT_THAT(none.error().what, HasSubstr("XDG_STATE_HOME"));
  write_text(folder() / "file", "in the way");
  set("STATE_DIRECTORY", folder() / "file" / "state");
  const auto blocked = state_directory();
  ASSERT_FALSE(blocked);
  EXPECT_THAT(blocked.error().what, HasSubstr("file/state"));
  EXPECT_EQ(text_of(folder() / "file"), "in the way");
}

}  // namespace
}  // namespace floatwright::testing
