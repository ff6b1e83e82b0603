#pragma once

// The characters of the language. Bytes from 0x80 up belong to code points outside ASCII; the
// text's bytes were found sound before.
namespace leat::grammar {

inline bool is_blank(char byte) { return byte == ' ' || byte == '\t'; }
inline bool is_line_break(char byte) { return byte == '\n' || byte == '\r'; }
inline bool is_digit(char byte) { return byte >= '0' && byte <= '9'; }
inline bool is_letter_byte(char byte) {
  return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte == '_';
}
inline bool is_wide_byte(char byte) { return (static_cast<unsigned char>(byte) & 0x80u) != 0; }
inline bool is_continuation(char byte) {
  return (static_cast<unsigned char>(byte) & 0xc0u) == 0x80u;
}
// May belong to a word: what must not follow a word for it to have ended.
inline bool is_word_byte(char byte) {
  return is_letter_byte(byte) || is_digit(byte) || is_wide_byte(byte);
}

// The end of the line, before its line break.
char const* line_end(char const* at, char const* end);
// Bytes of the character at `at`, which is not the end.
int glyph_length(char const* at, char const* end);
// The end of the letters, digits and `_` from `at` on, if a letter or `_` begins them; else `at`.
char const* name_end(char const* at, char const* end);

// Whether a character can be shown in a message as it is.
bool is_visible(char32_t character);
// Why a character cannot be a mark: a sentence's rest such as "is two cells wide", or null if it
// can.
char const* unfitness(char32_t character);

}  // namespace leat::grammar
