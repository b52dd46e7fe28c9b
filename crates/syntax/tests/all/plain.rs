//! A tree in a form that two texts share when they say the same.

use syntax::tree::{Item, Tree};

/// One line an item: what its debug output says, with each place replaced by
/// the text that stands there, blanks outside quotes left out.
pub fn items(tree: &Tree) -> Vec<String> {
    tree.items
        .iter()
        .map(|item| self::item(tree, item))
        .collect()
}

/// One item in this form. Its own extent is left out.
pub fn item(tree: &Tree, item: &Item) -> String {
    format!("{} {:?}", said(tree, &item.head), details(tree, item))
}

/// The details of an item in this form.
pub fn details(tree: &Tree, item: &Item) -> Vec<String> {
    let because = |quoted| format!(" because {}", said(tree, &quoted));
    let details = item.details.iter();
    details
        .map(|detail| {
            let because = detail.because.map(because).unwrap_or_default();
            format!(
                "{}: {}{because}",
                text(tree.at(detail.keyword)),
                said(tree, &detail.says)
            )
        })
        .collect()
}

/// The debug output of any piece of the tree with its places filled in.
pub fn said(tree: &Tree, piece: &impl std::fmt::Debug) -> String {
    let debug = format!("{piece:?}");
    let mut out = String::new();
    let mut rest = debug.as_str();
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let end = rest
            .find(|c: char| !c.is_ascii_digit() && c != '.')
            .unwrap_or(rest.len());
        let (start, stop) = rest[..end].split_once("..").unwrap();
        out.push_str(&text(
            &tree.text[start.parse().unwrap()..stop.parse().unwrap()],
        ));
        rest = &rest[end..];
    }
    out.push_str(rest);
    short(&out)
}

/// Without the words of the debug output that say nothing new.
fn short(debug: &str) -> String {
    let mut short = debug.to_owned();
    for (long, brief) in [
        ("Name { span: ", "{"),
        ("Quoted { span: ", "{"),
        ("Word { span: ", "{"),
        (" }", "}"),
    ] {
        short = short.replace(long, brief);
    }
    short
}

/// The text without its blanks, but for those between quotes.
fn text(text: &str) -> String {
    let mut quoted = false;
    text.chars()
        .filter(|c| {
            quoted ^= *c == '"';
            quoted || !(*c == ' ' || *c == '\t')
        })
        .collect()
}
