//! Figures with their units, tools with their sizes, members of a series.

use super::parts::Parts;
use crate::grammar::Rule;
use crate::tree::{Members, Quantity, Span, ToolRef};

impl<'i, 's> Parts<'i, 's> {
    pub(crate) fn quantity(&mut self) -> Option<Quantity> {
        let piece = self
            .take(Rule::quantity)
            .or_else(|| self.take(Rule::amount))?;
        let span = self.span_of(&piece);
        let mut inner = piece.into_inner();
        let mut quantity = Quantity {
            span,
            unit: None,
            unknown: false,
        };
        // Of `22 N.m +- 10 %` the unit is the first.
        if let Some(piece) =
            inner.find(|piece| matches!(piece.as_rule(), Rule::unit | Rule::unknown))
        {
            match piece.as_rule() {
                Rule::unit => quantity.unit = Some(self.span_of(&piece)),
                _ => quantity.unknown = true,
            }
        }
        Some(quantity)
    }

    pub(crate) fn tool_size(&mut self) -> Option<Span> {
        self.span(Rule::tool_size)
    }

    pub(crate) fn tool(&mut self) -> Option<ToolRef> {
        let piece = self.take(Rule::tool)?;
        let span = self.span_of(&piece);
        let mut inner = self.within(piece);
        let name = inner.name()?;
        let size = inner.tool_size();
        // A leading `the` is no part of the tool.
        let span = Span::new(name.span.start, span.end);
        Some(ToolRef { span, name, size })
    }

    pub(crate) fn tools(&mut self) -> Vec<ToolRef> {
        std::iter::from_fn(|| self.tool()).collect()
    }

    pub(crate) fn members(&mut self) -> Option<Members> {
        if let Some(mut range) = self.open(Rule::member_range) {
            return Some(Members::Range(
                range.word_of(Rule::number)?,
                range.word_of(Rule::number)?,
            ));
        }
        let list = self.words();
        (!list.is_empty()).then_some(Members::List(list))
    }
}
