#include "lang/render/page/packed.hpp"

#include <zlib.h>

#include <vector>

#include "tests/support/catch.hpp"

using leat::render::digest;
using leat::render::packed;

TEST_CASE("a digest is that of the standard's examples") {
  // FIPS 180-4, example values of SHA-256: "abc", and the empty text; in base64 (RFC 4648).
  CHECK(digest("abc") == "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
  CHECK(digest("") == "sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=");
}

namespace {

std::vector<unsigned char> bytes_of(std::string const& base64) {
  std::string const digits = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::vector<unsigned char> bytes;
  unsigned group = 0;
  int bits = 0;
  for (char letter : base64) {
    if (letter == '=') break;
    group = group << 6 | static_cast<unsigned>(digits.find(letter));
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes.push_back(static_cast<unsigned char>(group >> bits & 255u));
  }
  return bytes;
}

std::string inflated(std::string const& text, std::size_t length) {
  auto const bytes = bytes_of(text);
  std::string result(length, '\0');
  auto room = static_cast<uLongf>(length);
  REQUIRE(uncompress(reinterpret_cast<Bytef*>(result.data()), &room, bytes.data(),
                     static_cast<uLong>(bytes.size())) == Z_OK);
  REQUIRE(room == length);
  return result;
}

}  // namespace

TEST_CASE("what is packed comes back, whatever its length") {
  std::string text;
  for (int i = 0; i < 300; ++i) {
    auto const base64 = packed(text);
    CHECK(base64.size() % 4 == 0);
    if (!text.empty()) CHECK(inflated(base64, text.size()) == text);
    text += static_cast<char>(i * 37);
  }
}
