//! What crosses crates: fixture plans, published check values, the program as a user meets it.
