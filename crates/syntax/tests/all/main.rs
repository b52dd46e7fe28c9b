//! The language, tested from text to tree and back.

#![allow(clippy::unwrap_used)]

mod constructs;
mod plain;
mod sample;
mod table;
