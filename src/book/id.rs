//! Names of things, unique across devices without a server.

use serde::{Deserialize, Serialize};

/// The device's name and its count of things named: `k3f9q2-1a`.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Id(pub String);
