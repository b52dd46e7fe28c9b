use std::sync::Arc;
fn cpu() -> f64 {
    let s = std::fs::read_to_string("/proc/self/stat").unwrap();
    let f: Vec<&str> = s.rsplit(") ").next().unwrap().split(' ').collect();
    (f[11].parse::<f64>().unwrap() + f[12].parse::<f64>().unwrap()) / 100.0
}
fn run(name: &str, text: String) {
    let a = cpu();
    let tree = Arc::new(syntax::read(text.as_str()));
    let b = cpu();
    let plan = plan::resolve("x", tree, &plan::EmptyShelf);
    let c = cpu();
    println!(
        "{name:30} {:5.1} MB read {:.2} resolve {:.2} things {} steps {} problems {}",
        text.len() as f64 / 1e6,
        b - a,
        c - b,
        plan.things.len(),
        plan.steps.len(),
        plan.problems.len()
    );
}
fn main() {
    let n = 20000;
    let mut text = String::from("plan \"x\"\npart block given\n");
    for i in 0..n {
        text += &format!(
            "part part-{i} \"Part {i}\"\n  onto block\n  material aluminum\n  mass 3 kg\n  covers point-{i}\nfasteners bolts-{i} 4 x M6 hold part-{i} torque 9 N.m from \"s\"\n  needs part-{i}\npoint point-{i} on block\n  reach with socket 11 mm clear of part-{i}\n  must be measured before part-{i} is fitted\n"
        );
    }
    for i in 0..n {
        text += &format!("fit part-{i}\ntighten bolts-{i} after part-{i} is fitted\n");
    }
    run("plain", text.clone());
    run("plain again", text.clone());
    run(
        "unknown",
        text.replace(" onto block", " onto blokc")
            .replace("hold part-", "hold prt-"),
    );
    let k = 40000;
    let mut t = String::from("part a\n");
    for i in 0..k {
        t += &format!("fasteners f-{i} 1 x M6 hold a\n");
    }
    for _ in 0..k {
        t += "do \"x\" after a is tight\n";
    }
    run("many holders", t);
    let mut t = String::from("part a\npart b\n");
    for i in 0..k {
        t += &format!("point p-{i} on a, b\n");
    }
    for i in 0..k {
        t += &format!("part c-{i} covers a\n");
    }
    for _ in 0..k {
        t += "part b covers a\n";
    }
    run("many points covered", t);
    let mut t = String::from("part b\n");
    for _ in 0..k {
        t += "  covers a\n";
    }
    t += "part a\n";
    for i in 0..k {
        t += &format!("point p-{i} on a, b\n");
    }
    run("own points covered", t);
    let mut t = String::from("series n 1..1000\n");
    for _ in 0..200000 {
        t += "stage \"s\" for each n in 1..999\n";
    }
    run("stages", t);
    let mut t = String::from("series n 1..1000\npart a-<n>\n");
    for _ in 0..100000 {
        t += "stage \"s\" for each n in 1,2,x\nfit a-<n>\n";
    }
    run("stages with steps", t);
    let mut t = String::from("position p of ");
    for i in 0..k {
        t += &format!("x{i}, ");
    }
    t += "y\n";
    for i in 0..k {
        t += &format!("turn p to z{i}\n");
    }
    run("places", t);
    let mut t = String::new();
    for i in 0..k {
        t += &format!("tool ratchety-{i}\n");
    }
    for i in 0..k {
        t += &format!("do \"x\" with ratchetx-{i}\n");
    }
    run("tools", t);
    let mut t = String::from("series n 1..1000\npart a-<n>\n");
    t += &format!("part b covers a-* because \"{}\"\n", "x".repeat(4_000_000));
    for _ in 0..20 {
        t += &format!("do \"x\" old a-* because \"{}\"\n", "y".repeat(100_000));
    }
    run("because", t);
    let mut t = String::from("series n 1..1000\nseries m 1..1000\nseries o 1..1000\npart a-<n>\n");
    for _ in 0..50000 {
        t += "fit a-<n>-<m>-<o>\nfit a-<n>-<m>\n";
    }
    run("missing combos", t);
    let mut t = String::new();
    for i in 0..k {
        t += &format!("part a-{i}\n");
    }
    for _ in 0..k {
        t += "fit a-*\n";
    }
    run("stars", t);
    let mut t = String::new();
    for i in 0..k {
        t += &format!("unit u-{i} of u-{}\n", (i + 1) % k);
    }
    run("unit ring", t);
    let mut t = String::from("unit u of ");
    for i in 0..k {
        t += &format!("u, a-{i}, ");
    }
    t += "a-1\n";
    for i in 0..k {
        t += &format!("part a-{i}\n");
    }
    run("unit in itself many", t);
    let mut t = String::new();
    for i in 0..k {
        t += &format!("%% x{i}\n");
    }
    for i in 0..k {
        t += &format!("fit y{i}\n");
    }
    run("rubbish", t);
    let mut t = String::from("part a\n");
    for i in 0..200 {
        t += &format!(
            "  onto {}\n",
            (0..200)
                .map(|j| format!("b{i}x{j}"))
                .collect::<Vec<_>>()
                .join(", ")
        );
    }
    run("long", t);
}
