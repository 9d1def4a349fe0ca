# Installs into a prefix and moves it elsewhere; then leaves in two more copies what a packager might ship alone.
#   BUILD  levelbook's build tree   OUTPUT  folder for the prefixes   CONSUMERS  folder of the consumers' builds, emptied
#   LIB INCLUDE DATA  the folders in a prefix
file(REMOVE_RECURSE "${OUTPUT}" "${CONSUMERS}")
execute_process(COMMAND ${CMAKE_COMMAND} --install "${BUILD}" --prefix "${OUTPUT}/installed"
                OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
file(RENAME "${OUTPUT}/installed" "${OUTPUT}/moved")

foreach(file ${INCLUDE}/levelbook/levelbook.h ${INCLUDE}/levelbook/levelbook.hpp
             ${DATA}/levelbook/levelbook.index ${DATA}/levelbook/LICENSE
             ${LIB}/liblevelbook.a ${LIB}/liblevelbook.so ${LIB}/pkgconfig/levelbook.pc
             ${LIB}/cmake/levelbook/levelbook-config.cmake ${LIB}/cmake/levelbook/levelbook-config-version.cmake)
  if(NOT EXISTS "${OUTPUT}/moved/${file}")
    message(FATAL_ERROR "${file} was not installed")
  endif()
endforeach()
file(GLOB_RECURSE texts "${OUTPUT}/moved/*.cmake" "${OUTPUT}/moved/*.pc")
foreach(text IN LISTS texts)
  file(READ "${text}" content)
  string(FIND "${content}" "${OUTPUT}" prefix_at)
  string(FIND "${content}" "${BUILD}" build_at)
  if(NOT prefix_at EQUAL -1 OR NOT build_at EQUAL -1)
    message(FATAL_ERROR "${text} holds a path of the machine that built it")
  endif()
endforeach()

foreach(kind shared static)
  file(COPY "${OUTPUT}/moved/" DESTINATION "${OUTPUT}/only_${kind}")
endforeach()
file(GLOB shared "${OUTPUT}/only_static/${LIB}/liblevelbook.so*" "${OUTPUT}/only_static/${LIB}/cmake/levelbook/*-shared*")
file(GLOB static "${OUTPUT}/only_shared/${LIB}/liblevelbook.a" "${OUTPUT}/only_shared/${LIB}/cmake/levelbook/*-static*")
if(NOT shared OR NOT static)
  message(FATAL_ERROR "nothing to take away from the copies")
endif()
file(REMOVE ${shared} ${static})
