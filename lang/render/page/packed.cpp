#include "lang/render/page/packed.hpp"

#include <sha2.h>
#include <zlib.h>

#include <array>
#include <cstdint>
#include <new>
#include <vector>

#include "engine/contract.hpp"

namespace leat::render {

namespace {

std::string base64(std::vector<unsigned char> const& bytes) {
  constexpr std::string_view digits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t at = 0; at < bytes.size(); at += 3) {
    auto const left = bytes.size() - at;
    auto const byte = [&](std::size_t i) -> std::uint32_t { return i < left ? bytes[at + i] : 0u; };
    auto const group = byte(0) << 16 | byte(1) << 8 | byte(2);
    text += digits[group >> 18];
    text += digits[group >> 12 & 63];
    text += left > 1 ? digits[group >> 6 & 63] : '=';
    text += left > 2 ? digits[group & 63] : '=';
  }
  return text;
}

}  // namespace

std::string packed(std::string_view text) {
  auto const length = static_cast<uLong>(text.size());
  auto room = compressBound(length);
  std::vector<unsigned char> bytes(room);
  auto const code = compress2(bytes.data(), &room, reinterpret_cast<Bytef const*>(text.data()),
                              length, Z_BEST_COMPRESSION);
  if (code == Z_MEM_ERROR) throw std::bad_alloc();
  require(code == Z_OK, "a text is deflated into the room it can need");
  bytes.resize(room);
  return base64(bytes);
}

std::string digest(std::string_view text) {
  SHA2_CTX context;
  SHA256Init(&context);
  SHA256Update(&context, reinterpret_cast<std::uint8_t const*>(text.data()), text.size());
  std::vector<unsigned char> bytes(SHA256_DIGEST_LENGTH);
  SHA256Final(bytes.data(), &context);
  return "sha256-" + base64(bytes);
}

}  // namespace leat::render
