//! Maximum flow and minimum cut by layered augmentation.
//!
//! E. Dinitz, Soviet Mathematics Doklady 11, 1970, 1277-1280. The depth-first
//! part keeps its own stack: augmenting paths can be thousands of arcs long.

/// Larger than any sum of capacities used here.
pub(super) const UNBOUNDED: u64 = u64::MAX / 4;

#[derive(Default)]
pub(super) struct Network {
    head: Vec<u32>,
    room: Vec<u64>,
    /// Arc numbers by the node they leave; arc `e ^ 1` runs back along `e`.
    leaving: Vec<Vec<u32>>,
}

impl Network {
    pub fn new(nodes: usize) -> Self {
        Self {
            leaving: vec![Vec::new(); nodes],
            ..Self::default()
        }
    }

    pub fn arc(&mut self, from: u32, to: u32, capacity: u64) {
        let number = self.head.len() as u32;
        self.head.extend([to, from]);
        self.room.extend([capacity, 0]);
        self.leaving[from as usize].push(number);
        self.leaving[to as usize].push(number + 1);
    }

    /// Sends as much as can be sent from `source` to `sink`.
    pub fn saturate(&mut self, source: u32, sink: u32) {
        let n = self.leaving.len();
        let mut level = vec![u32::MAX; n];
        let mut next = vec![0usize; n];
        while self.layer(source, sink, &mut level) {
            next.fill(0);
            let mut path: Vec<u32> = Vec::new();
            loop {
                let at = path.last().map_or(source, |&e| self.head[e as usize]);
                if at == sink {
                    self.send(&mut path);
                    continue;
                }
                let arcs = &self.leaving[at as usize];
                let onward = arcs[next[at as usize]..].iter().position(|&e| {
                    self.room[e as usize] > 0
                        && level[self.head[e as usize] as usize] == level[at as usize] + 1
                });
                match onward {
                    Some(skipped) => {
                        next[at as usize] += skipped;
                        path.push(arcs[next[at as usize]]);
                    }
                    None => {
                        next[at as usize] = arcs.len();
                        level[at as usize] = u32::MAX;
                        if path.pop().is_none() {
                            break;
                        }
                    }
                }
            }
        }
    }

    /// Sends what the path has room for and cuts it back to its first full arc.
    fn send(&mut self, path: &mut Vec<u32>) {
        let room = path.iter().map(|&e| self.room[e as usize]).min();
        let room = room.unwrap_or(0);
        let mut full = path.len();
        for (i, &e) in path.iter().enumerate().rev() {
            self.room[e as usize] -= room;
            self.room[e as usize ^ 1] += room;
            if self.room[e as usize] == 0 {
                full = i;
            }
        }
        path.truncate(full);
    }

    fn layer(&self, source: u32, sink: u32, level: &mut [u32]) -> bool {
        level.fill(u32::MAX);
        level[source as usize] = 0;
        let mut queue = vec![source];
        let mut at = 0;
        while let Some(&v) = queue.get(at) {
            at += 1;
            for &e in &self.leaving[v as usize] {
                let w = self.head[e as usize];
                if self.room[e as usize] > 0 && level[w as usize] == u32::MAX {
                    level[w as usize] = level[v as usize] + 1;
                    queue.push(w);
                }
            }
        }
        level[sink as usize] != u32::MAX
    }

    /// After [`Network::saturate`]: for each node, whether it lies on the source side of
    /// the minimum cut that has the most there (all nodes that cannot reach the
    /// sink any more).
    pub fn source_side_largest(&self, sink: u32) -> Vec<bool> {
        let mut out = vec![true; self.leaving.len()];
        out[sink as usize] = false;
        let mut todo = vec![sink];
        while let Some(v) = todo.pop() {
            for &e in &self.leaving[v as usize] {
                let w = self.head[e as usize];
                if self.room[e as usize ^ 1] > 0 && out[w as usize] {
                    out[w as usize] = false;
                    todo.push(w);
                }
            }
        }
        out
    }

    /// As above, of the minimum cut that has the fewest on the source side.
    pub fn source_side_smallest(&self, source: u32) -> Vec<bool> {
        let mut out = vec![false; self.leaving.len()];
        out[source as usize] = true;
        let mut todo = vec![source];
        while let Some(v) = todo.pop() {
            for &e in &self.leaving[v as usize] {
                let w = self.head[e as usize];
                if self.room[e as usize] > 0 && !out[w as usize] {
                    out[w as usize] = true;
                    todo.push(w);
                }
            }
        }
        out
    }
}
