// Reckons beside the page, so that the page never waits: the same module as the page's, asked for numbers.
let module;
self.onmessage = async ({ data }) => {
  if (data.js) {
    module = import(data.js).then(async (loaded) => {
      await loaded.default({ module_or_path: data.wasm });
      return loaded;
    });
    return;
  }
  const [id, job] = data;
  try {
    const answer = await (await module).reckon(job);
    self.postMessage([id, answer], [answer.buffer]);
  } catch (error) {
    console.error(error);
    self.postMessage([id, null]);
  }
};
