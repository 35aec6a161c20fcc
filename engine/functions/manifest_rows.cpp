/// Looks into rows of a manifest, and chooses their reader.
#include "functions/manifest_rows.h"

namespace puteal
{

const ManifestValue *ManifestRow::find(std::string_view key) const
{
    for (const auto &[name, value] : values) {
        if (name == key)
            return &value;
    }
    return nullptr;
}

std::string ManifestRow::words(std::string_view key) const
{
    const auto *value = find(key);
    return value ? value->words : std::string();
}

double ManifestRow::number(std::string_view key, double otherwise) const
{
    const auto *value = find(key);
    return value && value->kind == ManifestValue::Kind::number ? value->number : otherwise;
}

std::vector<std::string> ManifestRow::list(std::string_view key) const
{
    return wordsOf(find(key));
}

std::vector<std::string> wordsOf(const ManifestValue *list)
{
    std::vector<std::string> all;
    if (list) {
        all.reserve(list->items.size());
        for (const auto &item : list->items)
            all.push_back(item.words);
    }
    return all;
}

Result<std::vector<ManifestRow>> readRows(std::string_view text)
{
    if (auto plain = readPlainRows(text))
        return std::move(*plain);
    return readTomlRows(text);
}

} // namespace puteal
