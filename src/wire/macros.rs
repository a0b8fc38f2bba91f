//! What is written for every struct and enum that is kept.

/// A field put; one marked `skip` is left out where it is blank.
macro_rules! put_field {
    ($out:ident, $field:ident, $value:expr, skip) => {
        if !$crate::wire::Wire::is_blank($value) {
            $crate::wire::put_field!($out, $field, $value);
        }
    };
    ($out:ident, $field:ident, $value:expr $(, default)?) => {
        $crate::wire::put_name($out, stringify!($field));
        $crate::wire::Wire::put($value, $out);
    };
}

/// A field got; one marked may be left out.
macro_rules! get_field {
    ($json:ident, $flaws:ident, $field:ident) => {
        $crate::wire::Wire::get($json.field(stringify!($field), $flaws), $flaws)
    };
    ($json:ident, $flaws:ident, $field:ident, $mark:ident) => {
        $crate::wire::get_or($json.field(stringify!($field), $flaws), $flaws, Default::default())
    };
}

/// A struct as an object with its fields in this order. `[default]`: one left out reads as the default; `[skip]`: also
/// left out on writing where it is blank. An `Option` may always be left out.
macro_rules! wire_struct {
    ($name:ident { $($field:ident $([$mark:ident])?),* $(,)? }) => {
        impl $crate::wire::Wire for $name {
            fn put(&self, out: &mut String) {
                out.push('{');
                $($crate::wire::put_field!(out, $field, &self.$field $(, $mark)?);)*
                out.push('}');
            }
            fn get(json: &$crate::wire::Json, flaws: &mut $crate::wire::Flaws) -> Self {
                Self { $($field: $crate::wire::get_field!(json, flaws, $field $(, $mark)?)),* }
            }
        }
    };
}

macro_rules! put_kind {
    ($out:ident, $kind:ident) => {
        $crate::wire::put_text($out, stringify!($kind))
    };
    ($out:ident, $kind:ident ($inner:ident)) => {{
        $out.push('{');
        $crate::wire::put_field!($out, $kind, $inner);
        $out.push('}');
    }};
    ($out:ident, $kind:ident { $($field:ident $([$mark:ident])?),* }) => {{
        $out.push('{');
        $crate::wire::put_name($out, stringify!($kind));
        $out.push('{');
        $($crate::wire::put_field!($out, $field, $field $(, $mark)?);)*
        $out.push_str("}}");
    }};
}

macro_rules! get_kind {
    ($body:ident, $flaws:ident, $kind:ident) => {{
        $body.nothing($flaws);
        Self::$kind
    }};
    ($body:ident, $flaws:ident, $kind:ident ($inner:ident)) => {
        Self::$kind($crate::wire::Wire::get($body, $flaws))
    };
    ($body:ident, $flaws:ident, $kind:ident { $($field:ident $([$mark:ident])?),* }) => {
        Self::$kind { $($field: $crate::wire::get_field!($body, $flaws, $field $(, $mark)?)),* }
    };
}

/// An enum as `"Kind"`, `{"Kind":…}` or `{"Kind":{…}}`; marks as for [`wire_struct`].
macro_rules! wire_enum {
    ($name:ident {
        $($kind:ident $(($inner:ident))? $({ $($field:ident $([$mark:ident])?),* $(,)? })?),* $(,)?
    }) => {
        impl $crate::wire::Wire for $name {
            fn put(&self, out: &mut String) {
                match self {
                    $(Self::$kind $(($inner))? $({ $($field),* })? => {
                        $crate::wire::put_kind!(out, $kind $(($inner))? $({ $($field $([$mark])?),* })?);
                    })*
                }
            }
            fn get(json: &$crate::wire::Json, flaws: &mut $crate::wire::Flaws) -> Self {
                let (kind, body) = json.kind();
                match kind {
                    $(stringify!($kind) => $crate::wire::get_kind!(
                        body, flaws, $kind $(($inner))? $({ $($field $([$mark])?),* })?
                    ),)*
                    _ => {
                        flaws.unknown(kind);
                        let first = [$(stringify!($kind)),*][0];
                        Self::get(&$crate::wire::Json::Text(first.into()), flaws)
                    }
                }
            }
        }
    };
}

pub(crate) use {get_field, get_kind, put_field, put_kind, wire_enum, wire_struct};
