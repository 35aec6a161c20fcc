# Sanitizer variant (clang): address and undefined behavior, fuzz programs, no window.   cmake -C .cmake/asan.cmake -B .build/asan
set(CMAKE_CXX_COMPILER "clang++-14" CACHE STRING "")
set(CMAKE_BUILD_TYPE "Debug" CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g1 -fno-omit-frame-pointer -fsanitize=address,undefined,fuzzer-no-link -fno-sanitize-recover=undefined" CACHE STRING "")
set(PUTEAL_DESK OFF CACHE BOOL "")
set(PUTEAL_FUZZ ON CACHE BOOL "")
