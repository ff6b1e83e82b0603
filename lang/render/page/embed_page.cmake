# Makes a source file that holds the page's files:
#   cmake -DFOLDER=lang/render/page -DSCRIPTS=a.js,b.js -DSOURCE=... -P embed_page.cmake
# The scripts are put behind each other, in the order given. A raw string may be as long as 64 kB in standard
# C++, so a text is cut into lines' pieces that the compiler joins.
function(embed name text)
  string(REPLACE "\n" "\n)leat_page\"\nR\"leat_page(" text "${text}")
  file(APPEND "${SOURCE}" "char const* const ${name} = R\"leat_page(${text})leat_page\";\n")
endfunction()

file(WRITE "${SOURCE}" "#include \"lang/render/page/page_pieces.hpp\"\n\nnamespace leat::render {\n")
file(READ "${FOLDER}/page.html" form)
embed(page_template "${form}")
file(READ "${FOLDER}/page.css" style)
embed(page_style "${style}")
string(REPLACE "," ";" scripts "${SCRIPTS}")
set(script "")
foreach(name IN LISTS scripts)
  file(READ "${FOLDER}/script/${name}" text)
  string(APPEND script "${text}")
endforeach()
embed(page_script "${script}")
file(APPEND "${SOURCE}" "}  // namespace leat::render\n")
