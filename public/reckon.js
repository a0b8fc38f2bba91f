// Reckons beside the page, so that the page never waits: the same module as the page's, asked for numbers.
let module;
// The search for the best pours that goes on: a later one takes its place.
let search = 0;

const plan = async (id, job) => {
  search = id;
  const { planPours } = await module;
  for (let more = job; search === id; more = "") {
    const said = await planPours(more);
    if (said && search === id) self.postMessage([id, said]);
    if (said && !said.startsWith("-")) return;
    await new Promise((then) => setTimeout(then));
  }
};

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
    if (typeof job === "string") return await plan(id, job);
    const answer = await (await module).reckon(job);
    self.postMessage([id, answer], [answer.buffer]);
  } catch (error) {
    console.error(error);
    self.postMessage([id, null]);
  }
};
