const { default: init } = await import(document.getElementById("bare-js").href);
await init({ module_or_path: document.getElementById("bare-wasm").href });
