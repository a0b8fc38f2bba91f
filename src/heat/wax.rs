//! What waxes and vessels are made of: the properties the heat flow needs, and where they come from.

use super::error::{HeatError, within};

/// A wax: J, kg, K, m and W, temperatures in °C.
///
/// The heat of melting is given off evenly between `liquidus` and `solidus`; real waxes give it off unevenly, and
/// paraffins a part of it in a change within the solid.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Wax {
    /// Wholly solid below, °C.
    pub solidus: f64,
    /// Wholly liquid above, °C.
    pub liquidus: f64,
    /// J/kg.
    pub latent: f64,
    /// J/(kg·K), of the solid and of the liquid.
    pub heat_solid: f64,
    pub heat_liquid: f64,
    /// W/(m·K), of the solid and of the liquid.
    pub conduct_solid: f64,
    pub conduct_liquid: f64,
    /// kg/m³ of the liquid at 80 °C, and the share it grows by for each kelvin.
    pub density_liquid: f64,
    pub expansion_liquid: f64,
    /// kg/m³ of the solid at 20 °C, and the share it grows by for each kelvin.
    pub density_solid: f64,
    pub expansion_solid: f64,
}

/// What a wall is made of: kg/m³, J/(kg·K), W/(m·K); and the share of a black body's radiation it gives off.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Material {
    pub density: f64,
    pub heat: f64,
    pub conduct: f64,
    pub emissivity: f64,
}

// Walls: EN 12524:2000, tabulated values. Emissivities: tables of thermography after Bramson, rounded.

/// Soda-lime glass. A textbook prints 1.4 for its conductivity; EN 12524 and the ASHRAE Handbook have 1.0, and crown
/// glass 1.05 (Mechanical Engineer's Data Handbook, p. 132). Emissivity 0.9 to 0.97.
pub const GLASS: Material = Material { density: 2500.0, heat: 750.0, conduct: 1.0, emissivity: 0.9 };
/// Glazed stoneware: as tiles of ceramic or porcelain; emissivity of fired clay 0.91.
pub const CERAMIC: Material = Material { density: 2300.0, heat: 840.0, conduct: 1.3, emissivity: 0.9 };
/// Tinned steel. A bright tinned sheet has an emissivity of 0.06, a painted one 0.8 to 0.95: ours, for a thin clear
/// lacquer, is a guess between them.
pub const STEEL: Material = Material { density: 7800.0, heat: 450.0, conduct: 50.0, emissivity: 0.3 };
/// Aluminium alloys; emissivity of a sheet as it is sold 0.09.
pub const ALUMINIUM: Material = Material { density: 2800.0, heat: 880.0, conduct: 160.0, emissivity: 0.1 };

/// A paraffin-like wax for containers.
///
/// Heat of melting 200 kJ/kg and specific heats 2.1–2.9: the ranges of encyclopaedias for paraffin wax
/// (melts at 46–68 °C, 200–220 J/g). Conductivity 0.25 of the solid: Mechanical Engineer's Data Handbook, p. 132.
/// The liquid beside pure alkanes of 24 to 28 carbons at 80 °C (library thermo 0.6.1): 758 kg/m³, 8.3e-4 to 9.2e-4 per
/// kelvin, 0.145 to 0.149 W/(m·K), 2.31 kJ/(kg·K); waxes are a little denser and conduct a little better, ours by choice.
/// The solid's density and expansion, and the melting range, 50 to 57 °C, of a soft container wax: `from memory`.
pub const PARAFFIN_LIKE: Wax = Wax {
    solidus: 50.0,
    liquidus: 57.0,
    latent: 200_000.0,
    heat_solid: 2200.0,
    heat_liquid: 2300.0,
    conduct_solid: 0.25,
    conduct_liquid: 0.17,
    density_liquid: 775.0,
    expansion_liquid: 8.0e-4,
    density_solid: 890.0,
    expansion_solid: 3.0e-4,
};

/// A vegetable-like wax: partly hardened seed oil for containers.
///
/// Heat of melting 130 kJ/kg: hardened fats lie between coconut oil's 105 J/g (Kahwaji and White, Appl. Sci. 9 (2019)
/// 1627) and tristearin's about 200. Specific heat of the liquid: tripalmitin 2.18, tristearin 2.22 kJ/(kg·K) at 80 °C
/// (Zábranský's data in library thermo 0.6.1). Density of the liquid: Lund's formula of 1922, 0.8475 + 0.00030 ×
/// saponification value + 0.00014 × iodine value, gives 0.913 at 15 °C for 190 and 60, and so 871 at 80 °C. The melting
/// range 34 to 48 °C, the solid's specific heat and density, conductivities and expansions: `from memory` for hardened
/// soybean oil and triglycerides.
pub const VEGETABLE_LIKE: Wax = Wax {
    solidus: 34.0,
    liquidus: 48.0,
    latent: 130_000.0,
    heat_solid: 2000.0,
    heat_liquid: 2150.0,
    conduct_solid: 0.20,
    conduct_liquid: 0.165,
    density_liquid: 870.0,
    expansion_liquid: 7.5e-4,
    density_solid: 940.0,
    expansion_solid: 3.0e-4,
};

impl Wax {
    /// kg/m³ of the liquid at `celsius`.
    pub fn liquid_at(&self, celsius: f64) -> f64 {
        self.density_liquid / (1.0 + self.expansion_liquid * (celsius - 80.0))
    }

    /// kg/m³ of the solid at `celsius`.
    pub fn solid_at(&self, celsius: f64) -> f64 {
        self.density_solid / (1.0 + self.expansion_solid * (celsius - 20.0))
    }

    /// # Errors
    /// A sentence for the first property no wax has, and for a liquid denser than the solid.
    pub fn check(&self) -> Result<(), HeatError> {
        within("temperature where the wax is solid", self.solidus, -100.0, 200.0, "°C")?;
        within("temperature where the wax is melted", self.liquidus, -100.0, 200.0, "°C")?;
        if self.liquidus < self.solidus {
            return Err(HeatError::MeltingRange { solidus: self.solidus, liquidus: self.liquidus });
        }
        within("heat of melting", self.latent, 0.0, 1e6, "J/kg")?;
        for heat in [self.heat_solid, self.heat_liquid] {
            within("specific heat of the wax", heat, 200.0, 10_000.0, "J/(kg·K)")?;
        }
        for conduct in [self.conduct_solid, self.conduct_liquid] {
            within("conductivity of the wax", conduct, 0.01, 10.0, "W/(m·K)")?;
        }
        for density in [self.density_liquid, self.density_solid] {
            within("density of the wax", density, 200.0, 3000.0, "kg/m³")?;
        }
        for expansion in [self.expansion_liquid, self.expansion_solid] {
            within("expansion of the wax", expansion, 0.0, 3e-3, "per °C")?;
        }
        if self.liquid_at(self.liquidus) > self.solid_at(self.solidus) {
            return Err(HeatError::DensitiesSwapped {
                liquid: self.density_liquid,
                solid: self.density_solid,
            });
        }
        Ok(())
    }
}

impl Material {
    /// # Errors
    /// A sentence for the first property no wall has.
    pub fn check(&self) -> Result<(), HeatError> {
        within("density of the wall", self.density, 100.0, 20_000.0, "kg/m³")?;
        within("specific heat of the wall", self.heat, 100.0, 5000.0, "J/(kg·K)")?;
        within("conductivity of the wall", self.conduct, 0.01, 500.0, "W/(m·K)")?;
        within("emissivity of the wall", self.emissivity, 0.0, 1.0, "")?;
        Ok(())
    }
}
