//! What it costs to do one step after another.

use crate::instance::StepId;

/// What it costs to do one step directly after another.
#[derive(Clone, Debug)]
pub struct Costs {
    kind: Kind,
}

#[derive(Clone, Debug)]
enum Kind {
    /// From each step, row by row, to each.
    Between { steps: usize, cost: Vec<u64> },
    /// By step, its tool, numbered from 0 without gaps.
    Tools { tool: Vec<u32>, tools: usize },
}

/// No tool is needed, or none has been taken up yet.
pub(crate) const NONE: u32 = u32::MAX;

impl Costs {
    /// Costs from one step to the next, for that many steps. Those that no
    /// valid order can use may be anything. What it costs to begin is a cost
    /// from a first step.
    pub fn between(steps: usize, cost: impl Fn(StepId, StepId) -> u64) -> Self {
        let all = 0..steps as u32;
        let row = |a| all.clone().map(move |b| (a, b));
        let cost = all.clone().flat_map(row).map(|(a, b)| cost(a, b)).collect();
        Self {
            kind: Kind::Between { steps, cost },
        }
    }

    /// One for each change of tool. A step without a tool does not make one put
    /// down what is in hand.
    pub fn tools(tools: &[Option<u32>]) -> Self {
        let mut names: Vec<u32> = tools.iter().flatten().copied().collect();
        names.sort_unstable();
        names.dedup();
        let number = |name: u32| names.partition_point(|&x| x < name) as u32;
        Self {
            kind: Kind::Tools {
                tool: tools.iter().map(|t| t.map_or(NONE, number)).collect(),
                tools: names.len(),
            },
        }
    }

    pub(crate) fn steps(&self) -> usize {
        match &self.kind {
            Kind::Between { steps, .. } => *steps,
            Kind::Tools { tool, .. } => tool.len(),
        }
    }

    /// How many tools there are, and the tool of each step, if it is tools.
    pub(crate) fn as_tools(&self) -> Option<(usize, &[u32])> {
        match &self.kind {
            Kind::Tools { tool, tools } => Some((*tools, tool)),
            Kind::Between { .. } => None,
        }
    }

    /// What counts of the steps from `step` on, `held` being what counts of
    /// those behind it: the next tool, or the next step.
    pub(crate) fn hold(&self, step: StepId, held: u32) -> u32 {
        match &self.kind {
            Kind::Between { .. } => step,
            Kind::Tools { tool, .. } if tool[step as usize] == NONE => held,
            Kind::Tools { tool, .. } => tool[step as usize],
        }
    }

    /// From a step to what counts of those behind it.
    pub(crate) fn cost(&self, step: StepId, held: u32) -> u64 {
        match &self.kind {
            _ if held == NONE => 0,
            Kind::Between { steps, cost } => cost[step as usize * steps + held as usize],
            Kind::Tools { .. } => u64::from(self.hold(step, held) != held),
        }
    }

    /// What an order costs.
    pub(crate) fn of(&self, order: &[StepId]) -> u128 {
        let (mut held, mut sum) = (NONE, 0);
        for &step in order.iter().rev() {
            sum += u128::from(self.cost(step, held));
            held = self.hold(step, held);
        }
        sum
    }
}
