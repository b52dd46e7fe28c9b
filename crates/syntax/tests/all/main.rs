//! The language, tested from text to tree and back.

#![allow(clippy::unwrap_used)]

mod constructs;
mod generate;
mod plain;
mod properties;
mod recovery;
mod sample;
mod table;
mod tidy;
