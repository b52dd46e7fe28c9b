//! What the sheet says about hazards: one short line a kind, the same every time.
//!
//! The kinds and what matters about each are common practice in the trade, no
//! single source; the words are our own. None of them replaces the maker's
//! manual, and every sheet ends by saying so.

/// A kind of hazard and its line.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Caution {
    /// The word behind `hazard` in a plan.
    pub kind: &'static str,
    /// What the sheet says.
    pub says: &'static str,
}

/// What every sheet ends with.
pub const DEFERENCE: &str = "The maker's manual, local codes and a licensed or qualified person come \
before this sheet. Where they say otherwise, stop and do what they say.";

/// Every kind that has a line, by name.
pub const CAUTIONS: &[Caution] = &[
    Caution {
        kind: "adhesive",
        says: "Glues, sealants and threadlockers: off skin and eyes, fresh air in the room. Read the sheet that came with it.",
    },
    Caution {
        kind: "air-ejection",
        says: "The piston leaves its bore with force. As little air as will do, a block of wood and rag before it, hands and face elsewhere.",
    },
    Caution {
        kind: "asbestos",
        says: "Old gaskets, linings and lagging may hold asbestos. Keep it wet; no scraping dry, sanding, brushing or blowing. Bag it, or have it tested first.",
    },
    Caution {
        kind: "battery",
        says: "Earth lead off first and on last. No sparks near it, eye protection on. Leave a damaged lithium pack alone.",
    },
    Caution {
        kind: "brake-fluid",
        says: "Brake fluid strips paint and burns eyes. Gloves, rag and water at hand.",
    },
    Caution {
        kind: "cold",
        says: "Chilled parts burn skin. Dry gloves and tongs; dry ice or liquid gas only where there is plenty of air.",
    },
    Caution {
        kind: "compressed-air",
        says: "Compressed air: low pressure, eye protection, never towards skin. Never spin a bearing with it.",
    },
    Caution {
        kind: "exhaust-gas",
        says: "Run it outdoors, or with the exhaust led out. Exhaust gas gives no warning and gathers in low places.",
    },
    Caution {
        kind: "first-start",
        says: "First start: prove that it can be stopped. Guards on, extinguisher in reach, nobody in line with belts, fan, propeller or flywheel.",
    },
    Caution {
        kind: "fuel",
        says: "Open fuel: no flame, spark or heater. Air the room, catch it in a closed metal can, wipe up spills, extinguisher in reach.",
    },
    Caution {
        kind: "hand-start",
        says: "The engine can kick back. Lay the thumb beside the fingers, work it upwards, and have the timing checked first.",
    },
    Caution {
        kind: "heat",
        says: "Heating: clean off oil first. Nothing sealed or hollow may be heated, nor magnesium or plated parts. Gloves, extinguisher in reach.",
    },
    Caution {
        kind: "heavy",
        says: "A heavy lift: two people or a hoist. Clear the way and the place to set it down before lifting.",
    },
    Caution {
        kind: "hot-coolant",
        says: "Let it go cold before anything is opened. Hot coolant comes out under pressure.",
    },
    Caution {
        kind: "hot-parts",
        says: "Hot parts: let them cool, or wear gloves and long sleeves.",
    },
    Caution {
        kind: "hot-work",
        says: "Hot work: clear the area and keep watch for fire afterwards. Never on anything that has held fuel. Plating and paint give off poison.",
    },
    Caution {
        kind: "jet",
        says: "A fine jet cuts into flesh. Search for leaks with a piece of card, not with a hand. Any wound from it belongs in hospital at once.",
    },
    Caution {
        kind: "lead-paint",
        says: "Old paint may hold lead. No dry sanding; catch and bag what comes off.",
    },
    Caution {
        kind: "lift",
        says: "Nothing stays up on a jack alone: stands, on firm ground. Sling over the middle of the weight, and keep out from under it.",
    },
    Caution {
        kind: "lockout",
        says: "Switch it off, lock it, tag it, and prove it dead. Whoever locked it is the one to unlock it.",
    },
    Caution {
        kind: "mains",
        says: "Mains: unplug it and prove it dead. Capacitors keep their charge. Wiring is for a qualified electrician.",
    },
    Caution {
        kind: "mainspring",
        says: "A wound spring can fly out and cut. Let it down, or keep it caged, before the cover comes off. Gloves and eye protection.",
    },
    Caution {
        kind: "pinch",
        says: "Fingers clear of the gap; nobody turns anything while a hand is in it.",
    },
    Caution {
        kind: "press",
        says: "Press: guard in place, load straight, nobody in line. Stop if it tilts.",
    },
    Caution {
        kind: "pressure",
        says: "Under pressure: let it off and prove it gone before anything is undone. Refrigerant and gas-charged units are for licensed people.",
    },
    Caution {
        kind: "rotating-parts",
        says: "Turning parts: no sleeves, hair, ties or gloves near it. Keep others back and a hand on the stop.",
    },
    Caution {
        kind: "safety-critical",
        says: "Lives hang on this work. A second person checks and signs. Aircraft and pressure vessels are released by licensed people only.",
    },
    Caution {
        kind: "sharp-edges",
        says: "Sharp edges: gloves; wipe along the edge and not across it.",
    },
    Caution {
        kind: "solvent",
        says: "Solvent: fresh air, gloves, no flame. Keep chlorinated solvent away from anything hot.",
    },
    Caution {
        kind: "spark",
        says: "High voltage: insulated tool, and no fuel vapour near the gap.",
    },
    Caution {
        kind: "spring",
        says: "The spring is loaded. Hold it with the proper tool, keep face and hands out of line, let it down slowly. Eye protection.",
    },
    Caution {
        kind: "top-heavy",
        says: "It may roll over. Check the grip and the swing before letting go; two people to turn it.",
    },
    Caution {
        kind: "used-fluids",
        says: "Used fluids: gloves. Poison to children and animals; hand it in, never down a drain.",
    },
];

/// The line for a kind of hazard. A kind without one is passed on in the writer's word.
pub fn caution(kind: &str) -> String {
    match CAUTIONS.binary_search_by_key(&kind, |caution| caution.kind) {
        Ok(at) => CAUTIONS[at].says.to_owned(),
        Err(_) => format!("Beware: {}.", crate::look::harmless(kind).replace('-', " ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kinds_are_sorted_and_their_lines_short() {
        for pair in CAUTIONS.windows(2) {
            assert!(
                pair[0].kind < pair[1].kind,
                "{} stands too late",
                pair[1].kind
            );
        }
        for caution in CAUTIONS {
            assert!(caution.says.len() <= 150, "{} says too much", caution.kind);
            assert!(caution.says.ends_with('.'), "{} does not end", caution.kind);
        }
    }

    #[test]
    fn an_unknown_kind_is_passed_on() {
        assert_eq!(caution("loose-dog"), "Beware: loose dog.");
        assert!(caution("hot-coolant").contains("cold"));
    }
}
