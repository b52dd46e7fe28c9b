//! Tightening in passes, and angle stages.

use crate::quantity::{Angle, Torque, plain, rounded};
use crate::source::Source;
use crate::working::{Worked, Working};

/// One stage of tightening a fastener.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stage {
    /// To a torque.
    Torque(Torque),
    /// On by an angle from where it stands.
    Turn(Angle),
    /// Slacken off; what follows begins anew.
    Slacken,
    /// Mark, to see the angle that follows.
    Mark,
}

/// What is wrong with a list of stages. Places count from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StageProblem {
    /// No stage at all.
    Nothing,
    /// A torque below the one before it, with no slackening between.
    Falls {
        /// Its place.
        at: usize,
    },
    /// A torque of nothing or less.
    NoTorque {
        /// Its place.
        at: usize,
    },
    /// An angle of nothing or less.
    NoAngle {
        /// Its place.
        at: usize,
    },
    /// An angle with no torque before it to start from.
    TurnFromNothing {
        /// Its place.
        at: usize,
    },
    /// Slackened last, and never tightened again.
    EndsSlack,
}

/// What is wrong with a list of stages, in their order. The same torque twice
/// is right: it is how a gasket that has settled is caught up with.
pub fn check_stages(stages: &[Stage]) -> Vec<StageProblem> {
    let mut problems = Vec::new();
    let mut last: Option<Torque> = None;
    let mut slack = true;
    for (at, stage) in stages.iter().enumerate() {
        match stage {
            Stage::Torque(torque) => {
                if torque.si().is_nan() || torque.si() <= 0.0 {
                    problems.push(StageProblem::NoTorque { at });
                } else if last.is_some_and(|last| last.exceeds(*torque)) {
                    problems.push(StageProblem::Falls { at });
                }
                last = Some(*torque);
                slack = false;
            }
            Stage::Turn(angle) => {
                if angle.si().is_nan() || angle.si() <= 0.0 {
                    problems.push(StageProblem::NoAngle { at });
                }
                if slack {
                    problems.push(StageProblem::TurnFromNothing { at });
                }
            }
            Stage::Slacken => {
                last = None;
                slack = true;
            }
            Stage::Mark => {}
        }
    }
    match stages.last() {
        None => problems.push(StageProblem::Nothing),
        Some(Stage::Slacken) => problems.push(StageProblem::EndsSlack),
        Some(_) => {}
    }
    problems
}

/// The whole angle turned since the last torque or slackening, degrees: what a
/// mark on the head must have moved by. 0 where there is none.
pub fn total_turn(stages: &[Stage]) -> Worked<Angle> {
    let from = stages
        .iter()
        .rposition(|stage| matches!(stage, Stage::Torque(_) | Stage::Slacken));
    let turns: Vec<f64> = stages[from.map_or(0, |place| place + 1)..]
        .iter()
        .filter_map(|stage| match stage {
            Stage::Turn(angle) => Some(angle.in_degrees()),
            _ => None,
        })
        .collect();
    let total = Angle::degrees(turns.iter().sum());
    let each: Vec<String> = turns.iter().map(|turn| plain(*turn)).collect();
    let numbers = if each.is_empty() {
        "0".to_owned()
    } else {
        each.join(" + ")
    };
    let working = Working::new().line(
        "whole angle",
        "sum of the turns since the last torque",
        format!("{numbers} deg"),
        total,
    );
    Worked::new(total, working)
}

/// One turn of the wrench in the tightening of a whole group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Turn {
    /// The fastener, numbered from 1.
    pub fastener: usize,
    /// Which stage it is brought to, counting from 0.
    pub stage: usize,
}

/// Every turn of the wrench, in order: all of the group through one stage
/// before any begins the next (MIL-HDBK-60 par. 5.7). Two fasteners so
/// alternate stage by stage (TM 10-3930-669-20 App. E-4).
pub fn schedule(order: &[usize], stages: &[Stage]) -> Vec<Turn> {
    let through = |stage: usize| {
        order.iter().map(move |fastener| Turn {
            fastener: *fastener,
            stage,
        })
    };
    (0..stages.len()).flat_map(through).collect()
}

/// Shares of the final torque to go through, where a plan gives none.
#[derive(Debug, Clone, PartialEq)]
pub struct PassScheme {
    /// The scheme in words.
    pub words: &'static str,
    /// The shares, the last one 1.
    pub shares: &'static [f64],
    /// Whether a last pass goes round in order until nothing moves.
    pub round_at_the_end: bool,
    /// Where it comes from.
    pub source: Source,
}

/// Published schemes of passes.
pub fn pass_schemes() -> Vec<PassScheme> {
    vec![
        PassScheme {
            words: "30, 60 and 100 %, then once round",
            shares: &[0.3, 0.6, 1.0],
            round_at_the_end: true,
            source: Source::read("guidance pages on bolted flanges"),
        },
        PassScheme {
            words: "70 then 100 %, for torques above 30 lbf.ft (41 N.m)",
            shares: &[0.7, 1.0],
            round_at_the_end: false,
            source: Source::read("TM 5-3805-298-23-2 WP 0176 par. 3b"),
        },
        PassScheme {
            words: "20 to 30, 50 to 70 and 100 %, then once round",
            shares: &[0.25, 0.6, 1.0],
            round_at_the_end: true,
            source: Source::memory("ASME PCC-1 torque increments"),
        },
    ]
}

/// The torques of a scheme's passes: share × final torque. The passes before
/// the last are rounded to two significant digits, because nobody sets a wrench
/// finer for them.
pub fn pass_torques(last: Torque, scheme: &PassScheme) -> Worked<Vec<Torque>> {
    let mut working = Working::new().source(scheme.source.clone());
    let mut torques = Vec::new();
    for share in scheme.shares {
        let figure = share * last.amount().figure();
        let settable = if *share < 1.0 {
            rounded(figure, 2).parse().unwrap_or(figure)
        } else {
            figure
        };
        let torque = last.with_figure(settable);
        working = working.line(
            "pass",
            "share × final torque",
            format!("{} × {}", plain(*share), last.amount().as_given()),
            torque,
        );
        torques.push(torque);
    }
    Worked::new(torques, working)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn torque(figure: f64) -> Stage {
        Stage::Torque(Torque::newton_metres(figure))
    }

    fn turn(degrees: f64) -> Stage {
        Stage::Turn(Angle::degrees(degrees))
    }

    #[test]
    fn rising_and_repeated_passes_are_right() {
        assert!(
            check_stages(&[
                torque(4.0),
                torque(8.0),
                torque(8.0),
                Stage::Mark,
                turn(90.0)
            ])
            .is_empty()
        );
        assert!(check_stages(&[torque(90.0), Stage::Slacken, torque(40.0), turn(90.0)]).is_empty());
    }

    #[test]
    fn what_is_wrong_is_found_at_its_place() {
        assert_eq!(check_stages(&[]), [StageProblem::Nothing]);
        assert_eq!(
            check_stages(&[torque(8.0), torque(4.0)]),
            [StageProblem::Falls { at: 1 }]
        );
        assert_eq!(
            check_stages(&[turn(90.0)]),
            [StageProblem::TurnFromNothing { at: 0 }]
        );
        assert_eq!(
            check_stages(&[torque(8.0), Stage::Slacken]),
            [StageProblem::EndsSlack]
        );
        assert_eq!(
            check_stages(&[torque(0.0)]),
            [StageProblem::NoTorque { at: 0 }]
        );
        assert_eq!(
            check_stages(&[torque(8.0), Stage::Slacken, turn(-5.0)]),
            [
                StageProblem::NoAngle { at: 2 },
                StageProblem::TurnFromNothing { at: 2 }
            ]
        );
    }

    #[test]
    fn two_bolts_alternate_and_a_group_finishes_each_stage() {
        let turns = schedule(&[1, 2], &[turn(30.0), turn(30.0)]);
        let bolts: Vec<usize> = turns.iter().map(|turn| turn.fastener).collect();
        assert_eq!(bolts, [1, 2, 1, 2]);
        let turns = schedule(&[1, 3, 2, 4], &[torque(4.0), torque(8.0)]);
        assert_eq!(turns.len(), 8);
        assert!(turns.windows(2).all(|two| two[0].stage <= two[1].stage));
    }

    #[test]
    fn a_pass_is_a_figure_a_wrench_can_be_set_to() {
        let schemes = pass_schemes();
        let torques = pass_torques(Torque::newton_metres(65.0), &schemes[0]).value;
        let figures: Vec<String> = torques.iter().map(Torque::to_string).collect();
        assert_eq!(figures, ["20 N.m", "39 N.m", "65 N.m"]);
        for scheme in &schemes {
            assert_eq!(scheme.shares.last(), Some(&1.0));
        }
    }
}
