//! Tools where they are asked for: a declared one, or a kind and perhaps a size.

use syntax::tree::{Name, Says, ToolRef};

use crate::desk::{Desk, Here, Seed};
use crate::kinds;
use crate::lookup::Found;
use crate::model::{Body, Ref, Sort, Thing, ThingId, ToolUse};
use crate::names::{ItemAt, Named};
use crate::near;
use crate::pattern;
use crate::sorts;
use crate::spelling::{self, small};
use crate::unknown::Wanted;

/// The most words that are compared with the declared tools to see whether they are slips.
const MOST_COMPARED: usize = 200;

/// Notes kind and size of every declared tool, so that others can ask for it by name.
pub(crate) fn take_in(desk: &mut Desk<'_>, things: &mut [Thing], seeds: &[Seed]) {
    for (id, (thing, seed)) in (0u32..).zip(things.iter_mut().zip(seeds)) {
        if let Body::Tool(tool) = &mut thing.body {
            let said = kind_and_size(desk, seed.by);
            (tool.kind, tool.size) = said.clone();
            desk.tools.insert(ThingId(id), said);
        }
    }
}

/// What a tool's declaration says of its kind and size. A size may stand behind the kind.
fn kind_and_size(desk: &Desk<'_>, by: ItemAt) -> (Option<String>, Option<String>) {
    let (mut kind, mut size) = (None, None);
    for detail in &desk.item(by).details {
        match &detail.says {
            Says::Kind(words) if kind.is_none() => {
                let words: Vec<&str> = words.iter().map(|w| desk.at(by, w.span)).collect();
                let figure = |w: &&str| w.starts_with(|c: char| c.is_ascii_digit());
                let split = words.iter().position(figure).unwrap_or(words.len());
                if split > 0 {
                    kind = Some(kinds::one(&words[..split].join("-")).into_owned());
                }
                if split < words.len() {
                    size = Some(spelling::size(&words[split..].join(" ")));
                }
            }
            Says::Size(span) if size.is_none() => {
                size = Some(spelling::size(unquoted(desk.at(by, *span))));
            }
            _ => {}
        }
    }
    (kind, size)
}

/// A size in words loses its quotes.
pub(crate) fn unquoted(size: &str) -> &str {
    let inner = size.strip_prefix('"').and_then(|s| s.strip_suffix('"'));
    inner.unwrap_or(size)
}

impl Desk<'_> {
    /// The tools that are asked for. With `supplies`, a supply may be among them and goes there.
    pub fn tool_uses(
        &mut self,
        here: &Here,
        tools: &[ToolRef],
        mut supplies: Option<&mut Vec<Ref>>,
    ) -> Vec<ToolUse> {
        let mut uses = Vec::with_capacity(tools.len());
        for tool in tools {
            let Some(found) = self.declared(here, tool) else {
                if let Some(tool) = self.kind_of_tool(here, tool, false) {
                    uses.push(tool);
                }
                continue;
            };
            let wanted = match supplies {
                Some(_) => sorts::TOOLS_AND_SUPPLIES,
                None => sorts::TOOLS,
            };
            let mut things = Vec::new();
            self.keep(here, tool.name, &found, wanted, &mut things);
            for thing in things {
                match (&mut supplies, self.sort(&found, thing.thing)) {
                    (Some(supplies), Some(Sort::Supply)) => supplies.push(thing),
                    _ => uses.push(self.declared_tool(here, tool, thing.thing)),
                }
            }
        }
        uses
    }

    /// What holds the other side: things that are no tools, or tools.
    pub fn counterhold(&mut self, here: &Here, tool: &ToolRef) -> (Vec<Ref>, Vec<ToolUse>) {
        const HOLDS: &[Sort] = &[
            Sort::Part,
            Sort::Unit,
            Sort::Item,
            Sort::Fasteners,
            Sort::Tool,
        ];
        let Some(found) = self.declared(here, tool) else {
            return (
                Vec::new(),
                self.kind_of_tool(here, tool, true).into_iter().collect(),
            );
        };
        let mut things = Vec::new();
        self.keep(here, tool.name, &found, HOLDS, &mut things);
        let mut uses = Vec::new();
        things.retain(|thing| {
            let is_tool = self.tools.contains_key(&thing.thing);
            if is_tool {
                uses.push(self.declared_tool(here, tool, thing.thing));
            }
            !is_tool
        });
        (things, uses)
    }

    /// The entries of a declared name; none for a word that nothing declares and that may well
    /// be the kind of a tool.
    fn declared(&mut self, here: &Here, tool: &ToolRef) -> Option<Found> {
        let written = self.at(here.by, tool.name.span);
        if pattern::is_pattern(written) {
            return Some(self.look_up(here, tool.name, Wanted::things(sorts::TOOLS)));
        }
        let looked = self.known(here, tool.name);
        looked.complete.then_some(looked.found)
    }

    fn sort(&self, found: &Found, thing: ThingId) -> Option<Sort> {
        found
            .entries()
            .iter()
            .find_map(|entry| match self.names.entry(*entry).what {
                Named::Thing(id, sort) if id == thing => Some(sort),
                _ => None,
            })
    }

    fn declared_tool(&self, here: &Here, tool: &ToolRef, thing: ThingId) -> ToolUse {
        let (kind, size) = self.tools.get(&thing).cloned().unwrap_or_default();
        let own = tool.size.map(|span| spelling::size(self.at(here.by, span)));
        ToolUse {
            thing: Some(thing),
            kind,
            size: own.or(size),
            text: self.at(here.by, tool.span).to_owned(),
            place: self.place(here.by, tool.span),
        }
    }

    /// A tool by its kind; none when the word is a slip for something known.
    fn kind_of_tool(&mut self, here: &Here, tool: &ToolRef, bodies: bool) -> Option<ToolUse> {
        let written = self.at(here.by, tool.name.span);
        let kind = kinds::one(written).into_owned();
        if !kinds::known(&kind) {
            if self.hazy.has(&small(written)) {
                self.doubt = true;
                return None;
            }
            if self.is_slip(here, tool.name, &kind, bodies) {
                return None;
            }
        }
        Some(ToolUse {
            thing: None,
            kind: Some(kind),
            size: tool.size.map(|span| spelling::size(self.at(here.by, span))),
            text: self.at(here.by, tool.span).to_owned(),
            place: self.place(here.by, tool.span),
        })
    }

    /// Whether a word is a slip for a declared tool or a known kind; if so it is noted. With
    /// `bodies`, parts and fasteners are compared too.
    fn is_slip(&mut self, here: &Here, name: Name, kind: &str, bodies: bool) -> bool {
        let key = (kind.to_owned(), bodies);
        let slip = match self.tool_slips.get(&key) {
            Some(slip) => slip.clone(),
            None if self.tool_slips.len() >= MOST_COMPARED => None,
            None => {
                let slip = self.meant(kind, bodies);
                self.tool_slips.insert(key, slip.clone());
                slip
            }
        };
        let Some(slip) = slip else { return false };
        let place = self.place(here.by, name.span);
        self.slip(place, self.at(here.by, name.span), slip);
        true
    }

    fn meant(&self, kind: &str, bodies: bool) -> Option<String> {
        let allowed = kinds::slips_allowed(kind)?;
        let declared = self
            .names
            .entries()
            .iter()
            .filter(|entry| match entry.what {
                Named::Thing(_, Sort::Tool) => true,
                Named::Thing(_, sort) => bodies && sorts::BODIES.contains(&sort),
                Named::Steps(_) => false,
            });
        let near = near::nearest(kind, declared.map(|entry| &*entry.name), allowed);
        near.or_else(|| kinds::meant(kind)).map(str::to_owned)
    }
}
