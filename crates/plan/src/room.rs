//! How much may be written out. A few lines about series can stand for more than any memory
//! holds; what goes beyond the bounds is cut short, and said so once.

use crate::desk::Desk;
use crate::model::{Place, ProblemKind};

/// The most things and steps that are written out for series, beyond one for each line. A long
/// item counts for several.
pub(crate) const MOST_COPIES: u32 = 100_000;

/// The most mentions that names with holes and stars are written out to.
pub(crate) const MOST_MENTIONS: u32 = 2_000_000;

/// The most places and members for which the nearest is looked for.
const MOST_SUGGESTIONS: u32 = 200;

/// What is left of the bounds.
pub(crate) struct Room {
    copies: u32,
    mentions: u32,
    suggestions: u32,
    told_copies: bool,
    told_mentions: bool,
}

impl Default for Room {
    fn default() -> Room {
        Room {
            copies: MOST_COPIES,
            mentions: MOST_MENTIONS,
            suggestions: MOST_SUGGESTIONS,
            told_copies: false,
            told_mentions: false,
        }
    }
}

/// How many copies an item of so many bytes counts for.
pub(crate) fn weight(bytes: u32) -> u64 {
    1 + u64::from(bytes / 256)
}

impl Desk<'_> {
    /// How many of `count` further copies there is room for, each as heavy as `weight`.
    pub fn room_for_copies(&mut self, count: u64, weight: u64, name: &str, place: Place) -> u64 {
        let room = count.min(u64::from(self.room.copies) / weight);
        self.room.copies -= u32::try_from(room * weight).unwrap_or(self.room.copies);
        if room < count && !std::mem::replace(&mut self.room.told_copies, true) {
            let (name, most) = (name.to_owned(), MOST_COPIES);
            self.problem(place, ProblemKind::TooMany { name, most });
        }
        room
    }

    /// Whether there is room for so many mentions. Where there is not, what holds them is in
    /// doubt.
    pub fn room_for_mentions(&mut self, count: u64, name: &str, place: Place) -> bool {
        let count = u32::try_from(count).unwrap_or(u32::MAX);
        if let Some(left) = self.room.mentions.checked_sub(count)
            && !self.room.told_mentions
        {
            self.room.mentions = left;
            return true;
        }
        self.doubt = true;
        if !std::mem::replace(&mut self.room.told_mentions, true) {
            let (name, most) = (name.to_owned(), MOST_MENTIONS);
            self.problem(place, ProblemKind::TooMany { name, most });
        }
        false
    }

    /// Whether the room for mentions has been used up. From then on nothing is written out any
    /// more, not even to see how much it would be.
    pub fn no_room_for_mentions(&self) -> bool {
        self.room.told_mentions
    }

    /// Whether the nearest of a list may be looked for once more.
    pub fn room_for_suggestion(&mut self) -> bool {
        let left = self.room.suggestions.checked_sub(1);
        self.room.suggestions = left.unwrap_or(0);
        left.is_some()
    }
}
