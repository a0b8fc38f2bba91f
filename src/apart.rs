//! Modules of their own: what is fetched when it is first wanted. `tools/build` takes the app apart (it sets `apart`); in
//! tests and while developing all is one.

/// A module could not be fetched.
pub struct Missing;

impl From<wasm_split_helpers::SplitLoaderError> for Missing {
    fn from(_: wasm_split_helpers::SplitLoaderError) -> Self {
        Self
    }
}

/// A function that fetches the module it is in, and gives what stands there. What has one module's name is fetched
/// together; what several need is fetched with the first of them.
macro_rules! apart {
    ($module:ident, $name:ident, $what:ty, $value:expr) => {
        #[cfg(apart)]
        #[wasm_split_helpers::wasm_split($module, fallible)]
        fn $name() -> Result<$what, $crate::apart::Missing> {
            Ok($value)
        }

        #[cfg(not(apart))]
        #[allow(clippy::unused_async)]
        async fn $name() -> Result<$what, $crate::apart::Missing> {
            Ok($value)
        }
    };
}
pub(crate) use apart;
