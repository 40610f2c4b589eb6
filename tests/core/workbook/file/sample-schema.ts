import type { Migration } from '../../../../core/workbook/file/migration.ts';

/** The moment all these tests happen at. */
export const now = new Date('2026-03-04T05:06:07Z');

const first: Migration = {
  name: '0000_first',
  rows: { settings: 1 },
  sql: `
    CREATE TABLE orders (id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL) STRICT;
    CREATE TABLE lines (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      order_id INTEGER NOT NULL REFERENCES orders (id) ON DELETE CASCADE,
      amount_minor INTEGER NOT NULL
    ) STRICT;
    CREATE INDEX lines_of_order ON lines (order_id);
    CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
    INSERT INTO settings VALUES ('currency', 'EUR');`,
};

const guard: Migration = {
  name: '0001_lines_never_change',
  sql: `
    CREATE TRIGGER lines_never_change BEFORE UPDATE ON lines BEGIN SELECT raise(ABORT, 'lines stay'); END;
    CREATE TRIGGER orders_never_go BEFORE DELETE ON orders BEGIN SELECT raise(ABORT, 'orders stay'); END;`,
};

/** A rebuild as the schema tool writes it: with foreign keys on, dropping `orders` would empty `lines`. */
export const rebuildSql = `
    PRAGMA foreign_keys=OFF;
    CREATE TABLE __new_orders (id INTEGER PRIMARY KEY AUTOINCREMENT, name TEXT NOT NULL, place TEXT NOT NULL DEFAULT 'shelf') STRICT;
    INSERT INTO __new_orders (id, name) SELECT id, name FROM orders;
    DROP TABLE orders;
    ALTER TABLE __new_orders RENAME TO orders;
    PRAGMA foreign_keys=ON;`;

const rebuild: Migration = {
  name: '0002_orders_have_a_place',
  sql: `DROP TRIGGER orders_never_go;${rebuildSql}
    CREATE TRIGGER orders_never_go BEFORE DELETE ON orders BEGIN SELECT raise(ABORT, 'orders stay'); END;`,
};

const backfill: Migration = {
  name: '0003_history',
  rows: { history: 'any' },
  sql: `
    CREATE TABLE history (id INTEGER PRIMARY KEY AUTOINCREMENT, line_id INTEGER NOT NULL REFERENCES lines (id)) STRICT;
    INSERT INTO history (line_id) SELECT id FROM lines ORDER BY amount_minor;`,
};

/** The schema workbooks start with here, number 2. */
export const schemaOne: readonly Migration[] = [first, guard];
/** The schema a later program brings, number 4. */
export const schemaTwo: readonly Migration[] = [first, guard, rebuild, backfill];
