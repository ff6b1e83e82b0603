# The program, its manual and completions, the documents and the examples.
include(GNUInstallDirs)

set(shell_files ${CMAKE_BINARY_DIR}/share)
add_custom_command(
  OUTPUT ${shell_files}/written
  COMMAND ${CMAKE_COMMAND} -DLEAT=$<TARGET_FILE:leat> -DINTO=${shell_files}
          -P ${CMAKE_SOURCE_DIR}/lang/cli/write_shell_files.cmake
  DEPENDS leat ${CMAKE_SOURCE_DIR}/lang/cli/write_shell_files.cmake
  COMMENT "Writing manual pages and completions")
add_custom_target(leat_shell_files ALL DEPENDS ${shell_files}/written)

install(TARGETS leat RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY ${shell_files}/man1 DESTINATION ${CMAKE_INSTALL_MANDIR})
install(FILES ${shell_files}/leat.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME leat)
install(FILES ${shell_files}/_leat DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/site-functions)
install(FILES ${shell_files}/leat.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)
install(DIRECTORY docs/ DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(DIRECTORY examples DESTINATION ${CMAKE_INSTALL_DOCDIR} FILES_MATCHING PATTERN "*.leat")
