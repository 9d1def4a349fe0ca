# levelbook_arithmetic_options(OUT COMPILER FRONTEND): the options that keep a compiler from contracting a*b+c into one
# operation, which would round once where the library's formulas round twice, and so change bits from machine to machine.
# COMPILER and FRONTEND are CMAKE_CXX_COMPILER_ID and CMAKE_CXX_COMPILER_FRONTEND_VARIANT. A compiler that is not
# served is an error: without the options nothing of what the library promises about its bits would be known.
function(levelbook_arithmetic_options out compiler frontend)
  if(compiler MATCHES "^(GNU|Clang|AppleClang)$" AND NOT frontend STREQUAL "MSVC")
    set(options -ffp-contract=off)
  elseif(compiler STREQUAL "Clang") # clang-cl
    set(options /clang:-ffp-contract=off)
  elseif(compiler STREQUAL "IntelLLVM" AND NOT frontend STREQUAL "MSVC")
    set(options -fp-model=precise -ffp-contract=off) # its own default is fast-math
  elseif(compiler STREQUAL "MSVC" OR compiler STREQUAL "IntelLLVM")
    set(options /fp:strict) # the only model that has never contracted: /fp:precise did before Visual Studio 2022
  else()
    message(FATAL_ERROR
      "levelbook: the compiler ${compiler} is not served: it is not known how to keep it from contracting a*b+c, which "
      "would change results. Served are GNU, Clang (also clang-cl), AppleClang, IntelLLVM and MSVC.")
  endif()
  set(${out} ${options} PARENT_SCOPE)
endfunction()
