// A letter's bytes, read back by Python's own package "email" (policy default: RFC 5322, RFC 2045 to 2047, RFC 2231), and
// held to what the standards ask of the bytes.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

#include "tests/adapters/out/mail/sample_letter.hpp"
#include "tests/support/read_back.hpp"

namespace floatwright::testing {
namespace {

using Json = nlohmann::json;
using ::testing::HasSubstr;
using ::testing::Not;

constexpr const char* kReader = R"(import sys, json, email, email.policy
message = email.message_from_bytes(open(sys.argv[1], 'rb').read(), policy=email.policy.default)
def tree(part):
    if part.is_multipart():
        return {part.get_content_type(): [tree(inner) for inner in part.iter_parts()]}
    body = part.get_payload(decode=True)
    return {'type': part.get_content_type(), 'id': part['Content-ID'], 'place': part.get_content_disposition(),
            'file': part.get_filename(), 'text': body.decode('utf-8') if part.get_content_maintype() == 'text' else body.hex(),
            'defects': [str(defect) for defect in part.defects]}
print(json.dumps({'head': [[key, str(value)] for key, value in message.items()], 'tree': tree(message),
                  'defects': [str(d) for d in message.defects] + [str(d) for k, v in message.items() for d in v.defects],
                  'seconds': message['Date'].datetime.timestamp(), 'to': [a.addr_spec for a in message['To'].addresses]}))
)";

Json read_letter(const Letter& letter) {
  const std::string said = read_back(kReader, as_eml(letter));
  return Json::accept(said) ? Json::parse(said) : Json(said);
}

std::vector<std::string> head_values(const Json& read, const std::string& key) {
  std::vector<std::string> values;
  for (const auto& field : read.at("head"))
    if (field.at(0) == key) values.push_back(field.at(1));
  return values;
}

std::vector<std::string> head_names(const Json& read) {
  std::vector<std::string> names;
  for (const auto& field : read.at("head")) names.push_back(field.at(0));
  return names;
}

TEST(Letter, IsTextAndHtmlWithItsPictureInsideAndTheSheetAttached) {
  const Letter letter = sample_letter();
  const Json read = read_letter(letter);
  EXPECT_EQ(read.at("defects"), Json::array());
  const Json& mixed = read.at("tree").at("multipart/mixed");
  const Json& alternative = mixed.at(0).at("multipart/alternative");
  EXPECT_EQ(alternative.at(0).at("type"), "text/plain");
  EXPECT_EQ(alternative.at(0).at("text"), "Flow 1,850 cfs, falling slowly.\r\nWater 47 \xC2\xB0""F.\r\n.\r\n..a line that begins with two dots\r\nFrom the bank.\r\n");
  const Json& related = alternative.at(1).at("multipart/related");
  EXPECT_EQ(related.at(0).at("type"), "text/html");
  EXPECT_THAT(related.at(0).at("text").get<std::string>(), HasSubstr("src=\"cid:hydrograph@floatwright\""));
  EXPECT_EQ(related.at(1).at("type"), "image/png");
  EXPECT_EQ(related.at(1).at("id"), "<hydrograph@floatwright>") << "RFC 2392: cid: and the Content-ID without its brackets";
  EXPECT_EQ(related.at(1).at("place"), "inline");
  EXPECT_EQ(related.at(1).at("text"), "89504e470d0a1a0a006279746573");
  EXPECT_EQ(mixed.at(1).at("type"), "application/pdf");
  EXPECT_EQ(mixed.at(1).at("place"), "attachment");
  EXPECT_EQ(mixed.at(1).at("file"), "2027-05-14-sheet.pdf");
  EXPECT_EQ(mixed.at(1).at("text"), "255044462d312e350a73686565740d0aff0a") << "bytes untouched";
}

TEST(Letter, IsNoMoreThanItsPartsWhereSomeAreMissing) {
  Letter letter = sample_letter();
  letter.attachments.clear();
  letter.pictures.clear();
  EXPECT_EQ(read_letter(letter).at("tree").at("multipart/alternative").at(1).at("type"), "text/html");
  letter.html.clear();
  EXPECT_EQ(read_letter(letter).at("tree").at("type"), "text/plain");
}

TEST(Letter, HasTheHeadThatRfc5322Asks) {
  const Json read = read_letter(sample_letter());
  EXPECT_EQ(read.at("seconds"), 1810296000) << "2027-05-14 12:00 UTC by date(1)";
  EXPECT_THAT(head_values(read, "From"), ::testing::ElementsAre("plan@example.org"));
  EXPECT_THAT(head_values(read, "Subject"), ::testing::ElementsAre(sample_letter().subject));
  EXPECT_THAT(head_values(read, "Message-Id"), ::testing::ElementsAre("<" + sample_letter().message_id + ">"));
  EXPECT_THAT(sample_letter().message_id, ::testing::MatchesRegex("[0-9a-f]{32}@example.org"));
  EXPECT_THAT(head_values(read, "MIME-Version"), ::testing::ElementsAre("1.0"));
}

TEST(Letter, IsTheSameBytesEachTimeAndAnotherLetterHasAnotherId) {
  EXPECT_EQ(as_eml(sample_letter()), as_eml(sample_letter()));
  Letter other = sample_letter();
  other.text += "One word more.\n";
  EXPECT_NE(message_id(other), message_id(sample_letter()));
  EXPECT_EQ(message_id(sample_letter()), sample_letter().message_id) << "its own id is no part of it";
}

TEST(Letter, HasLinesThatAServerTakes) {
  Letter letter = sample_letter();
  letter.text += std::string(5000, 'x') + "\n";
  letter.subject = std::string(3000, 's') + " end";
  std::istringstream lines{as_eml(letter)};
  for (std::string line; std::getline(lines, line);) {
    ASSERT_TRUE(line.ends_with('\r')) << "RFC 5321 section 2.3.8: lines end with CRLF";
    ASSERT_LE(line.size(), 999u) << "RFC 5322 section 2.1.1: 998 characters and the line end";
    ASSERT_EQ(line.find('\r'), line.size() - 1);
    for (const char c : line) ASSERT_TRUE(c > 0) << "no bytes over 127 and no NUL without being encoded";
  }
}

struct Nasty {
  std::string subject;
  std::string seen;  // what a reader must see
};

const std::vector<Nasty> kNasty{
    {"Lantern\r\nBcc: thief@example.net\r\n\r\nbody", "Lantern Bcc: thief@example.net body"},
    {"Lantern\nX: y", "Lantern X: y"},
    {std::string{"Lan\0tern", 8}, "Lan\xEF\xBF\xBDtern"},
    {"Lan\xE2\x80\xA8tern\xC2\x85\xC2\x85 x", "Lan tern  x"},
    {"Lantern \xF0\x9F\x8E\xA3 47 \xC2\xB0""F", "Lantern \xF0\x9F\x8E\xA3 47 \xC2\xB0""F"},
    {"\xD7\xA0\xD7\x94\xD7\xA8 \xE2\x80\xAE""Lantern", "\xD7\xA0\xD7\x94\xD7\xA8 Lantern"},
    {"\xE2\x81\xA8\xD7\xA0\xD7\x94\xD7\xA8\xE2\x81\xA9: 1,850 cfs", "\xE2\x81\xA8\xD7\xA0\xD7\x94\xD7\xA8\xE2\x81\xA9: 1,850 cfs"},
    {"=?utf-8?q?Bcc=3A?= x", "= ?utf-8?q?Bcc=3A?= x"},
    {"Lan\xFFtern", "Lan\xEF\xBF\xBDtern"},
    {std::string(500, 'a') + " " + std::string(500, 'b'), std::string(500, 'a') + " " + std::string(500, 'b')},
};

TEST(Letter, TakesNoHeaderFromItsSubjectAndShowsItAsItWasMeant) {
  Letter letter = sample_letter();
  const auto usual = head_names(read_letter(letter));
  for (const auto& [subject, seen] : kNasty) {
    letter.subject = subject;
    const Json read = read_letter(letter);
    EXPECT_EQ(head_names(read), usual) << seen;
    EXPECT_THAT(head_values(read, "Subject"), ::testing::ElementsAre(seen));
    EXPECT_EQ(read.at("defects"), Json::array()) << seen;
    EXPECT_TRUE(read.at("tree").contains("multipart/mixed")) << seen;
  }
}

TEST(Letter, TakesNoHeaderFromAnAddressOrAFileName) {
  Letter letter = sample_letter();
  const auto usual = head_names(read_letter(letter));
  letter.from = "plan@example.org\r\nBcc: thief@example.net";
  letter.to = {"wren@example.org>\r\nBcc: <thief@example.net", "marten@example.org"};
  letter.message_id = "x@y>\r\nBcc: <thief@example.net";
  letter.attachments[0].file_name = "sheet\"\r\nContent-Type: text/html\r\n\xD7\xA0\xD7\x94\xD7\xA8.pdf";
  letter.pictures[0].name = "h>\r\nX: y";
  const Json read = read_letter(letter);
  EXPECT_EQ(head_names(read), usual);
  const Json& file = read.at("tree").at("multipart/mixed").at(1);
  EXPECT_EQ(file.at("type"), "application/pdf");
  EXPECT_EQ(file.at("file"), "sheet\" Content-Type: text/html \xD7\xA0\xD7\x94\xD7\xA8.pdf") << "RFC 2231";
}

}  // namespace
}  // namespace floatwright::testing
