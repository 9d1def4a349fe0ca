# Asks for the options of a compiler: cmake -DCOMPILER=id -DFRONTEND=variant -P arithmetic_options.cmake
include("${CMAKE_CURRENT_LIST_DIR}/../../cmake/Arithmetic.cmake")
levelbook_arithmetic_options(options "${COMPILER}" "${FRONTEND}")
message("options of ${COMPILER}: ${options}")
