//! The program as a user meets it: the real binary, real files, real pipes.

mod arrange;
mod bench;
mod check;
mod files;
mod json;
mod other;
mod sheet;
