# Makes a source file that holds a text: cmake -DTEXT=... -DSOURCE=... -P embed_manual.cmake
file(READ "${TEXT}" content)
file(WRITE "${SOURCE}" "#include \"lang/render/finding_pages.hpp\"\n
namespace leat::render {
char const* const findings_manual = R\"leat_manual(\n${content})leat_manual\";
}  // namespace leat::render\n")
