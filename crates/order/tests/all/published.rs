//! Published and independently computed values; `data/README.md` names the
//! sources.

use order::{
    Builder, Count, Effort, Feasibility, Instance, Proof, Reason, StuckKind, Wait, Way,
    count_orders, count_sets, feasible, graph, implied_arcs, nearest, stuck_set,
};

/// Rows of a table, without its heading; cells may stand in quotes.
fn table(text: &str) -> Vec<Vec<String>> {
    text.lines().skip(1).map(cells).collect()
}

fn cells(line: &str) -> Vec<String> {
    let mut out = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => out.push(String::new()),
            c => out.last_mut().unwrap().push(c),
        }
    }
    out
}

fn number(text: &str) -> usize {
    text.trim().parse().unwrap()
}

/// Pairs such as `1<2 3<2`, counted from 1 there and from 0 here.
fn pairs(text: &str) -> Vec<(u32, u32)> {
    text.split_whitespace()
        .map(|pair| {
            let (a, b) = pair.split_once('<').unwrap();
            (number(a) as u32 - 1, number(b) as u32 - 1)
        })
        .collect()
}

fn from_arcs(n: usize, arcs: &[(u32, u32)]) -> Instance {
    let mut builder = Builder::new(n);
    for (i, &(a, b)) in arcs.iter().enumerate() {
        builder.before(a, b, Reason(i as u32));
    }
    builder.build()
}

fn counted(inst: &Instance, limit: usize) -> String {
    match count_orders(inst, limit) {
        Count::Exact(number) => number.to_string(),
        Count::Above { limit } => panic!("above {limit}"),
    }
}

struct Graph {
    arcs: Vec<(u32, u32)>,
    times: Vec<u64>,
}

fn scholl(name: &str) -> Graph {
    let path = format!(
        "{}/tests/data/scholl/{}.txt",
        env!("CARGO_MANIFEST_DIR"),
        name.to_lowercase()
    );
    let text = std::fs::read_to_string(path).unwrap();
    let mut out = Graph {
        arcs: Vec::new(),
        times: Vec::new(),
    };
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let words: Vec<&str> = line.split_whitespace().collect();
        match words.as_slice() {
            ["n", n] => out.times = vec![0; number(n)],
            ["t", step, time] => out.times[number(step) - 1] = number(time) as u64,
            ["a", a, b] => out.arcs.push((number(a) as u32 - 1, number(b) as u32 - 1)),
            other => panic!("{other:?}"),
        }
    }
    out
}

#[test]
fn scholl_table_1() {
    let rows = table(include_str!("../data/scholl/figures.csv"));
    assert_eq!(rows.len(), 20);
    let mut counts = 0;
    for row in rows {
        let name = row[0].as_str();
        let Graph { arcs, times } = scholl(name);
        let inst = from_arcs(times.len(), &arcs);
        assert_eq!(inst.steps(), number(&row[1]), "{name}");
        assert_eq!(inst.arc_count(), number(&row[2]), "{name}");
        // KILBRID is printed as 44.6; see the README.
        let printed = if name == "KILBRID" {
            "44.5"
        } else {
            row[3].as_str()
        };
        let strength = 100.0 * graph::order_strength(&inst).unwrap();
        let digits = printed.split_once('.').map_or(0, |x| x.1.len());
        assert_eq!(format!("{strength:.digits$}"), printed, "{name}");
        let time = |x: Option<&u64>| *x.unwrap() as usize;
        assert_eq!(time(times.iter().min()), number(&row[4]), "{name}");
        assert_eq!(time(times.iter().max()), number(&row[5]), "{name}");
        assert_eq!(
            times.iter().sum::<u64>() as usize,
            number(&row[6]),
            "{name}"
        );
        let closure = graph::Closure::new(&inst).unwrap();
        assert_eq!(closure.pairs(), number(&row[7]), "{name}");
        let spare = implied_arcs(&inst, Effort::default());
        assert!(spare.complete);
        assert_eq!(arcs.len() - spare.arcs.len(), number(&row[8]), "{name}");
        let spare: Vec<String> = spare
            .arcs
            .iter()
            .map(|(a, b, _)| format!("{}-{}", a + 1, b + 1))
            .collect();
        assert_eq!(spare.join(" "), row[9], "{name}");
        assert_eq!(graph::width(&inst), Some(number(&row[10])), "{name}");
        assert_eq!(
            graph::longest_chain(&inst),
            Some(number(&row[11])),
            "{name}"
        );
        let path = graph::heaviest_chain(&inst, &times);
        assert_eq!(path, Some(number(&row[12]) as u64), "{name}");
        if !row[13].is_empty() {
            counts += 1;
            assert_eq!(counted(&inst, 1_000_000), row[13], "{name}");
            let sets = number(&row[14]);
            assert_eq!(count_sets(&inst, sets), Some(sets), "{name}");
        }
    }
    assert_eq!(counts, 14);
}

#[test]
fn known_numbers_of_linear_extensions() {
    let rows = table(include_str!("../data/linear_extensions.csv"));
    assert_eq!(rows.len(), 18);
    for row in rows {
        let n = number(&row[1]);
        let arcs = if row[2] == "(family rule)" {
            assert_eq!(row[0], "three chains of 20");
            (0..60)
                .filter(|i| i % 20 != 19)
                .map(|i| (i, i + 1))
                .collect()
        } else {
            pairs(&row[2])
        };
        let inst = from_arcs(n, &arcs);
        assert_eq!(counted(&inst, 10_000), row[3], "{}", row[0]);
        assert_eq!(
            count_sets(&inst, 10_000),
            Some(number(&row[4])),
            "{}",
            row[0]
        );
    }
}

#[test]
fn access_orders() {
    let rows = table(include_str!("../data/access_orders.csv"));
    assert_eq!(rows.len(), 30);
    for row in rows {
        let name = &row[0];
        let mut builder = Builder::new(number(&row[1]));
        let mut next = 0;
        let mut why = || {
            next += 1;
            Reason(next)
        };
        for (a, b) in pairs(&row[2]) {
            builder.before(a, b, why());
        }
        for rule in row[3].split(';').filter(|rule| !rule.trim().is_empty()) {
            let (step, ways) = rule.split_once(':').unwrap();
            let ways = ways.split('|').map(|way| Way {
                later: way
                    .split('+')
                    .map(|s| (number(s) as u32 - 1, why()))
                    .collect(),
                earlier: Vec::new(),
            });
            let ways = ways.collect();
            builder.wait(Wait {
                step: number(step) as u32 - 1,
                ways,
                why: why(),
            });
        }
        let inst = builder.build();
        assert_eq!(counted(&inst, 10_000), row[4], "{name}");
        let stuck: Vec<String> = stuck_set(&inst)
            .iter()
            .map(|s| (s + 1).to_string())
            .collect();
        assert_eq!(stuck.join(" "), row[6], "{name}");
        match feasible(&inst, Effort::default()) {
            Feasibility::Order(order) => {
                assert_eq!(row[5], "yes", "{name}");
                assert!(inst.allows(&order));
            }
            Feasibility::Stuck(stuck) => {
                assert_eq!(row[5], "no", "{name}");
                // No explanation names fewer steps than the smallest closed set.
                assert!(stuck.steps.len() >= number(&row[7]), "{name}");
                if let StuckKind::Minimal { proven } = stuck.kind {
                    assert!(proven, "{name}");
                }
            }
            Feasibility::Unknown { .. } => panic!("{name}"),
        }
    }
}

#[test]
fn nearest_orders() {
    let rows = table(include_str!("../data/nearest_order.csv"));
    assert_eq!(rows.len(), 40);
    for row in rows {
        let n = number(&row[1]);
        let mut place = vec![0; n];
        for (i, step) in row[2].split_whitespace().enumerate() {
            place[number(step) - 1] = i as u32;
        }
        let arcs: Vec<(u32, u32)> = pairs(&row[3])
            .into_iter()
            .map(|(a, b)| (place[a as usize], place[b as usize]))
            .collect();
        let inst = from_arcs(n, &arcs);
        let closure = graph::Closure::new(&inst).unwrap();
        let conflicts = (0..n as u32).flat_map(|a| (0..a).map(move |b| (a, b)));
        let conflicts = conflicts.filter(|&(a, b)| closure.before(a, b)).count();
        assert_eq!(conflicts, number(&row[4]), "{}", row[0]);
        let found = nearest(&inst, Effort::default()).unwrap();
        assert_eq!(found.moved.len(), number(&row[5]), "{}", row[0]);
        assert_eq!(found.proof, Proof::Fewest);
        assert!(inst.allows(&found.order));
    }
}

/// The five joints of a ball-point pen: 1 head and body, 2 button and body,
/// 3 head and tube, 4 ink into tube, 5 cap and body. D. Ullman, *The Mechanical
/// Design Process*, figure 11.20, prints the rules 3 before 4 and 1 before 5:
/// 30 orders, computed. With the further rule that ink cannot go in once both
/// ends are closed there are 12, the number remembered (not read again) for the
/// pen of A. Bourjault's thesis, Besançon 1984.
#[test]
fn the_pen() {
    let pen = |access: &[&[u32]]| {
        let mut builder = Builder::new(5);
        builder.before(2, 3, Reason(0));
        builder.before(0, 4, Reason(1));
        for joint in access {
            let way = |&end: &u32| Way {
                later: vec![(end, Reason(2))],
                earlier: Vec::new(),
            };
            builder.wait(Wait {
                step: joint[0],
                ways: joint[1..].iter().map(way).collect(),
                why: Reason(3),
            });
        }
        counted(&builder.build(), 100)
    };
    assert_eq!(pen(&[]), "30");
    assert_eq!(pen(&[&[3, 0, 1]]), "12");
    // That the tube cannot go in either is already implied.
    assert_eq!(pen(&[&[3, 0, 1], &[2, 0, 1]]), "12");
    // The strict chain: 4 before 1 too.
    let chain = from_arcs(5, &[(2, 3), (3, 0), (0, 4)]);
    assert_eq!(counted(&chain, 100), "5");
}

/// Cap, stick, receptacle and handle: L. Homem de Mello and A. Sanderson,
/// AND/OR graph representation of assembly plans, AAAI 1986. The contacts and the
/// 15 hyperarcs are remembered, not read again; the other numbers computed. Each complete
/// tree is a partial order of its joins; shuffling independent branches gives the
/// step sequences.
#[test]
fn the_four_part_device() {
    let (cap, stick, receptacle, handle) = (1u32, 2u32, 4u32, 8u32);
    let contacts = [
        cap | stick,
        cap | receptacle,
        stick | receptacle,
        stick | handle,
        receptacle | handle,
    ];
    let connected = |set: u32| {
        let mut reached = set & set.wrapping_neg();
        for _ in 0..4 {
            for contact in contacts.iter().filter(|&&c| c & set == c) {
                if contact & reached != 0 {
                    reached |= contact;
                }
            }
        }
        reached == set
    };
    let impossible = [cap | receptacle | handle, cap | stick | handle];
    let exists = |set: u32| set != 0 && connected(set) && !impossible.contains(&set);
    let splits = |set: u32| -> Vec<(u32, u32)> {
        (1..set)
            .filter(|a| a & set == *a && *a < set & !a)
            .map(|a| (a, set & !a))
            .filter(|&(a, b)| exists(a) && exists(b))
            .collect()
    };
    // Every way to build a set: its joins, each with the set that it makes.
    fn trees(set: u32, splits: &impl Fn(u32) -> Vec<(u32, u32)>) -> Vec<Vec<u32>> {
        if set.count_ones() == 1 {
            return vec![Vec::new()];
        }
        let mut out = Vec::new();
        for (a, b) in splits(set) {
            for left in trees(a, splits) {
                for right in trees(b, splits) {
                    out.push([left.clone(), right, vec![set]].concat());
                }
            }
        }
        out
    }
    let whole = cap | stick | receptacle | handle;
    let nodes: Vec<u32> = (1..=whole).filter(|&set| exists(set)).collect();
    let hyperarcs: usize = nodes.iter().map(|&set| splits(set).len()).sum();
    let trees = trees(whole, &splits);
    let mut sequences = 0;
    for joins in &trees {
        let mut builder = Builder::new(joins.len());
        for (i, &a) in joins.iter().enumerate() {
            for (j, &b) in joins.iter().enumerate() {
                if i != j && a & b == a {
                    builder.before(i as u32, j as u32, Reason(0));
                }
            }
        }
        sequences += number(&counted(&builder.build(), 100));
    }
    assert_eq!(
        (nodes.len(), hyperarcs, trees.len(), sequences),
        (12, 15, 8, 10)
    );
}
