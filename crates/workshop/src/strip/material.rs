//! What holes are cut in.

use crate::quantity::Pressure;
use crate::source::Source;

/// Shear strength as a share of tensile strength: 0.6. Common practice, no
/// source; on the cautious side for cast iron and aluminium.
pub const SHEAR_OF_TENSILE: f64 = 0.6;

/// The family a material belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MaterialFamily {
    /// Steel.
    Steel,
    /// Stainless steel.
    Stainless,
    /// Grey or nodular cast iron.
    CastIron,
    /// Aluminium alloys.
    Aluminium,
    /// Magnesium alloys.
    Magnesium,
    /// Brass and bronze.
    Brass,
    /// Plastics, reinforced or not.
    Plastic,
}

impl MaterialFamily {
    /// The family by the word for it; both spellings of aluminium are read.
    pub fn read(word: &str) -> Option<MaterialFamily> {
        Some(match word.trim().to_lowercase().as_str() {
            "steel" => MaterialFamily::Steel,
            "stainless" | "stainless-steel" | "stainless steel" => MaterialFamily::Stainless,
            "cast-iron" | "cast iron" | "iron" => MaterialFamily::CastIron,
            "aluminium" | "aluminum" | "alloy" => MaterialFamily::Aluminium,
            "magnesium" => MaterialFamily::Magnesium,
            "brass" | "bronze" => MaterialFamily::Brass,
            "plastic" | "nylon" => MaterialFamily::Plastic,
            _ => return None,
        })
    }

    /// The family in words.
    pub fn words(self) -> &'static str {
        match self {
            MaterialFamily::Steel => "steel",
            MaterialFamily::Stainless => "stainless steel",
            MaterialFamily::CastIron => "cast iron",
            MaterialFamily::Aluminium => "aluminium",
            MaterialFamily::Magnesium => "magnesium",
            MaterialFamily::Brass => "brass",
            MaterialFamily::Plastic => "plastic",
        }
    }
}

/// What a hole is cut in, with its strength and where that comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    family: MaterialFamily,
    name: String,
    tensile: Option<Pressure>,
    shear: Pressure,
    source: Source,
    stand_in: bool,
}

impl Material {
    /// A material whose tensile strength is known; the shear strength is taken
    /// as [`SHEAR_OF_TENSILE`] of it.
    pub fn from_tensile(
        family: MaterialFamily,
        name: impl Into<String>,
        tensile: Pressure,
        source: Source,
    ) -> Material {
        let shear = Pressure::megapascals(SHEAR_OF_TENSILE * tensile.in_megapascals());
        Material {
            family,
            name: name.into(),
            tensile: Some(tensile),
            shear: shear.shown_in(tensile.unit()),
            source,
            stand_in: false,
        }
    }

    /// A material whose shear strength is known.
    pub fn from_shear(
        family: MaterialFamily,
        name: impl Into<String>,
        shear: Pressure,
        source: Source,
    ) -> Material {
        Material {
            family,
            name: name.into(),
            tensile: None,
            shear,
            source,
            stand_in: false,
        }
    }

    /// What stands in where only the family is said: its weakest usual alloy.
    /// `None` for plastic, for which no limit is published, and for brass, of
    /// which no table was read.
    ///
    /// Tensile strengths in MPa from VDI 2230:2003 Table A9 (read in a
    /// catalogue): S235 340, X5CrNi18-12 500, GJL-250 250, gravity-cast
    /// AlSi9Cu3 180, AZ91 310.
    pub fn usual(family: MaterialFamily) -> Option<Material> {
        let (name, tensile) = match family {
            MaterialFamily::Steel => ("mild steel S235", 340.0),
            MaterialFamily::Stainless => ("stainless steel X5CrNi18-12", 500.0),
            MaterialFamily::CastIron => ("grey iron GJL-250", 250.0),
            MaterialFamily::Aluminium => ("gravity-cast AlSi9Cu3", 180.0),
            MaterialFamily::Magnesium => ("cast AZ91", 310.0),
            MaterialFamily::Brass | MaterialFamily::Plastic => return None,
        };
        let source = Source::copied("VDI 2230:2003 Table A9, tensile strength");
        let tensile = Pressure::megapascals(tensile);
        let material = Material::from_tensile(family, name, tensile, source);
        Some(Material {
            stand_in: true,
            ..material
        })
    }

    /// Its family.
    pub fn family(&self) -> MaterialFamily {
        self.family
    }

    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its tensile strength, where it was given.
    pub fn tensile(&self) -> Option<Pressure> {
        self.tensile
    }

    /// Its shear strength.
    pub fn shear(&self) -> Pressure {
        self.shear
    }

    /// Where its strength comes from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// What was taken for granted about it, each a sentence.
    pub fn assumptions(&self) -> Vec<String> {
        let mut all = Vec::new();
        if self.stand_in {
            all.push(format!(
                "the {} is {}, a weak one of its kind",
                self.family.words(),
                self.name
            ));
        }
        if let Some(tensile) = self.tensile {
            all.push(format!(
                "it shears at {SHEAR_OF_TENSILE} of its tensile strength of {tensile} (common practice, no source)"
            ));
        }
        all
    }
}
