/// puteal-manifest LIBRARY OUT.toml: writes a plugin's manifest at build time, or says what its author still
/// owes.
#include <cstdio>
#include <fstream>
#include <string>

#include "functions/functions_page.h"

namespace
{

int write(const char *path, const std::string &text)
{
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    if (out)
        return 0;
    std::fprintf(stderr, "cannot write %s\n", path);
    return 5;
}

} // namespace

int main(int count, char **words)
{
    if (count != 3) {
        std::fputs("use: puteal-manifest LIBRARY OUT.toml\n     puteal-manifest --page OUT.md\n", stderr);
        return 2;
    }
    const puteal::UnitTable units;
    if (std::string(words[1]) == "--page")
        return write(words[2], puteal::functionsPage(
                                   *puteal::Registry::create(units, puteal::PluginFolders::standard())));
    const auto manifest = puteal::manifestOf(words[1], units);
    if (!manifest) {
        std::fprintf(stderr, "%s: %s\n", words[1], manifest.error().words.c_str());
        return 6;
    }
    return write(words[2], *manifest);
}
