// Words: every visible text by its key, in the language chosen.
//
// The texts themselves stand in catalogue.inc and nowhere else. Everything is UTF-8.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace carriageway {

/// Languages of the program. `pseudo` is English made longer, accented and bracketed, so that a
/// test or a translator sees text that was cut, laid over or never went through the catalogue.
enum class Language { english, spanish, pseudo };

/// A text of the catalogue.
enum class Word {
#define WORD(key, english, spanish) key,
#include "app/text/catalogue.inc"
#undef WORD
    count,  ///< how many there are; not a text
};

/// The text itself, with its placeholders {0}, {1}, ... Valid as long as the program runs.
/// `Word::count` and values outside the enum: empty.
std::string_view word(Language language, Word key);

/// The text with `{0}` replaced by the first argument, `{1}` by the second, and so on. Arguments
/// are put in as they are, braces within them included; a placeholder without an argument stays.
std::string say(Language language, Word key, std::initializer_list<std::string_view> arguments);

/// An English text as the pseudo-language has it; for texts that come from data.
std::string pseudo_text(std::string_view english);

/// Sentences one after the other, a space between.
std::string in_one_line(const std::vector<std::string>& sentences);

/// The text with its first letter made a capital, for the start of a line. Letters beyond ASCII
/// that Spanish starts words with are covered (á é í ó ú ñ); others stay.
std::string capitalised(std::string_view text);

/// The key's own name ("place_press"), for tests and messages to whoever maintains the catalogue.
std::string_view name_of(Word key);

/// The language that suits a locale's name, as the environment gives it ("es_MX.UTF-8", "es",
/// "en-GB"): Spanish for any Spanish one, the pseudo-language for "en_XA" (the region that stands
/// for none in such names), English for everything else, the empty name included.
Language system_language(std::string_view locale_name);

}  // namespace carriageway
