// SQLite, compiled to WebAssembly, with its own durable storage in the browser: the pool of private files that its makers
// offer. One table, in the order in which a journal is read, so that an entry is in one place only.
import start from "./sqlite3.js";

const TABLE = "(clock INTEGER, id TEXT, line TEXT, PRIMARY KEY (clock, id)) WITHOUT ROWID";
// It says that another of its storages, which wants more of the server, is not there.
globalThis.sqlite3ApiConfig = { warn() {} };
let database, put;

const insert = (row) => {
  put ??= database.prepare("INSERT INTO entries VALUES (?, ?, ?)");
  put.bind(row).step();
  put.reset();
};

const does = {
  // Opened as it comes, but for what is asked for; how that is.
  async open({ name, pragmas }) {
    const sqlite3 = await start();
    const pool = await sqlite3.installOpfsSAHPoolVfs({ directory: `/${name}` });
    database = new pool.OpfsSAHPoolDb("/book");
    for (const pragma of pragmas) database.exec(`PRAGMA ${pragma}`);
    database.exec(`CREATE TABLE IF NOT EXISTS entries ${TABLE}`);
    const is = ["journal_mode", "synchronous", "locking_mode"].map((p) => `${p} ${database.selectValue(`PRAGMA ${p}`)}`);
    return `SQLite ${sqlite3.version.libVersion}: ${is.join(", ")}`;
  },
  // An entry in a transaction of its own; how long that took in here.
  put({ row }) {
    const before = performance.now();
    insert(row);
    return performance.now() - before;
  },
  // Many in one, for a book that is to be read.
  fill({ rows }) {
    database.transaction(() => rows.forEach(insert));
  },
  // Every line as a text; how many, and how many letters.
  read() {
    const all = database.prepare("SELECT line FROM entries ORDER BY clock, id");
    const lines = [];
    while (all.step()) lines.push(all.getString(0));
    all.finalize();
    return [lines.length, lines.reduce((sum, line) => sum + line.length, 0)];
  },
  close() {
    put?.finalize();
    database.close();
  },
};

onmessage = async ({ data }) => {
  try {
    postMessage({ answer: await does[data.do](data) });
  } catch (error) {
    postMessage({ error: String(error) });
  }
};
