//! Money in whole minor units; any currency, no conversion.

use serde::{Deserialize, Serialize};

/// An amount of money in minor units (cents, pence); the currency is the workshop's own.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Money(pub i64);
