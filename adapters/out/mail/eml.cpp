#include <gmime/gmime.h>

#include <algorithm>
#include <memory>

#include "adapters/out/mail/letter.hpp"

namespace floatwright {
namespace {

struct GivenBack {
  void operator()(void* object) const { g_object_unref(object); }
  void operator()(GDateTime* date) const { g_date_time_unref(date); }
  void operator()(GMimeFormatOptions* options) const { g_mime_format_options_free(options); }
  void operator()(gchar* text) const { g_free(text); }
};
template <class T>
using Owned = std::unique_ptr<T, GivenBack>;
using Part = Owned<GMimeObject>;

// An address goes out in printable ASCII and never ends the brackets around it; the readers of files tell what is wrong
// with one long before.
std::string bare(std::string address) {
  std::erase_if(address, [](char c) { return c <= ' ' || c > '~' || c == '<' || c == '>' || c == ',' || c == ';'; });
  return address;
}

// Controls and line ends, which end a header field, and the marks that override the direction of writing.
bool breaks_a_header(gunichar sign) {
  const GUnicodeType type = g_unichar_type(sign);
  return type == G_UNICODE_CONTROL || type == G_UNICODE_LINE_SEPARATOR || type == G_UNICODE_PARAGRAPH_SEPARATOR ||
         (sign >= 0x202A && sign <= 0x202E);
}

// UTF-8 on one line. Text that begins like an encoded word (RFC 2047 section 2) would be decoded by readers: a space keeps
// it as it was typed.
std::string header_text(const std::string& text) {
  const Owned<gchar> valid{g_utf8_make_valid(text.data(), static_cast<gssize>(text.size()))};
  std::string out;
  for (const gchar *at = valid.get(), *next = at; *at != '\0'; at = next) {
    next = g_utf8_next_char(at);
    if (!breaks_a_header(g_utf8_get_char(at))) out.append(at, next);
    else if (!out.ends_with(' ')) out += ' ';
  }
  for (auto at = out.find("=?"); at != std::string::npos; at = out.find("=?", at)) out.insert(at + 1, " ");
  return out;
}

std::string content_id(const std::string& name) { return bare(name) + "@floatwright"; }

Part part(const std::string& media_type, const std::string& bytes, GMimeContentEncoding encoding) {
  const auto slash = media_type.find('/');
  GMimePart* made = g_mime_part_new_with_type(media_type.substr(0, slash).c_str(),
                                              slash == std::string::npos ? "" : media_type.substr(slash + 1).c_str());
  const Owned<GMimeStream> stream{g_mime_stream_mem_new_with_buffer(bytes.data(), bytes.size())};
  const Owned<GMimeDataWrapper> content{g_mime_data_wrapper_new_with_stream(stream.get(), GMIME_CONTENT_ENCODING_DEFAULT)};
  g_mime_part_set_content(made, content.get());
  g_mime_part_set_content_encoding(made, encoding);
  return Part{GMIME_OBJECT(made)};
}

Part text_part(const std::string& media_type, const std::string& text) {
  Part made = part(media_type, text, GMIME_CONTENT_ENCODING_QUOTEDPRINTABLE);
  g_mime_object_set_content_type_parameter(made.get(), "charset", "utf-8");
  return made;
}

// A boundary with "=_" in it cannot stand in quoted-printable text nor in base64 (RFC 2045 section 6.7).
Part multipart(const std::string& subtype, std::vector<Part> parts) {
  GMimeMultipart* made = g_mime_multipart_new_with_subtype(subtype.c_str());
  g_mime_multipart_set_boundary(made, ("=_" + subtype).c_str());
  for (const Part& inner : parts) g_mime_multipart_add(made, inner.get());
  return Part{GMIME_OBJECT(made)};
}

void place(GMimeObject* object, const char* disposition, const std::string& file_name) {
  g_mime_object_set_disposition(object, disposition);
  g_mime_part_set_filename(GMIME_PART(object), header_text(file_name).c_str());
}

Part html_with_pictures(const Letter& letter) {
  Part html = text_part("text/html", letter.html);
  if (letter.pictures.empty()) return html;
  std::vector<Part> parts;
  parts.push_back(std::move(html));
  for (const Picture& picture : letter.pictures) {
    Part image = part("image/png", picture.bytes, GMIME_CONTENT_ENCODING_BASE64);
    g_mime_object_set_content_id(image.get(), content_id(picture.name).c_str());
    place(image.get(), "inline", picture.name + ".png");
    parts.push_back(std::move(image));
  }
  Part related = multipart("related", std::move(parts));
  g_mime_object_set_content_type_parameter(related.get(), "type", "text/html");  // RFC 2387 section 3.1
  return related;
}

Part text_and_html(const Letter& letter) {
  Part text = text_part("text/plain", letter.text);
  if (letter.html.empty()) return text;
  std::vector<Part> parts;
  parts.push_back(std::move(text));
  parts.push_back(html_with_pictures(letter));
  return multipart("alternative", std::move(parts));
}

Part body(const Letter& letter) {
  Part read = text_and_html(letter);
  if (letter.attachments.empty()) return read;
  std::vector<Part> parts;
  parts.push_back(std::move(read));
  for (const Attachment& attachment : letter.attachments) {
    Part file = part(attachment.media_type, attachment.bytes, GMIME_CONTENT_ENCODING_BASE64);
    place(file.get(), "attachment", attachment.file_name);
    parts.push_back(std::move(file));
  }
  return multipart("mixed", std::move(parts));
}

void put_head(GMimeMessage* message, const Letter& letter) {
  g_mime_message_add_mailbox(message, GMIME_ADDRESS_TYPE_FROM, nullptr, bare(letter.from).c_str());
  for (const std::string& address : letter.to)
    g_mime_message_add_mailbox(message, GMIME_ADDRESS_TYPE_TO, nullptr, bare(address).c_str());
  g_mime_message_set_subject(message, header_text(letter.subject).c_str(), "utf-8");
  const Owned<GDateTime> date{g_date_time_new_from_unix_utc(letter.date.time_since_epoch().count())};
  g_mime_message_set_date(message, date.get());
  if (!letter.message_id.empty()) g_mime_message_set_message_id(message, bare(letter.message_id).c_str());
  // The keyword that the IANA registry "Auto-Submitted Header Field Keywords" gives mail from a process (RFC 3834): nobody's
  // absence note answers it.
  g_mime_object_set_header(GMIME_OBJECT(message), "Auto-Submitted", "auto-generated", nullptr);
}

std::string written(GMimeMessage* message) {
  const Owned<GMimeFormatOptions> options{g_mime_format_options_new()};
  g_mime_format_options_set_newline_format(options.get(), GMIME_NEWLINE_FORMAT_DOS);
  const Owned<gchar> text{g_mime_object_to_string(GMIME_OBJECT(message), options.get())};
  return text.get();  // holds no NUL: every part is encoded
}

}  // namespace

std::string as_eml(const Letter& letter) {
  static const bool kReady = (g_mime_init(), true);
  (void)kReady;
  const Owned<GMimeMessage> message{g_mime_message_new(TRUE)};
  put_head(message.get(), letter);
  g_mime_message_set_mime_part(message.get(), body(letter).get());
  return written(message.get());
}

std::string message_id(const Letter& letter) {
  Letter nameless = letter;
  nameless.message_id.clear();
  const std::string bytes = as_eml(nameless);
  const Owned<gchar> digest{g_compute_checksum_for_data(G_CHECKSUM_SHA256, reinterpret_cast<const guchar*>(bytes.data()), bytes.size())};
  return std::string{digest.get()}.substr(0, 32) + bare(letter.from).substr(std::min(letter.from.rfind('@'), letter.from.size()));
}

std::string picture_address(const std::string& name) { return "cid:" + content_id(name); }

}  // namespace floatwright
