//! Random facts, and every order that keeps them, found without the core.

use order::{Builder, Instance, Reason, StepId, Wait, Way};

/// A small generator with a fixed seed (an xorshift with a multiply behind it; G. Marsaglia,
/// Journal of Statistical Software 8(14), 2003; S. Vigna, ACM Transactions on
/// Mathematical Software 42(4), 2016).
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    pub fn below(&mut self, bound: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let word = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D);
        ((u128::from(word) * bound as u128) >> 64) as usize
    }

    /// From `low` to `high`, both included.
    pub fn between(&mut self, low: usize, high: usize) -> usize {
        low + self.below(high - low + 1)
    }

    pub fn chance(&mut self, percent: usize) -> bool {
        self.below(100) < percent
    }

    pub fn step(&mut self, n: usize) -> StepId {
        self.below(n) as StepId
    }

    pub fn shuffle<T>(&mut self, items: &mut [T]) {
        for i in (1..items.len()).rev() {
            items.swap(i, self.below(i + 1));
        }
    }
}

/// What facts to draw.
#[derive(Clone, Copy)]
pub struct Sort {
    pub most_steps: usize,
    pub waits: bool,
    /// Ways that also ask for earlier steps.
    pub mixed: bool,
    /// Arcs only along a hidden order, so that arcs alone never close.
    pub acyclic: bool,
    /// Several facts may have the same reason.
    pub shared_reasons: bool,
}

impl Sort {
    pub const PLAIN: Self = Self {
        most_steps: 8,
        waits: false,
        mixed: false,
        acyclic: false,
        shared_reasons: false,
    };
    pub const ACYCLIC: Self = Self {
        acyclic: true,
        ..Self::PLAIN
    };
    pub const ACCESS: Self = Self {
        most_steps: 7,
        waits: true,
        ..Self::ACYCLIC
    };
    pub const MIXED: Self = Self {
        mixed: true,
        ..Self::ACCESS
    };
}

#[derive(Clone, Debug)]
pub struct Facts {
    pub n: usize,
    pub arcs: Vec<(StepId, StepId, Reason)>,
    pub waits: Vec<Wait>,
}

impl Facts {
    pub fn random(dice: &mut Dice, sort: Sort) -> Self {
        // Small instances are quick to go through and hold most surprises.
        let n = dice
            .between(1, sort.most_steps)
            .max(dice.between(1, sort.most_steps));
        let mut next = 0u32;
        let mut hidden: Vec<StepId> = (0..n as u32).collect();
        if dice.chance(70) {
            dice.shuffle(&mut hidden);
        } else {
            for _ in 0..dice.below(3) {
                let from = dice.below(n);
                let step = hidden.remove(from);
                hidden.insert(dice.below(n), step);
            }
        }
        let mut facts = Self {
            n,
            arcs: Vec::new(),
            waits: Vec::new(),
        };
        let mut why = |dice: &mut Dice| {
            next += 1;
            if sort.shared_reasons && dice.chance(50) {
                Reason(dice.below(4) as u32)
            } else {
                Reason(100 + next)
            }
        };
        for _ in 0..dice.below(if sort.waits { n + 2 } else { 2 * n + 2 }) {
            let (i, j) = (dice.below(n), dice.below(n));
            let (i, j) = if sort.acyclic {
                (i.min(j), i.max(j))
            } else {
                (i, j)
            };
            if sort.acyclic && i == j {
                continue;
            }
            let reason = why(dice);
            facts.arcs.push((hidden[i], hidden[j], reason));
        }
        if sort.waits {
            for _ in 0..dice.between(1, n) {
                let ways = if dice.chance(3) {
                    0
                } else {
                    dice.between(1, 3)
                };
                let reason = why(dice);
                let mut wait = Wait {
                    step: dice.step(n),
                    ways: Vec::new(),
                    why: reason,
                };
                for _ in 0..ways {
                    let mut way = Way::default();
                    let least = usize::from(!dice.chance(2));
                    for _ in 0..dice.between(least, 2) {
                        let entry = (dice.step(n), why(dice));
                        if sort.mixed && dice.chance(50) {
                            way.earlier.push(entry);
                        } else {
                            way.later.push(entry);
                        }
                    }
                    wait.ways.push(way);
                }
                facts.waits.push(wait);
            }
        }
        facts
    }

    pub fn instance(&self) -> Instance {
        let mut builder = Builder::new(self.n);
        for &(a, b, why) in &self.arcs {
            builder.before(a, b, why);
        }
        for wait in &self.waits {
            builder.wait(wait.clone());
        }
        builder.build()
    }

    /// Whether a whole order keeps everything, read off the statement of each
    /// fact.
    pub fn kept_by(&self, order: &[StepId]) -> bool {
        let at = |s: StepId| order.iter().position(|&x| x == s).unwrap();
        self.arcs.iter().all(|&(a, b, _)| at(a) < at(b))
            && self.waits.iter().all(|wait| {
                wait.ways.iter().any(|way| {
                    way.later.iter().all(|&(b, _)| at(wait.step) < at(b))
                        && way.earlier.iter().all(|&(a, _)| at(a) < at(wait.step))
                })
            })
    }

    /// Calls `each` with every order that keeps everything. Orders are built
    /// from the front; a step goes next if what is before it allows that.
    pub fn each_order(&self, mut each: impl FnMut(&[StepId])) {
        let mut arcs_to = vec![0u32; self.n];
        for &(a, b, _) in &self.arcs {
            arcs_to[b as usize] |= 1 << a;
        }
        let mask = |list: &[(StepId, Reason)]| list.iter().fold(0u32, |m, x| m | 1 << x.0);
        let mut waits = vec![Vec::new(); self.n];
        for wait in &self.waits {
            let ways: Vec<(u32, u32)> = wait
                .ways
                .iter()
                .map(|way| (mask(&way.later), mask(&way.earlier)))
                .collect();
            waits[wait.step as usize].push(ways);
        }
        let rules = Rules { arcs_to, waits };
        let mut order = Vec::with_capacity(self.n);
        rules.extend(&mut order, 0, &mut each);
    }

    pub fn orders(&self) -> Vec<Vec<StepId>> {
        let mut out = Vec::new();
        self.each_order(|order| out.push(order.to_vec()));
        out
    }

    pub fn has_order(&self) -> bool {
        let mut any = false;
        self.each_order(|_| any = true);
        any
    }

    /// Only the facts whose reasons are all kept.
    pub fn only(&self, keep: impl Fn(Reason) -> bool) -> Self {
        let list = |list: &[(StepId, Reason)]| -> Vec<(StepId, Reason)> {
            list.iter().copied().filter(|x| keep(x.1)).collect()
        };
        let waits = self.waits.iter().filter(|wait| keep(wait.why));
        Self {
            n: self.n,
            arcs: self.arcs.iter().copied().filter(|a| keep(a.2)).collect(),
            waits: waits
                .map(|wait| Wait {
                    step: wait.step,
                    why: wait.why,
                    ways: wait
                        .ways
                        .iter()
                        .map(|way| Way {
                            later: list(&way.later),
                            earlier: list(&way.earlier),
                        })
                        .collect(),
                })
                .collect(),
        }
    }

    /// By how many facts each step is named, a wait with one way counting as
    /// arcs and one with a way that asks nothing not at all.
    pub fn degrees(&self) -> Vec<u32> {
        let mut out = vec![0; self.n];
        let mut add = |s: StepId| out[s as usize] += 1;
        for &(a, b, _) in &self.arcs {
            add(a);
            add(b);
        }
        for wait in &self.waits {
            let named = |way: &Way| -> Vec<StepId> {
                way.later.iter().chain(&way.earlier).map(|x| x.0).collect()
            };
            if wait.ways.iter().any(|way| named(way).is_empty()) {
                continue;
            }
            if let [way] = wait.ways.as_slice() {
                for s in named(way) {
                    add(s);
                    add(wait.step);
                }
                continue;
            }
            add(wait.step);
            wait.ways.iter().flat_map(named).for_each(&mut add);
        }
        out
    }
}

struct Rules {
    arcs_to: Vec<u32>,
    waits: Vec<Vec<Vec<(u32, u32)>>>,
}

impl Rules {
    fn extend(&self, order: &mut Vec<StepId>, done: u32, each: &mut impl FnMut(&[StepId])) {
        let n = self.arcs_to.len();
        if order.len() == n {
            each(order);
            return;
        }
        for s in 0..n as u32 {
            let i = s as usize;
            let fits = done >> s & 1 == 0
                && self.arcs_to[i] & !done == 0
                && self.waits[i].iter().all(|ways| {
                    // The step itself stands neither before nor behind itself.
                    ways.iter().any(|&(later, earlier)| {
                        later & (done | 1 << s) == 0 && earlier & !done == 0
                    })
                });
            if fits {
                order.push(s);
                self.extend(order, done | 1 << s, each);
                order.pop();
            }
        }
    }
}

/// All permutations of `0..n`.
pub fn permutations(n: usize) -> Vec<Vec<StepId>> {
    let mut out = Vec::new();
    let none = Facts {
        n,
        arcs: Vec::new(),
        waits: Vec::new(),
    };
    none.each_order(|order| out.push(order.to_vec()));
    out
}

/// The brute force is itself checked against the statements of the facts.
#[test]
fn building_from_the_front_misses_no_order() {
    let mut dice = Dice::new(1);
    for _ in 0..3000 {
        let facts = Facts::random(
            &mut dice,
            Sort {
                most_steps: 5,
                acyclic: false,
                ..Sort::MIXED
            },
        );
        let all = permutations(facts.n);
        assert_eq!(all.len(), (1..=facts.n).product::<usize>());
        let kept: Vec<_> = all.into_iter().filter(|o| facts.kept_by(o)).collect();
        assert_eq!(kept, facts.orders(), "{facts:?}");
    }
}
