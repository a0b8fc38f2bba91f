//! Where the person stands: the six rooms, each with what is open in it, in the address after the `#`.

/// The rooms, in the order they stand along the edge.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Room {
    Pot,
    Shelf,
    Stores,
    Bench,
    Book,
    Desk,
}

impl Room {
    pub const ALL: [Self; 6] = [Self::Pot, Self::Shelf, Self::Stores, Self::Bench, Self::Book, Self::Desk];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Pot => "Pot",
            Self::Shelf => "Shelf",
            Self::Stores => "Stores",
            Self::Bench => "Bench",
            Self::Book => "Book",
            Self::Desk => "Desk",
        }
    }

    pub const fn slug(self) -> &'static str {
        match self {
            Self::Pot => "pot",
            Self::Shelf => "shelf",
            Self::Stores => "stores",
            Self::Bench => "bench",
            Self::Book => "book",
            Self::Desk => "desk",
        }
    }
}

/// A room and what is open in it: `#book/formula/k3f9-1` is the Book with `["formula", "k3f9-1"]`.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Route {
    pub room: Room,
    pub rest: Vec<String>,
}

impl Route {
    /// Anything unknown is the Pot.
    pub fn parse(hash: &str) -> Self {
        let mut parts = hash.trim_start_matches('#').split('/').filter(|p| !p.is_empty());
        let first = parts.next().unwrap_or_default();
        let room = Room::ALL.into_iter().find(|r| r.slug() == first);
        Self { room: room.unwrap_or(Room::Pot), rest: parts.map(str::to_owned).collect() }
    }

    /// The `n`th word after the room.
    pub fn at(&self, n: usize) -> Option<&str> {
        self.rest.get(n).map(String::as_str)
    }
}
