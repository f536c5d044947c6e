// Expected rows are those of Python's csv module (package python3) for the same text, which agree with RFC 4180
// section 2; what it takes without a word and we tell is said at the test.
#include "adapters/in/files/csv_rows.hpp"

#include <gmock/gmock.h>

namespace floatwright {
namespace {

using testing::ElementsAre;

struct Read {
  std::vector<std::vector<std::string>> rows;
  std::vector<int> lines;
  std::vector<std::string> faults;
};

Read all_of(std::string_view text, char separator = ',') {
  Read out;
  CsvRows rows(text, separator);
  std::vector<std::string> fields;
  while (rows.next(fields)) {
    out.rows.push_back(fields);
    out.lines.push_back(rows.line());
    if (!rows.fault().empty()) out.faults.push_back(rows.fault());
  }
  return out;
}

TEST(CsvRows, AreSplitAsTheStandardHasThem) {
  const Read read = all_of("a,b\r\n1,\"x,\"\"y\"\"\"\n\n\"l1\nl2\",2\r\n,\n3,4");
  EXPECT_THAT(read.rows, ElementsAre(ElementsAre("a", "b"), ElementsAre("1", "x,\"y\""), ElementsAre("l1\nl2", "2"),
                                     ElementsAre("", ""), ElementsAre("3", "4")));
  EXPECT_THAT(read.lines, ElementsAre(1, 2, 4, 6, 7));
  EXPECT_THAT(read.faults, ElementsAre());
}

TEST(CsvRows, HaveAnySeparatorAndLoseAByteOrderMark) {
  EXPECT_THAT(all_of("\xEF\xBB\xBF\"a\"; b;\n", ';').rows, ElementsAre(ElementsAre("a", " b", "")));
  EXPECT_THAT(all_of("a\tb", '\t').rows, ElementsAre(ElementsAre("a", "b")));
}

// Python ends the open field with the text, and joins what follows a closing quote: both are most often a slip.
TEST(CsvRows, TellAFieldThatIsNotClosedAndTextBehindOneThatIs) {
  EXPECT_THAT(all_of("a\n\"b\nc\n").faults, ElementsAre("a quoted field has no closing quote"));
  EXPECT_THAT(all_of("\"\"x,1\n").faults, ElementsAre("text follows the closing quote of a field"));
}

TEST(CsvRows, OfNothingAreNone) {
  EXPECT_THAT(all_of("").rows, ElementsAre());
  EXPECT_THAT(all_of("\xEF\xBB\xBF\r\n\n").rows, ElementsAre());
}

}  // namespace
}  // namespace floatwright
