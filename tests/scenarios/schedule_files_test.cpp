// The examples for cron and systemd: their commands are run as they stand, but for the paths, on the demo.
#include <gmock/gmock.h>

#include <iostream>
#include <sstream>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/loopback_mail.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::SizeIs;

std::vector<std::string> lines_of(const std::filesystem::path& file) {
  std::vector<std::string> lines;
  std::istringstream in{text_of(file)};
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream in{text};
  return {std::istream_iterator<std::string>{in}, {}};
}

// The command with this build's program, the demo's configuration, a folder of its own and the demo's evening.
std::vector<std::string> on_the_demo(std::vector<std::string> words, const DemoCopy& demo, const std::filesystem::path& out) {
  EXPECT_EQ(words.at(0), "/usr/bin/floatwright");
  words[0] = FLOATWRIGHT_PROGRAM;
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (words[i] == "--config") words[i + 1] = demo.config().string();
    if (words[i] == "--out") words[i + 1] = out.string();
  }
  words.insert(words.end(), {"--now", kDemoNow});
  return words;
}

std::size_t letters_sent_by(const std::string& command) { return command.find("--send") == std::string::npos ? 0 : 1; }

// Silent, the day's files, and a letter where it sends one: what a guide finds in the morning.
void expect_a_quiet_run(const std::string& command) {
  const DemoCopy demo;
  const LoopbackMail mail;
  demo.replace("settings.json", "\"schema_version\": 1,",
               R"("schema_version": 1, "mail": { "from": "plan@example.org", "to": "wren@example.org", "server": "smtp://127.0.0.1:)" +
                   std::to_string(mail.port()) + "\" },");
  const auto out = demo.folder() / "plans";
  const auto ran = run_program(on_the_demo(words_of(command), demo, out), 
                               {{"HOME=/nowhere", "PATH=/usr/bin:/bin", "STATE_DIRECTORY=" + (demo.folder() / "state").string()}, "/"});
  EXPECT_EQ(ran.exit_code, 0) << command << "\n" << ran.err;
  EXPECT_EQ(ran.out + ran.err, "") << command;
  std::vector<std::string> endings;
  for (const auto& entry : std::filesystem::directory_iterator{out})
    endings.push_back(entry.path().filename().string().substr(std::string{"2027-05-14"}.size()));
  std::vector<std::string> wanted{"-plan.txt", "-plan.json", "-plan.ics", "-map.geojson", "-map.gpx", "-sheet.pdf", "-ashore.txt"};
  if (letters_sent_by(command) > 0) wanted.emplace_back("-mail.eml");
  EXPECT_THAT(endings, ::testing::UnorderedElementsAreArray(wanted)) << command;
  EXPECT_THAT(mail.taken(), SizeIs(letters_sent_by(command))) << command;
}

TEST(CrontabExample, HasFiveFieldsOfTimeAndQuietCommands) {
  std::vector<std::string> commands;
  for (const auto& line : lines_of(kRoot / "config/cron/crontab.example")) {
    if (line.empty() || line.starts_with("#") || line.starts_with("MAILTO=")) continue;
    EXPECT_EQ(line.find('%'), std::string::npos) << "cron takes a % for the end of the line: " << line;
    const auto words = words_of(line);
    ASSERT_GT(words.size(), 6U) << line;
    for (int field = 0; field < 5; ++field) EXPECT_THAT(words[field], ::testing::MatchesRegex("[0-9*,/-]+")) << line;
    commands.push_back(line.substr(line.find("/usr/bin/floatwright")));
  }
  ASSERT_THAT(commands, SizeIs(2));
  expect_a_quiet_run(commands[0]);  // the evening's; the morning's says --date today, for which the demo has no fresh readings
}

std::string value_of(const std::string& file, const std::string& key) {
  for (const auto& line : lines_of(kRoot / "config/cron" / file))
    if (line.starts_with(key + "=")) return line.substr(key.size() + 1);
  return "no " + key;
}

TEST(SystemdService, RunsTheSameCommandQuietlyAndTakesOldReadingsForDone) {
  expect_a_quiet_run(value_of("floatwright.service", "ExecStart"));
  EXPECT_EQ(value_of("floatwright.service", "SuccessExitStatus"), "75");
}

TEST(SystemdService, WritesOnlyBelowItsOwnDirectories) {
  EXPECT_EQ(value_of("floatwright.service", "DynamicUser"), "yes");
  EXPECT_EQ(value_of("floatwright.service", "ProtectSystem"), "strict");
  EXPECT_EQ(value_of("floatwright.service", "StateDirectory"), "floatwright");
  EXPECT_EQ(value_of("floatwright.service", "CacheDirectory"), "floatwright");
  EXPECT_THAT(value_of("floatwright.service", "ExecStart"), HasSubstr("--out /var/lib/floatwright/"));
}

// With this build's program in place of the installed one, which need not be there.
TEST(SystemdUnits, AreFoundGoodBySystemdItself) {
  if (!std::filesystem::exists("/usr/bin/systemd-analyze")) {
    std::cout << "not run here: systemd-analyze is not installed (package systemd)\n";
    return;
  }
  const ScratchFolder scratch;
  auto service = text_of(kRoot / "config/cron/floatwright.service");
  service.replace(service.find("/usr/bin/floatwright"), std::string{"/usr/bin/floatwright"}.size(), FLOATWRIGHT_PROGRAM);
  const auto service_file = scratch.path() / "floatwright.service", timer_file = scratch.path() / "floatwright.timer";
  write_text(service_file, service);
  write_text(timer_file, text_of(kRoot / "config/cron/floatwright.timer"));
  const Where here{{"PATH=/usr/bin:/bin"}, "/"};
  const auto verified = run_program({"/usr/bin/systemd-analyze", "verify", service_file.string(), timer_file.string()}, here);
  EXPECT_EQ(verified.exit_code, 0);
  EXPECT_EQ(verified.out + verified.err, "");
  const auto security = run_program({"/usr/bin/systemd-analyze", "security", "--offline=true", "--threshold=20", service_file.string()}, here);
  EXPECT_EQ(security.exit_code, 0) << "an exposure over 2.0 of 10:\n" << security.out;
}

}  // namespace
}  // namespace floatwright::testing
