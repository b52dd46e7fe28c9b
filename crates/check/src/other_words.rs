//! Words that people begin a step with and the language has another for.

/// What to say of such a word.
pub struct Other {
    /// What to do, as an order to the writer.
    pub advice: &'static str,
    /// The word that can take its place as it stands.
    pub write: Option<&'static str>,
}

const fn instead(advice: &'static str, write: &'static str) -> Other {
    Other {
        advice,
        write: Some(write),
    }
}

const fn otherwise(advice: &'static str) -> Other {
    Other {
        advice,
        write: None,
    }
}

const LOOK: &str = "To look at something write inspect; to read a figure off it write measure.";
const OIL: &str = "Write apply, what is put on, “to” and where: apply oil to shaft.";
const DO: &str = "Work in your own words is written do, with the words in quotes.";
const APART: &str = "Name what comes off: undo the fasteners, then remove the parts.";
const NEW: &str = "Write remove for the old one, then fit with new: fit cover new gasket.";

/// Common practice, no source.
const OTHERS: &[(&str, Other)] = &[
    ("adjust", instead("Write set.", "set")),
    ("align", instead("Write set, or fit … to its mark.", "set")),
    (
        "assemble",
        otherwise("Name what goes on: fit gear, shaft. Parts built up on the bench are a unit."),
    ),
    ("attach", instead("Write fit.", "fit")),
    ("check", otherwise(LOOK)),
    ("coat", otherwise(OIL)),
    ("detach", instead("Write remove.", "remove")),
    ("disassemble", otherwise(APART)),
    ("dismantle", otherwise(APART)),
    ("examine", instead("Write inspect.", "inspect")),
    ("grease", otherwise(OIL)),
    ("insert", instead("Write fit.", "fit")),
    ("install", instead("Write fit.", "fit")),
    (
        "loosen",
        instead(
            "Write slacken, or undo where they come right out.",
            "slacken",
        ),
    ),
    ("lubricate", otherwise(OIL)),
    ("mount", instead("Write fit.", "fit")),
    (
        "note",
        otherwise("A note belongs to a step: put it in quotes at the end of the step’s line."),
    ),
    ("oil", otherwise(OIL)),
    (
        "press",
        otherwise("Write fit and name the press: fit bearing with press."),
    ),
    ("refit", instead("Write fit.", "fit")),
    ("reinstall", instead("Write fit.", "fit")),
    ("renew", otherwise(NEW)),
    ("replace", otherwise(NEW)),
    ("rotate", instead("Write turn.", "turn")),
    ("run", otherwise(DO)),
    ("screw", instead("Write start, or tighten.", "start")),
    ("strip", otherwise(APART)),
    ("test", otherwise(DO)),
    (
        "torque",
        instead(
            "Write tighten. How tight stands on the fasteners, as torque and a figure.",
            "tighten",
        ),
    ),
    ("uninstall", instead("Write remove.", "remove")),
    ("unscrew", instead("Write undo.", "undo")),
    ("verify", otherwise(LOOK)),
    (
        "wait",
        otherwise(
            "Time that must pass stands on the step behind it: at least 2 h after glue is applied.",
        ),
    ),
];

/// What to say of a word that begins a line; none when the word is none of these.
pub fn other(word: &str) -> Option<&'static Other> {
    let word = word.to_lowercase();
    let found = OTHERS.iter().find(|(known, _)| *known == word);
    found.map(|(_, other)| other)
}

/// The one of these words that was probably meant.
pub fn nearest(word: &str) -> Option<&'static str> {
    syntax::nearest_word(word, OTHERS.iter().map(|(known, _)| *known))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn none_of_them_is_a_word_of_the_language() {
        for (word, other) in OTHERS {
            assert!(
                syntax::words::item_words().all(|known| known != *word),
                "{word}"
            );
            if let Some(write) = other.write {
                assert!(syntax::words::verb(write).is_some(), "{write}");
            }
            assert!(other.advice.ends_with('.'), "{word}");
        }
        assert!(OTHERS.is_sorted_by_key(|(word, _)| *word));
        assert!(other("Loosen").is_some() && other("lossen").is_none());
    }
}
