#include "adapters/out/pdf/document_language.hpp"

#include <fmt/format.h>

#include <charconv>
#include <optional>

namespace floatwright {
namespace {

std::optional<std::size_t> number_after(std::string_view text, std::string_view key) {
  std::size_t at = text.rfind(key);
  if (at == std::string_view::npos) return std::nullopt;
  at += key.size();
  while (at < text.size() && (text[at] == ' ' || text[at] == '\n')) ++at;
  std::size_t value = 0;
  const auto [end, error] = std::from_chars(text.data() + at, text.data() + text.size(), value);
  return error == std::errc{} ? std::optional<std::size_t>(value) : std::nullopt;
}

// "<< ... >>" of an object, as it stands.
std::optional<std::string> dictionary_of(std::string_view pdf, std::size_t object) {
  const std::string head = fmt::format("\n{} 0 obj\n", object);
  const std::size_t begin = pdf.rfind(head);
  if (begin == std::string_view::npos) return std::nullopt;
  const std::size_t from = begin + head.size(), to = pdf.find("endobj", from);
  if (to == std::string_view::npos || !pdf.substr(from).starts_with("<<")) return std::nullopt;
  return std::string(pdf.substr(from, to - from));
}

}  // namespace

Result<std::string> with_language(std::string pdf, std::string_view language) {
  const std::size_t trailer_at = pdf.rfind("\ntrailer");
  if (trailer_at == std::string::npos) return tl::unexpected(Failure{"PDF: no trailer found to write the language into", 74});
  const std::string trailer = pdf.substr(trailer_at);
  const auto root = number_after(trailer, "/Root"), size = number_after(trailer, "/Size"),
             info = number_after(trailer, "/Info"), table = number_after(trailer, "startxref");
  const auto catalog = root ? dictionary_of(pdf, *root) : std::nullopt;
  if (!catalog || !size || !info || !table)
    return tl::unexpected(Failure{"PDF: no catalog found to write the language into", 74});

  if (pdf.back() != '\n') pdf += '\n';
  const std::size_t object_at = pdf.size();
  pdf += fmt::format("{} 0 obj\n<< /Lang ({})\n{}endobj\n", *root, language, catalog->substr(2));
  const std::size_t table_at = pdf.size();
  pdf += fmt::format("xref\n{} 1\n{:010} 00000 n \ntrailer\n<< /Size {} /Root {} 0 R /Info {} 0 R /Prev {} >>\n", *root,
                     object_at, *size, *root, *info, *table);
  pdf += fmt::format("startxref\n{}\n%%EOF\n", table_at);
  return pdf;
}

}  // namespace floatwright
