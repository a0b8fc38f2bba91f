//! What vessels and pots are made of.

use crate::heat::{ALUMINIUM, CERAMIC, GLASS, Material, STEEL};
use crate::wire::wire_enum;

/// What a vessel or a pot is made of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stuff {
    Glass,
    Stoneware,
    Steel,
    Aluminium,
}

wire_enum!(Stuff { Glass, Stoneware, Steel, Aluminium });

impl Stuff {
    pub const fn material(self) -> Material {
        match self {
            Self::Glass => GLASS,
            Self::Stoneware => CERAMIC,
            Self::Steel => STEEL,
            Self::Aluminium => ALUMINIUM,
        }
    }
}
