import Database from 'better-sqlite3';

// Prints all rows of a household's database as SQL, to be frozen as the seed of the version it stands at:
//   node_modules/.bin/node tests/migrations/dump-seed.ts HOUSEHOLD.sqlite > tests/migrations/seed-0010.sql
const [file] = process.argv.slice(2);
if (file === undefined) throw new Error('give the database file of a household');
const database = new Database(file, { readonly: true });
// A table comes after those it refers to.
const tables = database.prepare<[], string>(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY rootpage`).pluck().all();
for (const table of tables) {
  const columns = (database.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  const rows = database.prepare<[], string>(`SELECT ${columns.map((name) => `quote(${name})`).join(" || ', ' || ")} FROM ${table}`).pluck().all();
  for (const row of rows) console.log(`INSERT INTO ${table} (${columns.join(', ')}) VALUES (${row});`);
}
