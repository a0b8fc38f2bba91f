// A database of SQLite in a worker: what is asked of it is answered by a promise, one at a time.
export const sqlite = () => {
  const worker = new Worker(new URL("worker.js", import.meta.url), { type: "module" });
  let settle;
  worker.onmessage = ({ data }) => ("error" in data ? settle[1](data.error) : settle[0](data.answer));
  worker.onerror = ({ message }) => settle[1](message);
  return (message) =>
    new Promise((...both) => {
      settle = both;
      worker.postMessage(message);
    });
};
