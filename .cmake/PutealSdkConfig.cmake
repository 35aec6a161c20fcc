# find_package(PutealSdk): build plugins against an installed Puteal.
#   puteal_add_plugin(NAME SOURCE...)   a shared library NAME.so with NAME.plugin.toml beside it, in ${CMAKE_BINARY_DIR}/plugins;
#                                       `cmake --install` puts both where the installed programs look.
get_filename_component(PUTEAL_PREFIX "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)
find_program(PUTEAL_MANIFEST puteal-manifest HINTS "${PUTEAL_PREFIX}/bin" REQUIRED)

if(NOT TARGET Puteal::sdk)
  add_library(Puteal::sdk INTERFACE IMPORTED)
  target_include_directories(Puteal::sdk INTERFACE "${PUTEAL_PREFIX}/include/puteal")
  target_compile_features(Puteal::sdk INTERFACE cxx_std_20)
endif()

function(puteal_add_plugin name)
  set(folder ${CMAKE_BINARY_DIR}/plugins)
  add_library(${name} MODULE ${ARGN})
  target_link_libraries(${name} PRIVATE Puteal::sdk)
  set_target_properties(${name} PROPERTIES PREFIX "" CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON
    LIBRARY_OUTPUT_DIRECTORY ${folder})
  # The tool refuses a function that its author has not finished: no source, one example, an unreadable unit ...
  add_custom_command(TARGET ${name} POST_BUILD
    COMMAND ${PUTEAL_MANIFEST} $<TARGET_FILE:${name}> ${folder}/${name}.plugin.toml VERBATIM)
  install(FILES ${folder}/${name}.plugin.toml $<TARGET_FILE:${name}> DESTINATION ${PUTEAL_PREFIX}/lib/puteal/plugins)
endfunction()
