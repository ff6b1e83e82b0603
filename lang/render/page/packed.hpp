#pragma once
#include <string>
#include <string_view>

// Bytes made fit to stand in a page.
namespace leat::render {

// The text deflated (zlib, RFC 1950) and written in base64 (RFC 4648). The same library gives the
// same bytes.
std::string packed(std::string_view text);

// What a Content-Security-Policy names a script or style by: "sha256-...".
std::string digest(std::string_view text);

}  // namespace leat::render
