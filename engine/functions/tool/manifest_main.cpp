/// puteal-manifest LIBRARY OUT.toml: writes a plugin's manifest, or says what its author still owes.
#include <cstdio>
#include <fstream>

#include "functions/registry.h"

int main(int count, char **words)
{
    if (count != 3) {
        std::fputs("use: puteal-manifest LIBRARY OUT.toml\n", stderr);
        return 2;
    }
    const auto manifest = puteal::manifestOf(words[1], puteal::UnitTable());
    if (!manifest) {
        std::fprintf(stderr, "%s: %s\n", words[1], manifest.error().words.c_str());
        return 6;
    }
    std::ofstream out(words[2], std::ios::binary);
    out << *manifest;
    out.close();
    if (out)
        return 0;
    std::fprintf(stderr, "cannot write %s\n", words[2]);
    return 5;
}
