//! The language, tested from text to tree and back.

#![allow(clippy::unwrap_used)]

mod plain;
mod sample;
