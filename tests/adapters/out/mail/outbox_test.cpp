// Letters through real servers on 127.0.0.1 (python3-aiosmtpd), good and bad. What a server kept is looked at there; what we
// kept, in the outbox.
#include "adapters/out/mail/outbox.hpp"

#include <gmock/gmock.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "tests/adapters/out/mail/sample_letter.hpp"
#include "tests/support/loopback_mail.hpp"
#include "tests/support/run_program.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

std::vector<fs::path> letters_in(const fs::path& folder) {
  std::vector<fs::path> files;
  if (fs::exists(folder))
    for (const auto& entry : fs::directory_iterator{folder})
      if (entry.is_regular_file()) files.push_back(entry.path());
  return files;
}

class Outbox : public ::testing::Test {
 protected:
  [[nodiscard]] fs::path outbox() const { return scratch_.path() / "outbox"; }
  [[nodiscard]] std::vector<fs::path> waiting() const { return letters_in(outbox()); }
  [[nodiscard]] std::vector<fs::path> aside() const { return letters_in(outbox() / "set-aside"); }

  void put(const Letter& letter) const {
    const auto kept = put_in_outbox(outbox(), letter, kDay);
    ASSERT_TRUE(kept) << kept.error().what;
  }
  [[nodiscard]] OutboxRun send(MailServer server, std::chrono::year_month_day today = kDay) const {
    return send_outbox(outbox(), sample_letter().from, server, today);
  }
  [[nodiscard]] static MailServer plain(const LoopbackMail& mail) {
    return {.url = "smtp://127.0.0.1:" + std::to_string(mail.port()), .protection = Protection::IfOffered};
  }
  // By name: a certificate is for a name.
  [[nodiscard]] static MailServer protected_by(const std::string& scheme, const LoopbackMail& mail) {
    return {.url = scheme + "://localhost:" + std::to_string(mail.port()), .ca_file = mail.ca_file(), .user = "plan", .password = "river"};
  }
  // The first run fails and the letter waits; then the same outbox meets a good server, twice.
  void expect_delivered_once_later() const {
    const LoopbackMail good;
    EXPECT_TRUE(send(plain(good)).well);
    EXPECT_TRUE(send(plain(good)).well);
    EXPECT_THAT(good.taken(), SizeIs(1));
    EXPECT_THAT(waiting(), IsEmpty());
  }

 private:
  ScratchFolder scratch_;
};

TEST_F(Outbox, GivesTheServerTheLettersOwnBytesAndIsEmptyThen) {
  const LoopbackMail mail;
  put(sample_letter());
  const OutboxRun run = send(plain(mail));
  EXPECT_TRUE(run.well);
  EXPECT_THAT(run.told, IsEmpty());
  ASSERT_THAT(mail.taken(), SizeIs(1));
  EXPECT_EQ(mail.taken()[0].bytes, as_eml(sample_letter())) << "lines that are a lone dot included";
  const auto about = nlohmann::json::parse(mail.taken()[0].about);
  EXPECT_EQ(about.at("from"), "plan@example.org");
  EXPECT_EQ(about.at("to"), nlohmann::json{"wren@example.org"});
  EXPECT_THAT(waiting(), IsEmpty());
}

TEST_F(Outbox, SpeaksTlsAndLogsInByStarttlsAndFromTheStart) {
  for (const auto& [scheme, protection] : {std::pair{"smtp", "starttls"}, {"smtps", "implicit"}}) {
    const LoopbackMail mail{{.protection = protection, .login = true}};
    put(sample_letter());
    const OutboxRun run = send(protected_by(scheme, mail));
    EXPECT_THAT(run.told, IsEmpty()) << protection;
    ASSERT_THAT(mail.taken(), SizeIs(1)) << protection;
    EXPECT_THAT(mail.taken()[0].about, HasSubstr("\"tls\": true"));
    EXPECT_THAT(mail.taken()[0].about, HasSubstr("\"user\": \"plan\""));
  }
}

struct Unprotected {
  const char* what;
  MailServerWanted wanted;
  bool knows_authority = true;
  std::string scheme = "smtp", said;
};

TEST_F(Outbox, NeverSendsToAServerThatDoesNotProveWhoItIs) {
  const Unprotected kCases[] = {
      {"wrong name", {.protection = "starttls", .certificate_for = "mail.example.net"}, true, "smtp", "certificate"},
      {"ran out", {.protection = "starttls", .certificate_days = -1}, true, "smtp", "expired"},
      {"ran out, TLS from the start", {.protection = "implicit", .certificate_days = -1}, true, "smtps", "expired"},
      {"unknown authority", {.protection = "starttls"}, false, "smtp", "ca_file"},
      {"no STARTTLS", {.protection = "none"}, true, "smtp", "STARTTLS"},
  };
  for (const auto& [what, wanted, knows_authority, scheme, said] : kCases) {
    const LoopbackMail mail{wanted};
    put(sample_letter());
    MailServer server = protected_by(scheme, mail);
    if (!knows_authority || wanted.protection == "none") server.ca_file.clear();
    const OutboxRun run = send(server);
    EXPECT_FALSE(run.well) << what;
    ASSERT_THAT(run.told, SizeIs(1)) << what;
    EXPECT_THAT(run.told[0], HasSubstr(said)) << what;
    EXPECT_THAT(mail.taken(), IsEmpty()) << what;
    EXPECT_THAT(waiting(), SizeIs(1)) << what;
  }
}

TEST_F(Outbox, KeepsTheLetterWhenTheLoginFails) {
  const LoopbackMail mail{{.protection = "starttls", .login = true}};
  put(sample_letter());
  MailServer server = protected_by("smtp", mail);
  server.password = "wrong";
  const OutboxRun run = send(server);
  ASSERT_THAT(run.told, SizeIs(1));
  EXPECT_THAT(run.told[0], HasSubstr("535")) << "the server's own words";
  EXPECT_THAT(waiting(), SizeIs(1));
  server.password = "river";
  EXPECT_TRUE(send(server).well);
  EXPECT_THAT(mail.taken(), SizeIs(1));
}

TEST_F(Outbox, KeepsTheLetterWhenNobodyListens) {
  put(sample_letter());
  const OutboxRun run = send({.url = "smtp://127.0.0.1:" + std::to_string(silent_port()), .protection = Protection::IfOffered});
  EXPECT_FALSE(run.well);
  ASSERT_THAT(run.told, SizeIs(1));
  EXPECT_THAT(run.told[0], HasSubstr("1 letter is kept in " + outbox().string()));
  expect_delivered_once_later();
}

TEST_F(Outbox, TriesLaterWhatIsRefusedForNow) {
  for (const MailServerWanted& wanted : {MailServerWanted{.mail = {"451 4.3.0 busy, come back"}}, {.rcpt = {"451 4.3.0 busy, come back"}},
                                         {.data = {"451 4.3.0 busy, come back"}}, {.end = {"451 4.3.0 busy, come back"}}}) {
    const LoopbackMail mail{wanted};
    put(sample_letter());
    const OutboxRun run = send(plain(mail));
    EXPECT_FALSE(run.well);
    ASSERT_THAT(run.told, SizeIs(1));
    EXPECT_THAT(run.told[0], HasSubstr("451 4.3.0 busy, come back"));
    EXPECT_THAT(run.told[0], HasSubstr("next --send"));
    EXPECT_THAT(mail.taken(), IsEmpty());
    ASSERT_THAT(waiting(), SizeIs(1));
    EXPECT_THAT(text_of(waiting()[0]), HasSubstr("Outbox-Unanswered: 0")) << "it is known not to have arrived";
    expect_delivered_once_later();
  }
}

TEST_F(Outbox, TakesTheSecondAnswerOfAServerThatWasBusy) {
  const LoopbackMail mail{{.end = {"451 4.3.0 busy", "250 taken"}}};
  put(sample_letter());
  EXPECT_FALSE(send(plain(mail)).well);
  EXPECT_TRUE(send(plain(mail)).well);
  EXPECT_TRUE(send(plain(mail)).well);
  EXPECT_THAT(mail.taken(), SizeIs(1));
}

TEST_F(Outbox, SetsAsideWhatIsRefusedForGoodAndNeverSendsItAgain) {
  for (const MailServerWanted& wanted : {MailServerWanted{.mail = {"550 5.7.1 not from you"}}, {.rcpt = {"550 5.7.1 not from you"}},
                                         {.data = {"550 5.7.1 not from you"}}, {.end = {"550 5.7.1 not from you"}}}) {
    const LoopbackMail mail{wanted};
    put(sample_letter());
    const OutboxRun run = send(plain(mail));
    EXPECT_FALSE(run.well);
    ASSERT_THAT(run.told, SizeIs(1));
    EXPECT_THAT(run.told[0], HasSubstr("550 5.7.1 not from you"));
    EXPECT_THAT(waiting(), IsEmpty());
    const OutboxRun next = send(plain(mail));
    EXPECT_TRUE(next.well);
    EXPECT_THAT(next.told, IsEmpty());
    EXPECT_THAT(mail.taken(), IsEmpty());
  }
  ASSERT_THAT(aside(), SizeIs(4)) << "nothing is lost";
  EXPECT_THAT(text_of(aside()[0]), HasSubstr(as_eml(sample_letter())));
}

TEST_F(Outbox, DeliversToTheOthersWhenOneAddressIsRefused) {
  const LoopbackMail mail{{.rcpt = {"250 ok", "550 5.1.1 no such mailbox", "451 4.2.1 mailbox is busy", "250 ok"}}};
  Letter letter = sample_letter();
  letter.to = {"wren@example.org", "nobody@example.org", "busy@example.org", "marten@example.org"};
  put(letter);
  const OutboxRun run = send(plain(mail));
  EXPECT_FALSE(run.well);
  EXPECT_THAT(run.told, ElementsAre(HasSubstr("nobody@example.org: 550 5.1.1 no such mailbox"), HasSubstr("busy@example.org: 451 4.2.1")));
  ASSERT_THAT(mail.taken(), SizeIs(1));
  EXPECT_EQ(nlohmann::json::parse(mail.taken()[0].about).at("to"), (nlohmann::json{"wren@example.org", "marten@example.org"}));
  ASSERT_THAT(waiting(), SizeIs(1));
  EXPECT_THAT(text_of(waiting()[0]), HasSubstr("Outbox-To: busy@example.org\r\n"));
  ASSERT_THAT(aside(), SizeIs(1));
  EXPECT_THAT(text_of(aside()[0]), HasSubstr("Outbox-To: nobody@example.org\r\n"));
  EXPECT_TRUE(send(plain(mail)).well);
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_EQ(nlohmann::json::parse(mail.taken()[1].about).at("to"), nlohmann::json{"busy@example.org"});
}

TEST_F(Outbox, SendsOnceMoreWithTheSameIdWhenNoAnswerCame) {
  const LoopbackMail mail{{.end = {"take and drop", "250 taken"}}};
  put(sample_letter());
  const OutboxRun run = send(plain(mail));
  EXPECT_FALSE(run.well);
  ASSERT_THAT(run.told, SizeIs(1));
  EXPECT_THAT(run.told[0], HasSubstr("may have arrived"));
  ASSERT_THAT(waiting(), SizeIs(1));
  EXPECT_THAT(text_of(waiting()[0]), HasSubstr("Outbox-Unanswered: 1"));
  EXPECT_TRUE(send(plain(mail)).well);
  EXPECT_TRUE(send(plain(mail)).well);
  ASSERT_THAT(mail.taken(), SizeIs(2)) << "RFC 5321 section 3.8: as after a 451";
  EXPECT_EQ(mail.taken()[0].bytes, mail.taken()[1].bytes) << "the same Message-ID, so that a mailbox can know it again";
}

TEST_F(Outbox, LosesNothingToAServerThatHangsUpWithoutTakingIt) {
  const LoopbackMail mail{{.end = {"drop"}}};
  put(sample_letter());
  EXPECT_FALSE(send(plain(mail)).well);
  expect_delivered_once_later();
}

TEST_F(Outbox, DoesNotFeedAServerForEverThatNeverAnswers) {
  const LoopbackMail mail{{.end = {"take and drop"}}};
  put(sample_letter());
  for (int run = 0; run < 4; ++run) (void)send(plain(mail));
  EXPECT_THAT(mail.taken(), SizeIs(2));
  EXPECT_THAT(waiting(), IsEmpty());
  EXPECT_THAT(aside(), SizeIs(1));
}

TEST_F(Outbox, WaitsNoLongerThanItsPatience) {
  for (const MailServerWanted& wanted : {MailServerWanted{.mail = {"stall"}}, {.data = {"stall"}}}) {
    const LoopbackMail mail{wanted};
    put(sample_letter());
    MailServer server = plain(mail);
    server.patience = Period{1};
    const OutboxRun run = send(server);
    ASSERT_THAT(run.told, SizeIs(1));
    EXPECT_THAT(run.told[0], HasSubstr("1 s"));
    ASSERT_THAT(waiting(), SizeIs(1));
    EXPECT_THAT(text_of(waiting()[0]), HasSubstr("Outbox-Unanswered: 0")) << "a server without the end has nothing";
    expect_delivered_once_later();
  }
}

TEST_F(Outbox, KnowsThatALetterMayHaveArrivedWhenTheServerStallsAfterIt) {
  const LoopbackMail mail{{.end = {"stall"}}};
  put(sample_letter());
  MailServer server = plain(mail);
  server.patience = Period{1};
  EXPECT_THAT(send(server).told, ElementsAre(HasSubstr("may have arrived")));
  EXPECT_THAT(text_of(waiting().at(0)), HasSubstr("Outbox-Unanswered: 1"));
}

TEST_F(Outbox, SendsTheOldestFirst) {
  const LoopbackMail mail;
  Letter later = sample_letter(), earlier = sample_letter();
  earlier.date -= std::chrono::hours{10};
  earlier.message_id = message_id(earlier);
  put(later);
  put(earlier);
  EXPECT_TRUE(send(plain(mail)).well);
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_EQ(mail.taken()[0].bytes, as_eml(earlier));
  EXPECT_EQ(mail.taken()[1].bytes, as_eml(later));
}

TEST_F(Outbox, SetsAsideLettersOfDaysThatAreOver) {
  const LoopbackMail mail;
  put(sample_letter());
  const OutboxRun run = send(plain(mail), std::chrono::year{2027} / 5 / 15);
  EXPECT_TRUE(run.well) << "its failure was told when it failed";
  EXPECT_THAT(run.told, ElementsAre(HasSubstr("its day is over")));
  EXPECT_THAT(mail.taken(), IsEmpty()) << "yesterday's rig is of no use today";
  EXPECT_THAT(waiting(), IsEmpty());
  EXPECT_THAT(aside(), SizeIs(1));
}

TEST_F(Outbox, LeavesTheLettersOfAnotherSender) {
  const LoopbackMail mail;
  Letter other = sample_letter();
  other.from = "outfitter@example.org";
  put(other);
  EXPECT_TRUE(send(plain(mail)).well);
  EXPECT_THAT(mail.taken(), IsEmpty());
  EXPECT_THAT(waiting(), SizeIs(1));
}

TEST_F(Outbox, TellsOfAFileThatIsNoLetterAndSendsTheRest) {
  const LoopbackMail mail;
  put(sample_letter());
  write_text(outbox() / "0000-notes.eml", "Outbox-To: \r\nOutbox-Day: 2027-13-77\r\nhello");
  write_text(outbox() / "0001-empty.eml", "");
  const OutboxRun run = send(plain(mail));
  EXPECT_FALSE(run.well);
  EXPECT_THAT(run.told, ElementsAre(HasSubstr("0000-notes.eml"), HasSubstr("0001-empty.eml")));
  EXPECT_THAT(mail.taken(), SizeIs(1));
}

TEST_F(Outbox, SendsOnceThoughTwoRunsSendAtTheSameTime) {
  const LoopbackMail mail;
  for (int i = 0; i < 5; ++i) {
    Letter letter = sample_letter();
    letter.subject += std::to_string(i);
    letter.message_id = message_id(letter);
    put(letter);
  }
  std::vector<pid_t> runs;
  for (int i = 0; i < 3; ++i) {
    runs.push_back(fork());
    if (runs.back() == 0) _exit(send(plain(mail)).well ? 0 : 1);
  }
  for (const pid_t run : runs) {
    int status = -1;
    waitpid(run, &status, 0);
    EXPECT_EQ(status, 0);
  }
  EXPECT_THAT(mail.taken(), SizeIs(5));
  EXPECT_THAT(waiting(), IsEmpty());
}

}  // namespace
}  // namespace floatwright::testing
