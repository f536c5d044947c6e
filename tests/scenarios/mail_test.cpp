// The whole program and real mail servers on 127.0.0.1 (python3-aiosmtpd), good and bad. Letters are read back by Python's
// package "email".
#include <gmock/gmock.h>
#include <sys/stat.h>

#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/loopback_mail.hpp"
#include "tests/support/read_back.hpp"
#include "tests/support/small_disk.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::SizeIs;

constexpr const char* kParts = R"(import sys, email, email.policy
message = email.message_from_bytes(open(sys.argv[1], 'rb').read(), policy=email.policy.default)
print('subject', message['Subject'])
print('to', message['To'])
for part in message.walk():
    print(part.get_content_type(), part.get_filename() or '')
    for defect in part.defects: print('DEFECT', defect)
print(message.get_body(('plain',)).get_content())
)";

class Mail : public ::testing::Test {
 protected:
  [[nodiscard]] fs::path outbox() const { return demo_.folder() / "state/outbox"; }
  [[nodiscard]] Where where(const std::string& more = "") const {
    Where all{{"STATE_DIRECTORY=" + (demo_.folder() / "state").string()}, "/"};
    if (!more.empty()) all.environment.push_back(more);
    return all;
  }
  [[nodiscard]] std::size_t waiting() const {
    std::size_t count = 0;
    if (fs::exists(outbox()))
      for (const auto& entry : fs::directory_iterator{outbox()}) count += entry.is_regular_file() ? 1 : 0;
    return count;
  }
  // `mail`: what stands in the object beside from and to.
  void settings(const std::string& mail) const {
    demo_.replace("settings.json", "\"schema_version\": 1,",
                  R"("schema_version": 1, "mail": { "from": "plan@example.org", "to": "wren@example.org", "patience_s": 20, )" + mail + " },");
  }
  [[nodiscard]] static std::string at(const std::string& host, int port) { return R"("server": ")" + host + ":" + std::to_string(port) + "\""; }
  void settings_for(const LoopbackMail& mail) const { settings(at("smtp://127.0.0.1", mail.port())); }
  void point_to(int old_port, int new_port) const { demo_.replace("settings.json", std::to_string(old_port), std::to_string(new_port)); }
  [[nodiscard]] Ran send(const std::string& more = "") const { return demo_.plan({"--as", "mail", "--send", "--quiet"}, where(more)); }

  DemoCopy demo_;
};

TEST_F(Mail, ReachesTheServerAndSaysNothing) {
  const LoopbackMail mail;
  settings_for(mail);
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.out, "") << "cron mails what a run prints";
  EXPECT_EQ(ran.err, "");
  EXPECT_EQ(waiting(), 0u);
  ASSERT_THAT(mail.taken(), SizeIs(1));
  const std::string read = read_back(kParts, mail.taken()[0].bytes);
  EXPECT_THAT(read, AllOf(HasSubstr("subject Fri 14 May Lantern"), HasSubstr("to wren@example.org\n"), HasSubstr("\ntext/html \n"),
                          HasSubstr("\nimage/png hydrograph.png\n"), HasSubstr("application/pdf 2027-05-14-sheet.pdf\n"), HasSubstr("Lantern"),
                          Not(HasSubstr("DEFECT"))));
}

// Without a place to keep it a letter could be lost: nothing is sent.
TEST_F(Mail, IsNotSentWhenTheOutboxCannotHoldIt) {
  const LoopbackMail mail;
  settings_for(mail);
  const SmallDisk disk{demo_.folder() / "state"};
  if (!disk.mounted()) GTEST_SKIP() << kNoSmallDisk;
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 74) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("outbox"));
  EXPECT_THAT(mail.taken(), IsEmpty());
  EXPECT_EQ(waiting(), 0u);
}

TEST_F(Mail, IsTheSameBytesInAFileAndOnItsWay) {
  const LoopbackMail mail;
  settings_for(mail);
  const auto out = demo_.folder() / "out";
  EXPECT_EQ(demo_.plan({"--as", "mail", "--out", out.string(), "--quiet"}, where()).exit_code, 0);
  EXPECT_EQ(send().exit_code, 0);
  ASSERT_THAT(mail.taken(), SizeIs(1));
  EXPECT_EQ(mail.taken()[0].bytes, text_of(out / "2027-05-14-mail.eml"));
  EXPECT_EQ(demo_.plan({"--as", "mail"}, where()).out, mail.taken()[0].bytes);
}

TEST_F(Mail, PrintsTheOtherKindsBesideWhatItSends) {
  const LoopbackMail mail;
  settings_for(mail);
  const auto out = demo_.folder() / "out";
  const Ran ran = demo_.plan({"--as", "ashore,mail", "--send"}, where());
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, Not(HasSubstr("MIME-Version")));
  EXPECT_THAT(ran.out, HasSubstr("LEFT ASHORE"));
  EXPECT_EQ(demo_.plan({"--as", "mail", "--send", "--out", out.string()}, where()).exit_code, 0);
  EXPECT_TRUE(fs::exists(out / "2027-05-14-mail.eml"));
}

TEST_F(Mail, LogsInOverTlsWithThePasswordOfAFileOrTheEnvironment) {
  const LoopbackMail mail{{.protection = "starttls", .login = true}};
  write_text(demo_.config() / "password", "river\n");
  ASSERT_EQ(::chmod((demo_.config() / "password").c_str(), 0600), 0);
  settings(at("smtp://localhost", mail.port()) + R"(, "user": "plan", "password_file": "password", "ca_file": ")" + mail.ca_file() + "\"");
  EXPECT_EQ(send().exit_code, 0);
  write_text(demo_.config() / "password", "wrong\n");
  EXPECT_EQ(send("FLOATWRIGHT_MAIL_PASSWORD=river").exit_code, 0) << "the environment comes first";
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_THAT(mail.taken()[0].about, AllOf(HasSubstr("\"tls\": true"), HasSubstr("\"user\": \"plan\"")));
  const Ran wrong = send();
  EXPECT_EQ(wrong.exit_code, 75);
  EXPECT_THAT(wrong.err, AllOf(HasSubstr("535"), Not(HasSubstr("wrong")))) << "no password in a message";
  EXPECT_EQ(waiting(), 1u);
}

TEST_F(Mail, RefusesAPasswordThatOthersMayRead) {
  const LoopbackMail mail;
  write_text(demo_.config() / "password", "river\n");
  ASSERT_EQ(::chmod((demo_.config() / "password").c_str(), 0644), 0);
  settings(at("smtps://127.0.0.1", mail.port()) + R"(, "user": "plan", "password_file": "password")");
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 77);
  EXPECT_THAT(ran.err, HasSubstr("chmod 600"));
  EXPECT_THAT(mail.taken(), IsEmpty());
}

TEST_F(Mail, AsksForTheTlsThatASettingDoesNotWaive) {
  const LoopbackMail mail;
  settings(at("smtp://localhost", mail.port()));
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 75);
  EXPECT_THAT(ran.err, HasSubstr("STARTTLS"));
  EXPECT_THAT(mail.taken(), IsEmpty());
  demo_.replace("settings.json", "\"patience_s\"", R"("unprotected": "I know that anybody on the way can read it", "patience_s")");
  EXPECT_EQ(send().exit_code, 0);
  EXPECT_THAT(mail.taken(), SizeIs(1)) << "the letter that waited is the day's letter: once";
}

TEST_F(Mail, WaitsInTheOutboxWhenNobodyListensAndGoesOnceWithTheNextRun) {
  const int nobody = silent_port();
  settings(at("smtp://127.0.0.1", nobody));
  const Ran cut = send();
  EXPECT_EQ(cut.exit_code, 75);
  EXPECT_THAT(cut.err, AllOf(HasSubstr("1 letter is kept in " + outbox().string()), HasSubstr("next --send")));
  EXPECT_EQ(waiting(), 1u);
  const LoopbackMail mail;
  point_to(nobody, mail.port());
  const Ran next = demo_.plan({"--as", "mail", "--send", "--quiet"}, where());
  EXPECT_EQ(next.exit_code, 0) << next.err;
  EXPECT_THAT(mail.taken(), SizeIs(1));
  EXPECT_EQ(waiting(), 0u);
}

TEST_F(Mail, SendsWhatWaitedBeforeANewerLetter) {
  const int nobody = silent_port();
  settings(at("smtp://127.0.0.1", nobody));
  EXPECT_EQ(send().exit_code, 75);
  const LoopbackMail mail;
  point_to(nobody, mail.port());
  const Ran later = floatwright_says({"plan", "--config", demo_.config().string(), "--offline", "--now", "2027-05-13T20:50:00-06:00", "--as", "mail", "--send", "--quiet"}, where());
  EXPECT_EQ(later.exit_code, 0) << later.err;
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_THAT(mail.taken()[0].bytes, HasSubstr("Date: Fri, 14 May 2027 01:50:00"));
  EXPECT_THAT(mail.taken()[1].bytes, HasSubstr("Date: Fri, 14 May 2027 02:50:00"));
}

TEST_F(Mail, TellsTheServersOwnWordsWhenItRefuses) {
  const LoopbackMail mail{{.rcpt = {"550 5.1.1 no such mailbox here"}}};
  settings_for(mail);
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 75);
  EXPECT_THAT(ran.err, AllOf(HasSubstr("550 5.1.1 no such mailbox here"), HasSubstr("set-aside")));
  EXPECT_EQ(waiting(), 0u);
}

TEST_F(Mail, KeepsALetterWhoseAnswerIsMissing) {
  const LoopbackMail mail{{.end = {"take and drop", "250 taken"}}};
  settings_for(mail);
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 75);
  EXPECT_THAT(ran.err, HasSubstr("may have arrived"));
  EXPECT_EQ(waiting(), 1u);
  EXPECT_EQ(send().exit_code, 0);
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_EQ(mail.taken()[0].bytes, mail.taken()[1].bytes) << "one Message-ID";
}

TEST_F(Mail, IsSentThoughThereIsNoPlan) {
  const LoopbackMail mail;
  settings_for(mail);
  for (const auto& entry : fs::directory_iterator{demo_.payloads()}) fs::remove_all(entry.path());
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 69) << "nothing could be made";
  ASSERT_THAT(mail.taken(), SizeIs(1)) << "and the angler is told so";
  EXPECT_THAT(read_back(kParts, mail.taken()[0].bytes), Not(HasSubstr("application/pdf")));
}

TEST_F(Mail, SaysWhatToWriteWhereSettingsSayNothingOfMail) {
  for (const std::vector<std::string>& words : {std::vector<std::string>{"--as", "mail"}, {"--as", "mail", "--send"}}) {
    const Ran ran = demo_.plan(words, where());
    EXPECT_EQ(ran.exit_code, 78);
    EXPECT_THAT(ran.err, HasSubstr("\"mail\": { \"from\":"));
    EXPECT_EQ(ran.out, "");
  }
}

TEST_F(Mail, SendsNothingButTheKindMail) {
  const LoopbackMail mail;
  settings_for(mail);
  const Ran ran = demo_.plan({"--as", "plan", "--send"}, where());
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, HasSubstr("--as mail --send"));
}

TEST_F(Mail, IsNotSentWhereItCouldNotBeKept) {
  const LoopbackMail mail;
  settings_for(mail);
  const Ran ran = demo_.plan({"--as", "mail", "--send"}, {{}, "/"});
  EXPECT_EQ(ran.exit_code, 73);
  EXPECT_THAT(ran.err, HasSubstr("STATE_DIRECTORY"));
  EXPECT_THAT(mail.taken(), IsEmpty());
}

TEST_F(Mail, IsTestedByCheck) {
  const LoopbackMail mail{{.end = {"250 taken", "451 4.3.0 busy"}}};
  settings_for(mail);
  const std::vector<std::string> words{"check", "--config", demo_.config().string(), "--mail"};
  const Ran good = floatwright_says(words, where());
  EXPECT_EQ(good.exit_code, 0) << good.err;
  EXPECT_THAT(good.out, HasSubstr("A test letter went to wren@example.org"));
  ASSERT_THAT(mail.taken(), SizeIs(1));
  EXPECT_THAT(read_back(kParts, mail.taken()[0].bytes), HasSubstr("subject Test letter: Lantern River"));
  const Ran bad = floatwright_says(words, where());
  EXPECT_EQ(bad.exit_code, 75);
  EXPECT_THAT(bad.err, HasSubstr("451 4.3.0 busy"));
  EXPECT_EQ(waiting(), 0u) << "a test is not worth keeping";
}

TEST_F(Mail, TakesNothingIntoItsHeadFromNamesAndNotes) {
  const LoopbackMail mail;
  settings_for(mail);
  demo_.replace("river.json", "\"Lantern River\"", "\"\xD7\xA0\xD7\x94\xD7\xA8 \xF0\x9F\x8E\xA3 Bcc: thief@example.net \xE2\x80\xAE Lantern " + std::string(300, 'x') + "\"");
  const Ran ran = send();
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  ASSERT_THAT(mail.taken(), SizeIs(1));
  const std::string read = read_back(kParts, mail.taken()[0].bytes);
  EXPECT_THAT(read, Not(HasSubstr("DEFECT")));
  EXPECT_THAT(mail.taken()[0].about, HasSubstr("\"to\": [\"wren@example.org\"]"));
}

}  // namespace
}  // namespace floatwright::testing
