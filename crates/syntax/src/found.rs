//! What a line was found to say, gathered piece by piece.

use crate::convert::{self, Ground};
use crate::grammar::{Piece, Rule};
use crate::tree::{Detail, Head, Problem, ProblemKind, Quoted, Span};

/// What one line says. The same value is used for one line after the other, so
/// that its room is taken once.
#[derive(Default)]
pub(crate) struct Found {
    /// The head, where the line is an item.
    pub head: Option<Head>,
    /// The details on the line.
    pub details: Vec<Detail>,
    /// A reason that comes before any detail: it belongs to the one above.
    pub reason: Option<Reason>,
    /// What is wrong with the line.
    pub problems: Vec<Problem>,
}

/// `because "…"`.
#[derive(Clone, Copy)]
pub(crate) struct Reason {
    pub span: Span,
    pub quoted: Quoted,
}

impl Reason {
    /// Puts the reason behind `detail`; `false` if that has one already.
    pub(crate) fn behind(self, detail: &mut Detail) -> bool {
        if detail.because.is_some() {
            return false;
        }
        detail.span = detail.span.to(self.span);
        detail.because = Some(self.quoted);
        true
    }
}

impl Found {
    pub(crate) fn clear(&mut self) {
        self.head = None;
        self.details.clear();
        self.reason = None;
        self.problems.clear();
    }

    /// Takes in one head or detail. `above` says whether a detail stands above the line,
    /// for a reason to belong to.
    pub(crate) fn take(&mut self, piece: Piece<'_>, ground: Ground<'_>, above: bool) {
        if ground.may_have_capitals() {
            self.capitals(&piece, ground);
        }
        match piece.as_rule() {
            Rule::EOI => {}
            Rule::detail_because => self.because(piece, ground, above),
            Rule::detail_remark => self.remark(piece, ground),
            rule if convert::is_head(rule) => {
                if let Some((head, members)) = convert::head(piece, ground) {
                    self.head = Some(head);
                    self.details.extend(members);
                }
            }
            _ => self.details.extend(convert::detail(piece, ground)),
        }
    }

    /// A text at the end of a line is the step's remark where that has none yet.
    fn remark(&mut self, piece: Piece<'_>, ground: Ground<'_>) {
        match &mut self.head {
            Some(Head::Step { words, .. }) if words.is_none() => {
                let span = ground.span(&piece);
                *words = Some(Quoted { span });
            }
            _ => self.details.extend(convert::detail(piece, ground)),
        }
    }

    fn because(&mut self, piece: Piece<'_>, ground: Ground<'_>, above: bool) {
        let span = ground.span(&piece);
        let Some(quoted) = piece.into_inner().next() else {
            return;
        };
        let reason = Reason {
            span,
            quoted: Quoted {
                span: ground.span(&quoted),
            },
        };
        let placed = match self.details.last_mut() {
            Some(detail) => reason.behind(detail),
            None if above && self.head.is_none() && self.reason.is_none() => {
                self.reason = Some(reason);
                true
            }
            None => false,
        };
        if !placed {
            self.no_place_for(span);
        }
    }

    /// A reason with nothing before it that it could be the reason for.
    pub(crate) fn no_place_for(&mut self, span: Span) {
        let kind = ProblemKind::Unreadable {
            wanted: vec!["a further detail"],
            near: None,
        };
        self.problems.push(Problem { span, kind });
    }

    /// Names with capital letters. They are read all the same.
    fn capitals(&mut self, piece: &Piece<'_>, ground: Ground<'_>) {
        for inner in piece.clone().into_inner().flatten() {
            let named = matches!(inner.as_rule(), Rule::name | Rule::new_name);
            if named && inner.as_str().chars().any(is_capital) {
                let span = ground.span(&inner);
                self.problems.push(Problem {
                    span,
                    kind: ProblemKind::Capitals,
                });
            }
        }
    }
}

/// Capitals, and the few letters that are half a capital.
pub(crate) fn is_capital(c: char) -> bool {
    c.is_uppercase() || (!c.is_ascii() && c.is_alphabetic() && !c.to_lowercase().eq([c]))
}
