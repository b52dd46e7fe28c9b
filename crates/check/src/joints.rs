//! Fasteners and torque wrenches as the bench sums want them.

use crate::bench::Bench;
use plan::model::{Amount, Body, Fasteners, Pass, Plan, StepId, ThingId, Tool, ToolUse};
use syntax::tree::Verb;
use workshop::class::{BoltClass, proof_load};
use workshop::preload::{NutFactor, torque_for};
use workshop::quantity::{Length, Torque};
use workshop::source::Source;
use workshop::strip::{Hole, Material, MaterialFamily};
use workshop::thread::Thread;
use workshop::tightening::{UnitSlip, Wrench, inch_foot_slip};

/// Nouns of things that are in or out, or drawn up by feel.
const NO_THREAD: [&str; 8] = [
    "pin", "clip", "ring", "circlip", "key", "dowel", "clamp", "strap",
];

/// Whether a group has a thread that is brought to a torque.
pub fn threaded(group: &Fasteners) -> bool {
    let noun = group.noun.as_deref().unwrap_or("");
    group.thread.is_some()
        || !NO_THREAD
            .iter()
            .any(|n| noun == *n || noun.ends_with(&format!("-{n}")))
}

/// A torque that a plan gives for a group.
pub struct Wanted<'p> {
    /// As written.
    pub amount: &'p Amount,
    /// What is aimed at: the middle of a range.
    pub torque: Torque,
    /// Whether no other torque comes behind it: the one on which the clamp load hangs.
    pub last: bool,
}

/// The torques of a group that are known, in the order in which they are reached.
pub fn torques(group: &Fasteners) -> Vec<Wanted<'_>> {
    let single = group.torque.iter().filter_map(|t| t.value.as_ref());
    let passes = group.passes.iter().flat_map(|p| &p.passes);
    let passes = passes.filter_map(|pass| match pass {
        Pass::Torque(amount) => Some(amount),
        _ => None,
    });
    let known = |amount: &Amount| {
        let middle = amount.measure.as_ref()?.middle();
        Torque::try_from(middle).ok().filter(|t| t.si() > 0.0)
    };
    let amounts: Vec<&Amount> = if group.passes.is_some() {
        passes.collect()
    } else {
        single.collect()
    };
    let count = amounts.len();
    amounts
        .into_iter()
        .enumerate()
        .filter_map(|(n, amount)| {
            Some(Wanted {
                amount,
                torque: known(amount)?,
                last: n + 1 == count,
            })
        })
        .collect()
}

/// Every tightening of a group of fasteners, in the order meant.
pub fn tightenings(bench: &Bench) -> Vec<(StepId, ThingId)> {
    let steps = bench.order().iter().copied();
    let tighten = steps.filter(|s| bench.plan.step(*s).verb == Verb::Tighten);
    tighten
        .flat_map(|step| {
            let targets = &bench.lives.targets[step.0 as usize];
            targets.iter().map(move |target| (step, target.thing))
        })
        .filter(|(_, thing)| bench.plan.thing(*thing).fasteners().is_some())
        .collect()
}

/// The thread of a group, where it is one that sums can be done with.
pub fn thread(group: &Fasteners) -> Option<Thread> {
    let thread = Thread::read(&group.thread.as_ref()?.text).ok()?;
    thread.diameter().is_some().then_some(thread)
}

/// The strength class of a group's screws.
pub fn class(group: &Fasteners, thread: &Thread) -> Option<BoltClass> {
    BoltClass::read(&group.class.as_ref()?.text, Some(thread)).ok()
}

/// The hole that a group is turned into, where material and depth are known well enough.
pub fn hole(group: &Fasteners) -> Option<Hole> {
    let (material, depth, _) = group.into.as_ref()?;
    let depth = depth.as_ref()?.measure.as_ref()?.middle();
    Some(Hole {
        material: Material::usual(MaterialFamily::read(material)?)?,
        engagement: Length::try_from(depth).ok()?,
        insert: false,
    })
}

/// How much of the torque friction takes.
pub fn nut_factor(group: &Fasteners) -> NutFactor {
    let unknown = NutFactor::condition_unknown();
    if group.lubricated.is_none() {
        return unknown;
    }
    // Lubricated: 0.11 to 0.15 in one source, 0.18 in the other.
    let source = Source::given(
        "NASA TM-106943 (1995) p. 4, lubricated; Shigley, 9th ed., Table 8-15, lubricated",
    );
    NutFactor::new(0.11, 0.15, 0.18, source).unwrap_or(unknown)
}

/// Classes between which the strength of a screw lies when nobody says: the weakest and the
/// strongest of ISO 898-1.
const WEAKEST: &str = "4.6";
const STRONGEST: &str = "12.9";

/// The share of its proof load below which a screw of a stated class is hardly ever tightened, and
/// the one from which on a torque looks usual. Common practice, no source.
const HARDLY_EVER: f64 = 0.1;
const USUAL_FROM: f64 = 0.2;

/// Whether a torque of a group makes sense only with lbf.ft and lbf.in exchanged.
pub fn slip(group: &Fasteners, torque: Torque) -> Option<UnitSlip> {
    let thread = thread(group)?;
    let diameter = thread.diameter()?;
    let factor = NutFactor::condition_unknown();
    let class = class(group, &thread);
    let of = |name: &str| class.or_else(|| BoltClass::read(name, Some(&thread)).ok());
    let most = proof_load(&thread, of(STRONGEST)?)?.value;
    let highest = torque_for(most, diameter, &factor.at_high()).value;
    let least = proof_load(&thread, of(WEAKEST)?)?.value;
    let share = |factor: &NutFactor, share: f64| {
        let all = torque_for(least, diameter, factor).value;
        all.with_figure(share * all.amount().figure())
    };
    if torque.exceeds(highest) {
        return inch_foot_slip(torque, share(&factor, USUAL_FROM), highest);
    }
    // A small torque on a screw of unknown class, or on one in something soft, may well be meant.
    let soft = group.into.is_some() && hole(group).is_none();
    if class.is_none() || soft {
        return None;
    }
    inch_foot_slip(torque, share(&factor.at_low(), HARDLY_EVER), highest)
}

/// The declared torque tool that a step asks for, with what it can be relied on for.
pub fn wrench_of<'p>(plan: &'p Plan, tool: &ToolUse) -> Option<(ThingId, &'p Tool, Wrench)> {
    let id = tool.thing?;
    let (tool, wrench) = wrench(plan, id)?;
    Some((id, tool, wrench))
}

/// A declared tool as a torque wrench, where its range is known.
pub fn wrench(plan: &Plan, id: ThingId) -> Option<(&Tool, Wrench)> {
    let Body::Tool(tool) = &plan.thing(id).body else {
        return None;
    };
    let by_range = tool.range.iter().filter_map(|r| r.measure.as_ref());
    let by_scale = tool.full_scale.iter().filter_map(|s| s.measure.as_ref());
    let wrench =
        by_range
            .filter_map(|range| Wrench::from_range(range).ok())
            .chain(by_scale.filter_map(|scale| {
                Wrench::from_full_scale(Torque::try_from(scale.high()).ok()?).ok()
            }))
            .next()?;
    Some((tool, wrench))
}
