# Development variant: warnings are errors, assertions on.   cmake -C .cmake/dev.cmake -B .build/dev
set(CMAKE_BUILD_TYPE "Debug" CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -g1 -D_GLIBCXX_ASSERTIONS" CACHE STRING "")
set(PUTEAL_WARNINGS_AS_ERRORS ON CACHE BOOL "")
