//! The language, tested from text to tree and back.

#![allow(clippy::unwrap_used)]

mod constructs;
mod plain;
mod recovery;
mod sample;
mod table;
mod tidy;
