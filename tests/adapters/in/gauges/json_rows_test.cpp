// Texts after RFC 8259 (section 4: names in an object should be unique; 6: no NaN; 8.1: UTF-8) and pointers after RFC
// 6901.
#include "adapters/in/gauges/json_rows.hpp"

#include <gmock/gmock.h>

#include <vector>

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

enum Slot : int { kStation, kValue, kCodes };

const JsonShape kShape{
    {{"/station", kStation}, {"/rows/*/v", kValue}, {"/rows/*/codes", kCodes}, {"/rows/*/codes/*", kCodes}},
    {{"/rows/*", 0}, {"", 1}}};

std::string told(const JsonValue& value) {
  using Kind = JsonValue::Kind;
  if (value.is(Kind::Absent)) return "absent";
  if (value.is(Kind::Null)) return "null";
  if (value.is(Kind::Number)) return std::to_string(value.number).substr(0, 4);
  return value.is(Kind::Object) ? "object" : value.text;
}

// One line a row: its place, value and codes; the last one: the whole.
std::vector<std::string> rows_of(const std::string& text, const JsonShape& shape = kShape) {
  std::vector<std::string> out;
  const auto read = read_json_rows(text, "a.json", shape, [&](const JsonRow& row) {
    out.push_back(row.row == 1 ? told(row[kStation]) : row.place() + " " + told(row[kValue]) + " " + told(row[kCodes]));
  });
  if (!read) return {read.error().what};
  return out;
}

std::string failure_of(const std::string& text) { return rows_of(text).front(); }

TEST(JsonRows, AreToldAsTheyEndWhateverTheOrderOfKeys) {
  EXPECT_THAT(rows_of(R"({"station":"s","rows":[{"v":1.5,"codes":"P"},{"codes":["P","e"],"v":"x"}]})"),
              ElementsAre("/rows/0 1.50 P", "/rows/1 x P e", "s"));
  EXPECT_THAT(rows_of(R"({"rows":[{"codes":null,"v":null}],"station":"s"})"), ElementsAre("/rows/0 null null", "s"));
}

TEST(JsonRows, KeepNothingOfTheRowBefore) {
  EXPECT_THAT(
      rows_of(R"({"rows":[{"v":1,"codes":["a","b"]},{},7,{"codes":[null,"c",3]}]})"),
      ElementsAre("/rows/0 1.00 a b", "/rows/1 absent absent", "/rows/2 absent absent", "/rows/3 absent c", "absent"));
}

TEST(JsonRows, PassOverWhatIsNotDeclared) {
  EXPECT_THAT(rows_of(R"({"x":{"rows":[{"v":1}]},"rows":[{"w":{"v":3},"v":{"v":2}}],"y":[[[{"station":"t"}]]]})"),
              ElementsAre("/rows/0 object absent", "absent"));
}

TEST(JsonRows, TakePlacesInAListAndAnyKey) {
  const JsonShape shape{{{"/a/1/v", kValue}, {"/b/*/*", kValue}, {"/codes", kCodes}}, {{"/a", 0}, {"/b/*/*", 0}}};
  EXPECT_THAT(rows_of(R"({"a":[{"v":1},{"v":2},{"v":3}],"b":{"x/y":[4,null],"z":[5]}})", shape),
              ElementsAre("/a 2.00 absent", "/b/x~1y/0 4.00 absent", "/b/x~1y/1 null absent", "/b/z/0 5.00 absent"));
}

TEST(JsonRows, RefuseAKeyThatStandsTwiceInOneObjectWherever) {
  const std::string what = ": this key stands twice in one object, so its value is not certain";
  EXPECT_EQ(failure_of(R"({"rows":[{"v":1},{"v":1,"codes":"P","v":2}]})"), "a.json: /rows/1/v" + what);
  EXPECT_EQ(failure_of(R"({"x":[{"a":1,"b":2},{"b":3,"c":4,"b":5}]})"), "a.json: /x/1/b" + what);
  std::string many = R"({"x":{)";
  for (int i = 0; i < 200; ++i) many += "\"k" + std::to_string(i) + "\":0,";
  EXPECT_THAT(failure_of(many + R"("k7":1}})"), HasSubstr("/x/k7" + what));
  EXPECT_THAT(failure_of(many + R"("k150":1}})"), HasSubstr("/x/k150" + what));
  EXPECT_THAT(rows_of(many + R"("k200":1}})"), ElementsAre("absent"));
}

TEST(JsonRows, RefuseWhatWouldTakeManyTimesItsLengthOfMemory) {
  std::string keys = R"({"x":{)";
  for (int i = 0; i < 11'000; ++i) keys += "\"" + std::to_string(i) + "\":0,";
  EXPECT_THAT(failure_of(keys + R"("last":0}})"), HasSubstr("more keys than any service sends"));
  std::string codes;
  for (int i = 0; i < 10'000; ++i) codes += "\"codeword\",";
  EXPECT_THAT(failure_of(R"({"rows":[{"codes":[)" + codes + R"("last"]}]})"),
              HasSubstr("a text longer than any service sends"));
  EXPECT_THAT(rows_of(R"({"y":")" + std::string(100'000, 'y') + R"("})"), ElementsAre("absent"));
}

TEST(JsonRows, RefuseNestingPastWhatAServiceSends) {
  EXPECT_THAT(failure_of(std::string(10000, '[')), HasSubstr("nested deeper than 64 levels"));
  EXPECT_THAT(failure_of(R"({"rows":)" + std::string(10000, '[')), HasSubstr("nested deeper than 64 levels"));
  EXPECT_THAT(rows_of(std::string(64, '[') + std::string(64, ']')), ElementsAre("absent"));
}

TEST(JsonRows, RefuseWhatIsNoJsonWithItsPlace) {
  EXPECT_EQ(failure_of(""), "a.json: empty; ask the service again");
  EXPECT_THAT(failure_of("\n <html>"), HasSubstr("a web page or XML, not JSON (it begins \"<html>\")"));
  EXPECT_THAT(failure_of("{\"rows\":\n[NaN]}"), HasSubstr("a.json: line 2, column 2: not JSON"));
  EXPECT_THAT(failure_of(R"({"rows":[{"v":1e999}]})"), HasSubstr("a number too large to be one"));
  EXPECT_THAT(failure_of("{\"rows\":[{\"v\":\"\xff\"}]}"), HasSubstr("line 1, column 16: not JSON"));
  EXPECT_THAT(failure_of(R"({"rows":[{"v":1}])"), HasSubstr("the text ends too early, it was cut short"));
  EXPECT_THAT(failure_of(R"({"rows":[]} {})"), HasSubstr("line 1, column 13: not JSON"));
}

TEST(JsonRows, AreNoneWhereTheListIsEmpty) {
  EXPECT_THAT(rows_of(R"({"rows":[]})"), ElementsAre("absent"));
  EXPECT_THAT(rows_of("[]", JsonShape{{}, {}}), IsEmpty());
}

}  // namespace
}  // namespace floatwright
