#pragma once
// What was said between us and a mail server (RFC 5321 section 4.2: a reply is a code of three digits and words), and what
// it means for the letter. Only a reply of 250 to the whole letter makes it the server's; when the answer to its end is
// missing nobody knows.
#include <string>
#include <string_view>
#include <vector>

namespace floatwright {

struct Exchange {
  std::string command;  // "RCPT TO:<wren@example.org>"; empty: the server's greeting
  int code = 0;         // 0: no reply came
  std::string words;    // the reply as the server wrote it, code first, fit to print
};

class Conversation {
 public:
  Conversation() : said_(1) {}
  void we_say(std::string_view line);
  void server_says(std::string_view line);
  void letter_ends();  // its last bytes go out
  [[nodiscard]] bool letter_ended() const { return ended_; }
  [[nodiscard]] const std::vector<Exchange>& said() const { return said_; }

 private:
  std::vector<Exchange> said_;
  bool ended_ = false;
};

enum class Fate {
  Taken,    // the server has it
  Later,    // it has not, and may take it another time
  Refused,  // it has not, and never will
  Unknown   // the whole letter went out and no answer came
};

struct RefusedAddress {
  std::string address, words;
  bool for_good = false;
};

struct Delivery {
  Fate fate = Fate::Later;              // for those addresses that were not refused by themselves
  bool reached = false;                 // the server was ready for letters; else no other need be tried now
  std::string why;                      // the server's own words, or ours when it said none; empty when taken
  std::vector<RefusedAddress> refused;  // by themselves
};

// `taken`: the transfer ended well. `trouble`: what to say where the server said nothing.
[[nodiscard]] Delivery outcome(const Conversation& conversation, bool taken, const std::string& trouble);

}  // namespace floatwright
