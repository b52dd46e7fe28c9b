//! Names that stand for several: `cap-<bore>` and `cap-*`.

/// A stretch of a name.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Piece<'t> {
    /// As it stands.
    Letters(&'t str),
    /// A member of this series goes here.
    Hole(&'t str),
    /// Anything goes here.
    Star,
}

/// Whether a name stands for several.
pub(crate) fn is_pattern(name: &str) -> bool {
    name.bytes().any(|b| b == b'<' || b == b'*')
}

/// The stretches of a name. A `<` without its `>` is taken as a letter: the tree has already
/// complained of it.
pub(crate) fn pieces(name: &str) -> Vec<Piece<'_>> {
    let mut pieces = Vec::new();
    let mut rest = name;
    while let Some(at) = rest.find(['<', '*']) {
        if rest[at..].starts_with('*') {
            push_letters(&mut pieces, &rest[..at]);
            pieces.push(Piece::Star);
            rest = &rest[at + 1..];
            continue;
        }
        let Some(end) = rest[at..].find('>') else {
            break;
        };
        push_letters(&mut pieces, &rest[..at]);
        pieces.push(Piece::Hole(rest[at + 1..at + end].trim()));
        rest = &rest[at + end + 1..];
    }
    push_letters(&mut pieces, rest);
    pieces
}

fn push_letters<'t>(pieces: &mut Vec<Piece<'t>>, letters: &'t str) {
    if !letters.is_empty() {
        pieces.push(Piece::Letters(letters));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_come_apart() {
        assert_eq!(
            pieces("valve-<bore>-<port>"),
            [
                Piece::Letters("valve-"),
                Piece::Hole("bore"),
                Piece::Letters("-"),
                Piece::Hole("port"),
            ]
        );
        assert_eq!(pieces("cap-*"), [Piece::Letters("cap-"), Piece::Star]);
        assert_eq!(pieces("cap-<bore"), [Piece::Letters("cap-<bore")]);
        assert_eq!(pieces(""), []);
    }
}
