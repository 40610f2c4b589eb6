import type { ActResult } from '../contract/common.ts';
import type { BuildRow } from '../contract/workbook.ts';
import { Refusal } from '../refusal.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { type ActInput, act, type Context, procedures } from './context.ts';

const { builds } = procedures;

export const buildsProcedures = {
  list: builds.list.handler(({ context }): BuildRow[] =>
    listRecords(context.book().connection, 'builds', 'retired_on IS NULL').map((row) => ({
      id: row.id,
      name: String(row['name']),
      car: String(row['car']),
      engine: String(row['engine']),
      gateName: String(row['gateName']),
      startedOn: String(row['startedOn']),
      targetOn: row['targetOn'] === null ? null : String(row['targetOn']),
      note: String(row['note']),
    })),
  ),
  create: builds.create.handler(({ context, input }) => createBuild(context, input, input.values)),
};

type NewBuild = { readonly name: string } & {
  readonly [K in keyof Omit<BuildRow, 'id' | 'name'>]?: BuildRow[K] | undefined;
};

/** Makes a build. @throws Refusal `bad-input` for a name that another build has. */
export function createBuild(context: Context, input: ActInput, given: NewBuild): ActResult {
  const { connection } = context.book();
  return act(context, input, `New build ${given.name}`, (writer) => {
    const taken = listRecords(connection, 'builds', 'lower(name) = lower(?)', given.name.trim());
    if (taken.length > 0) {
      throw new Refusal('bad-input', `There is already a build called ${given.name}. Nothing was changed.`, {
        field: 'values.name',
        accepted: 'a name that no build of this workbook has',
      });
    }
    const typed = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
    const values = {
      car: '',
      engine: '',
      gateName: 'engine-in',
      startedOn: input.on,
      targetOn: null,
      note: '',
      ...typed,
    };
    const made = writer.make('builds', values);
    const payload = { record: 'build', did: 'added', name: given.name };
    writer.post({ kind: 'record', on: input.on, build: made.id, payload }, [made.edit]);
    writer.made.push(made.id);
    return undefined;
  });
}
