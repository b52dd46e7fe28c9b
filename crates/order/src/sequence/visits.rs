//! How often each tool must be taken up at least.
//!
//! Along a chain of arcs, a tool that comes, goes and comes again must be taken
//! up as often in every order: between two of its steps stands one with another
//! tool. Each tool has its own chain, and each time that a tool is taken up is
//! one change (but the first), so the numbers of all tools add up.

use super::costs::NONE;
use crate::bits::ones;
use crate::graph::topological;
use crate::instance::Instance;

pub(crate) struct Visits {
    tools: usize,
    /// By step and tool: how often on a chain that ends with the step.
    times: Vec<u32>,
}

impl Visits {
    pub fn new(inst: &Instance, tools: usize, tool: &[u32]) -> Self {
        let n = inst.steps();
        let mut times = vec![0u32; n * tools];
        // The same for chains whose last step with a tool has another one.
        let mut away = vec![0u32; n * tools];
        for s in topological(inst).unwrap_or_default() {
            let own = tool[s as usize];
            for t in 0..tools {
                let at = |step: u32| step as usize * tools + t;
                let before = inst.pred.row(s).iter().map(|&p| at(p));
                let (mut most, mut gone) = (0, 0);
                for p in before {
                    most = most.max(times[p]);
                    gone = gone.max(away[p]);
                }
                let here = at(s);
                if own == t as u32 {
                    // Either the tool is in hand, or it is taken up again.
                    times[here] = most.max(gone + 1);
                    away[here] = 0;
                } else {
                    times[here] = most;
                    away[here] = if own == NONE { gone } else { most };
                }
            }
        }
        Self { tools, times }
    }

    /// Changes at least for the steps that are not off. `free` tells whether
    /// one of them goes on with what is in hand (or nothing is in hand).
    pub fn changes(&self, off: &[u64], steps: usize, free: bool) -> u64 {
        let mut most = vec![0u32; self.tools];
        let left = off.iter().map(|w| !w).collect::<Vec<_>>();
        for s in ones(&left).take_while(|&s| (s as usize) < steps) {
            let row = &self.times[s as usize * self.tools..][..self.tools];
            for (most, times) in most.iter_mut().zip(row) {
                *most = (*most).max(*times);
            }
        }
        let sum: u64 = most.iter().map(|&x| u64::from(x)).sum();
        sum.saturating_sub(u64::from(free))
    }
}
