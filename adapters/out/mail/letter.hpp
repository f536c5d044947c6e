#pragma once
// A letter as mail readers know it, and its bytes: text, HTML with pictures inside it, attached files (RFC 5322, RFC 2045
// to 2047, RFC 2231). The same letter is always the same bytes. Lines end with CRLF, as they go to a server.
#include <string>
#include <vector>

#include "engine/units/instant.hpp"

namespace floatwright {

struct Picture {
  std::string name;   // letters, digits and hyphens: "hydrograph"
  std::string bytes;  // PNG
};

struct Attachment {
  std::string file_name, media_type, bytes;  // media type as "application/pdf"
};

struct Letter {
  std::string from;             // a bare address; so are those in `to`
  std::vector<std::string> to;
  std::string subject;          // a line end or a control character in it becomes a space
  std::string text;             // lines end with \n
  std::string html;             // may be empty
  std::vector<Picture> pictures;
  std::vector<Attachment> attachments;
  Instant date{};
  std::string message_id;       // without angle brackets
};

[[nodiscard]] std::string as_eml(const Letter& letter);

// Made of the letter's own bytes and the sender's domain: the same letter has the same one.
[[nodiscard]] std::string message_id(const Letter& letter);

// What the HTML calls a picture by: "cid:..." (RFC 2392).
[[nodiscard]] std::string picture_address(const std::string& name);

}  // namespace floatwright
