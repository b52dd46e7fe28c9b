//! `calc`: bench arithmetic, with its working.

use crate::cli::calc::{self, Calc, Drawing, What};
use crate::outcome::Outcome;
use sheet::torques::figure::Figure;
use sheet::{Look, sums};
use workshop::class::{BoltClass, proof_load};
use workshop::fits::{choose_shims, expansions, growth};
use workshop::preload::{NutFactor, clamp_load, share_of_proof};
use workshop::quantity::{
    Amount, Angle, Dimension, Length, Measure, Temperature, TemperatureDifference, Torque, Unit,
    unit_at_start,
};
use workshop::source::Source;
use workshop::strip::{Hole, Material, MaterialFamily, strip_load};
use workshop::thread::Thread;
use workshop::tightening::pattern::{Layout, MOST, Pattern, tightening_order};
use workshop::tightening::{Adapter, delivered, setting};

/// Does it.
pub fn run(arguments: &Calc, look: Look) -> Outcome {
    let mut outcome = Outcome::default();
    let page = match &arguments.what {
        What::Convert(asked) => convert(asked),
        What::Adapter(asked) => adapter(asked, look),
        What::Preload(asked) => preload(asked, look),
        What::Strip(asked) => strip(asked, look),
        What::Shim(asked) => shim(asked, look),
        What::Pattern(asked) => pattern(asked),
        What::Growth(asked) => grown(asked, look),
    };
    match page {
        Ok(page) => outcome.data(&page),
        Err(why) => outcome.fail(why),
    }
    outcome
}

fn measure(text: &str, wanted: Dimension) -> Result<Measure, String> {
    Measure::read_as(text, wanted).map_err(|problem| problem.describe())
}

/// A quantity that is one figure, as one of the kinds.
fn one<T: TryFrom<Amount>>(text: &str, wanted: Dimension) -> Result<T, String> {
    let measure = measure(text, wanted)?;
    if !measure.is_single() {
        return Err(format!("\"{text}\": give one figure here, not a range"));
    }
    T::try_from(measure.middle()).map_err(|_| format!("\"{text}\" is not {}", wanted.words()))
}

fn thread(text: &str) -> Result<Thread, String> {
    let thread = Thread::read(text).map_err(|problem| problem.describe())?;
    if thread.diameter().is_none() {
        return Err(format!(
            "{}: this family of threads is known by name only; nothing is worked out for it",
            thread.designation()
        ));
    }
    Ok(thread)
}

fn class(text: Option<&str>, thread: &Thread) -> Result<Option<BoltClass>, String> {
    text.map(|text| BoltClass::read(text, Some(thread)).map_err(|problem| problem.describe()))
        .transpose()
}

fn convert(asked: &calc::Convert) -> Result<String, String> {
    let said = asked.words.join(" ");
    let (quantity, unit) = match said
        .rsplit_once(" to ")
        .or_else(|| said.rsplit_once(" in "))
    {
        Some((quantity, unit)) => (quantity.to_owned(), Some(unit.trim().to_owned())),
        None => (said, None),
    };
    let measure = Measure::read(&quantity).map_err(|problem| problem.describe())?;
    let shown = match &unit {
        Some(unit) => {
            let known = unit_at_start(unit).filter(|(_, rest)| rest.trim().is_empty());
            let Some((spelling, _)) = known else {
                return Err(format!("\"{unit}\" is no unit known here"));
            };
            measure.in_unit(spelling.unit).ok_or_else(|| {
                format!(
                    "{quantity} is {}, and {} measures something else",
                    measure.dimension(),
                    spelling.unit.symbol()
                )
            })?
        }
        None => measure.other_unit().ok_or_else(|| {
            format!("nobody would want {quantity} in another unit; say which behind \"to\"")
        })?,
    };
    let finer = Amount::in_unit(measure.middle(), shown.unit());
    let mut page = format!("{measure} = {shown}\n");
    if measure.is_single()
        && let Some(finer) = finer
    {
        page += &format!("\n  to six figures: {}\n", finer.rounded(6));
    }
    page += &factor(measure.unit(), shown.unit());
    Ok(page)
}

/// How two units go into each other.
fn factor(from: Unit, to: Unit) -> String {
    match from.convert_difference(1.0, to) {
        Some(ratio) if from.dimension() != Dimension::Temperature => format!(
            "  1 {} = {} {}\n  source: the inch and the pound of 1959, standard gravity of 1901, the SI Brochure, 9th edition\n",
            from.symbol(),
            Amount::new(ratio, Unit::Number).rounded(7),
            to.symbol()
        ),
        _ => "  the two scales have their zero in different places; °F = °C × 9/5 + 32\n  source: the SI Brochure, 9th edition\n".into(),
    }
}

fn adapter(asked: &calc::Adapter, look: Look) -> Result<String, String> {
    let torque: Torque = one(&asked.torque, Dimension::Torque)?;
    let length: Option<Length> = asked
        .length
        .as_deref()
        .map(|length| one(length, Dimension::Length))
        .transpose()?;
    let adapter = Adapter {
        wrench_length: length,
        reach: one::<Length>(&asked.reach, Dimension::Length)?,
        angle: one::<Angle>(&asked.angle, Dimension::Angle)?,
    };
    let (worked, result) = if asked.set {
        let worked = delivered(torque, &adapter);
        (worked, "at the fastener")
    } else {
        let worked = setting(torque, &adapter);
        (worked, "set the wrench to")
    };
    let worked = worked.map_err(|problem| problem.describe().to_owned())?;
    let title = format!("{result}: {}", both(worked.value.amount()));
    Ok(sums::page(&title, &worked.working, look))
}

/// An amount with the other unit behind it.
fn both(amount: Amount) -> String {
    match amount.other_unit() {
        Some(other) => format!("{amount} ({})", other.rounded(3)),
        None => amount.to_string(),
    }
}

fn preload(asked: &calc::Preload, look: Look) -> Result<String, String> {
    let torque: Torque = one(&asked.torque, Dimension::Torque)?;
    if torque.si() <= 0.0 {
        return Err("the torque must be more than nothing".into());
    }
    let thread = thread(&asked.thread)?;
    let class = class(asked.class.as_deref(), &thread)?;
    let diameter = thread
        .diameter()
        .ok_or("nothing is worked out for this thread")?;
    let factor = match asked.factor {
        Some(k) => NutFactor::exactly(k, Source::given("the nut factor given"))
            .ok_or("a nut factor lies between 0 and 1")?,
        None => NutFactor::condition_unknown(),
    };
    let worked = clamp_load(torque, diameter, &factor);
    let mut title = format!(
        "each screw pulls with about {}",
        both(worked.value.amount())
    );
    if asked.factor.is_none() {
        let most = clamp_load(torque, diameter, &factor.at_low()).value;
        let least = clamp_load(torque, diameter, &factor.at_high()).value;
        title += &format!(", from {least} to {most} by friction");
    }
    let mut page = sums::page(&title, &worked.working, look);
    if let Some(class) = class {
        match share_of_proof(worked.value, &thread, class) {
            Some(share) => {
                let percent = Amount::new(share.value * 100.0, Unit::Percent).rounded(2);
                page.push('\n');
                page += &sums::page(
                    &format!("that is {percent} of the proof load"),
                    &share.working,
                    look,
                );
            }
            None => page += "\nthe class is not given in this size\n",
        }
    }
    Ok(page)
}

fn strip(asked: &calc::Strip, look: Look) -> Result<String, String> {
    let thread = thread(&asked.thread)?;
    let family = MaterialFamily::read(&asked.into).ok_or_else(|| {
        format!(
            "\"{}\" is no material known here: steel, stainless, cast-iron, aluminium or magnesium",
            asked.into
        )
    })?;
    let material = Material::usual(family).ok_or_else(|| {
        format!(
            "no strength of {} is published that could be used here",
            family.words()
        )
    })?;
    let hole = Hole {
        material,
        engagement: one::<Length>(&asked.depth, Dimension::Length)?,
        insert: false,
    };
    let class = class(asked.class.as_deref(), &thread)?;
    let found =
        strip_load(&thread, &hole, class).map_err(|problem| problem.describe().to_owned())?;
    let which = if found.hole_goes_first() {
        "the thread in the hole"
    } else {
        "the thread of the screw"
    };
    let load = found.load();
    let title = format!("{which} strips at about {}", both(load.value.amount()));
    let mut page = sums::page(&title, &load.working, look);
    if let Some(proof) = class.and_then(|class| proof_load(&thread, class)) {
        let first = if load.value.exceeds(proof.value) {
            "the screw stretches before the thread strips"
        } else {
            "the thread strips before the screw stretches"
        };
        page.push('\n');
        let title = format!("the screw stretches for good at {}: {first}", proof.value);
        page += &sums::page(&title, &proof.working, look);
    }
    Ok(page)
}

fn shim(asked: &calc::Shim, look: Look) -> Result<String, String> {
    let gap: Length = one(&asked.gap, Dimension::Length)?;
    let target = measure(&asked.to, Dimension::Length)?;
    let stock = Measure::read_list(&asked.from, Some(Dimension::Length))
        .map_err(|problem| problem.describe())?;
    let stock: Vec<Length> = stock
        .iter()
        .filter_map(|size| Length::try_from(size.middle()).ok())
        .collect();
    let chosen = choose_shims(gap, &target, &stock, asked.most)
        .map_err(|problem| problem.describe().to_owned())?;
    let shims: Vec<String> = chosen
        .value
        .shims
        .iter()
        .map(|shim| shim.amount().as_given())
        .collect();
    let choice = if shims.is_empty() {
        "no shim".to_owned()
    } else {
        shims.join(" and ")
    };
    let title = if chosen.value.within {
        format!("{choice}: leaves {}", chosen.value.clearance)
    } else {
        format!(
            "none of these sizes leaves {target}; the nearest is {choice}, which leaves {}",
            chosen.value.clearance
        )
    };
    Ok(sums::page(&title, &chosen.working, look))
}

fn pattern(asked: &calc::Pattern) -> Result<String, String> {
    if asked.count == 0 || asked.count > MOST {
        return Err(format!("an order is made for 1 to {MOST} fasteners"));
    }
    let layout = match asked.layout {
        None => Layout::usual(asked.count),
        Some(calc::Layout::Ring) => Layout::Ring(asked.count),
        Some(calc::Layout::Line) => Layout::Line(asked.count),
        Some(calc::Layout::TwoRows) => Layout::two_rows(asked.count),
    };
    let pattern = match asked.order {
        calc::Order::Cross => Pattern::Cross,
        calc::Order::Spiral => Pattern::Spiral,
        calc::Order::Round => Pattern::Round,
    };
    let mut order = tightening_order(layout, pattern);
    let mut words = pattern.word().to_owned();
    if asked.loosen {
        order.reverse();
        words += ", backwards to loosen";
    }
    let figure = Figure {
        of: format!("{} fasteners", asked.count),
        layout,
        layout_said: true,
        words,
        order,
    };
    if asked.form == Drawing::Svg {
        return Ok(figure.svg());
    }
    let numbered = match layout {
        Layout::Ring(_) => "numbered clockwise from the top",
        Layout::Line(_) => "numbered from the left",
        Layout::TwoRows { .. } => "numbered from the left, the upper row first",
    };
    let source = match (layout, pattern) {
        (Layout::Ring(_), Pattern::Cross) if asked.count.is_multiple_of(2) => {
            "MIL-HDBK-60 fig. 4; ASME PCC-1 (from memory)"
        }
        (Layout::Line(_), Pattern::Cross | Pattern::Spiral) => "TM 5-3805-298-23-2 WP 0176",
        _ => "common practice, no source",
    };
    Ok(format!(
        "{}\n\n{}\n  places are {numbered}; the drawing shows when the turn of each comes\n  source: {source}\n",
        figure.caption(),
        figure.text()
    ))
}

fn grown(asked: &calc::Growth, look: Look) -> Result<String, String> {
    let size: Length = one(&asked.size, Dimension::Length)?;
    let known = expansions();
    let wanted = asked.of.replace('-', " ").replace("aluminum", "aluminium");
    let material = known
        .iter()
        .find(|one| one.words() == wanted || one.words().ends_with(&format!(" {wanted}")));
    let Some(material) = material else {
        let words: Vec<&str> = known.iter().map(|one| one.words()).collect();
        return Err(format!(
            "the expansion of \"{}\" is not known here; these are: {}",
            asked.of,
            words.join(", ")
        ));
    };
    let from: Temperature = one(&asked.from, Dimension::Temperature)?;
    let to: Temperature = one(&asked.to, Dimension::Temperature)?;
    let rise = TemperatureDifference::kelvin(to.si() - from.si());
    let worked = growth(size, material, rise);
    let title = format!("it grows by {}", both(worked.value.amount()));
    Ok(sums::page(&title, &worked.working, look))
}
