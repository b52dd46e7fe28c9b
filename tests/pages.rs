//! The plans in the language reference do what the reference says.

use crate::support::{Bench, root};
use plan::model::FileId;

/// A fenced block: the line it begins on, what stands behind the fence, its text.
struct Block {
    line: usize,
    fragment: bool,
    text: String,
}

fn blocks(page: &str) -> Vec<Block> {
    let mut found = Vec::new();
    let mut open: Option<Block> = None;
    for (line, content) in (1..).zip(page.lines()) {
        match (&mut open, content.strip_prefix("```")) {
            (None, Some(fence)) => {
                let mut words = fence.split_whitespace();
                let rebuild = words.next() == Some("rebuild");
                let fragment = !rebuild || words.next() == Some("fragment");
                open = Some(Block {
                    line: if rebuild { line } else { 0 },
                    fragment,
                    text: String::new(),
                });
            }
            (Some(_), Some(_)) => found.extend(open.take()),
            (Some(block), None) => {
                block.text.push_str(content);
                block.text.push('\n');
            }
            (None, None) => {}
        }
    }
    found.retain(|block| block.line > 0);
    found
}

fn reference() -> Vec<Block> {
    let page = std::fs::read_to_string(root().join("grammar/reference.md")).unwrap();
    let blocks = blocks(&page);
    assert!(
        blocks.iter().any(|block| block.fragment) && blocks.iter().any(|block| !block.fragment)
    );
    blocks
}

#[test]
fn whole_plans_give_just_the_findings_written_in_them() {
    let mut troubles = Vec::new();
    for block in reference().iter().filter(|block| !block.fragment) {
        let checked = Bench::of_text(&block.text).check();
        if let Err(trouble) = fixture::compare(&block.text, &checked.actual(FileId(0))) {
            troubles.push(format!("the plan on line {}:\n{trouble}", block.line));
        }
    }
    assert!(troubles.is_empty(), "\n{}", troubles.join("\n"));
}

#[test]
fn every_line_of_a_fragment_can_be_read() {
    let mut troubles = Vec::new();
    for block in reference() {
        for problem in syntax::read(block.text.as_str()).problems {
            troubles.push(format!("the block on line {}: {problem:?}", block.line));
        }
    }
    assert!(troubles.is_empty(), "\n{}", troubles.join("\n"));
}
