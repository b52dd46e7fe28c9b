//! The pieces of one construct, taken one after the other.

use crate::grammar::{Piece, Pieces, Rule};
use crate::statement::Statement;
use crate::tree::{Name, Quoted, Span, Word};

/// Where pieces stand: they count from the place in their statement at which
/// reading them began.
#[derive(Clone, Copy)]
pub(crate) struct Ground<'s> {
    statement: &'s Statement<'s>,
    base: usize,
}

impl<'s> Ground<'s> {
    pub(crate) fn new(statement: &'s Statement<'s>, base: usize) -> Self {
        Ground { statement, base }
    }

    /// Where `piece` stands in the text.
    pub(crate) fn span(self, piece: &Piece<'_>) -> Span {
        let span = piece.as_span();
        self.part(span.start(), span.end())
    }

    /// Where the bytes `start..end` stand in the text.
    pub(crate) fn part(self, start: usize, end: usize) -> Span {
        self.statement.span(self.base + start, self.base + end)
    }

    /// Whether there is any capital letter in the statement.
    pub(crate) fn may_have_capitals(self) -> bool {
        self.statement.may_have_capitals
    }
}

/// The inner pieces of one construct. What the grammar puts there is taken in
/// order; each taker gives `None` where the next piece is another.
pub(crate) struct Parts<'i, 's> {
    pieces: Pieces<'i>,
    next: Option<Piece<'i>>,
    ground: Ground<'s>,
}

impl<'i, 's> Parts<'i, 's> {
    pub(crate) fn new(piece: Piece<'i>, ground: Ground<'s>) -> Self {
        let mut pieces = piece.into_inner();
        let next = pieces.next();
        Parts {
            pieces,
            next,
            ground,
        }
    }

    /// The rule of the next piece.
    pub(crate) fn peek(&self) -> Option<Rule> {
        self.next.as_ref().map(Piece::as_rule)
    }

    /// The next piece, whatever it is.
    pub(crate) fn take_any(&mut self) -> Option<Piece<'i>> {
        let taken = self.next.take();
        self.next = self.pieces.next();
        taken
    }

    /// The next piece, if `rule` read it.
    pub(crate) fn take(&mut self, rule: Rule) -> Option<Piece<'i>> {
        if self.peek() == Some(rule) {
            self.take_any()
        } else {
            None
        }
    }

    /// The next piece opened, if `rule` read it.
    pub(crate) fn open(&mut self, rule: Rule) -> Option<Parts<'i, 's>> {
        self.take(rule).map(|piece| self.within(piece))
    }

    /// What is inside `piece`.
    pub(crate) fn within(&self, piece: Piece<'i>) -> Parts<'i, 's> {
        Parts::new(piece, self.ground)
    }

    /// Where the next piece stands, if `rule` read it.
    pub(crate) fn span(&mut self, rule: Rule) -> Option<Span> {
        self.take(rule).map(|piece| self.ground.span(&piece))
    }

    /// Whether the next piece is one of `rule`, which is then passed over.
    pub(crate) fn skip(&mut self, rule: Rule) -> bool {
        self.take(rule).is_some()
    }

    /// Where the next piece stands.
    pub(crate) fn next_span(&self) -> Option<Span> {
        self.next.as_ref().map(|piece| self.ground.span(piece))
    }

    /// Where `piece` stands.
    pub(crate) fn span_of(&self, piece: &Piece<'_>) -> Span {
        self.ground.span(piece)
    }

    pub(crate) fn name(&mut self) -> Option<Name> {
        let rule = if self.peek() == Some(Rule::new_name) {
            Rule::new_name
        } else {
            Rule::name
        };
        self.span(rule).map(|span| Name { span })
    }

    pub(crate) fn names(&mut self) -> Vec<Name> {
        std::iter::from_fn(|| self.name()).collect()
    }

    pub(crate) fn quoted(&mut self) -> Option<Quoted> {
        self.span(Rule::quoted).map(|span| Quoted { span })
    }

    /// The next piece as a word, if `rule` read it.
    pub(crate) fn word_of(&mut self, rule: Rule) -> Option<Word> {
        self.span(rule).map(|span| Word { span })
    }

    pub(crate) fn word(&mut self) -> Option<Word> {
        self.word_of(Rule::word)
    }

    pub(crate) fn words(&mut self) -> Vec<Word> {
        std::iter::from_fn(|| self.word()).collect()
    }
}
