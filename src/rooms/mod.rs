//! The views: one module a room, shared parts in `parts`.
