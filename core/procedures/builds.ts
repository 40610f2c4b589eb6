import type { BuildRow } from '../contract/workbook.ts';
import { Refusal } from '../refusal.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { act, procedures } from './context.ts';

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
  create: builds.create.handler(({ context, input }) =>
    act(context, input, `New build ${input.values.name}`, (writer) => {
      const taken = listRecords(
        context.book().connection,
        'builds',
        'lower(name) = lower(?)',
        input.values.name.trim(),
      );
      if (taken.length > 0) {
        throw new Refusal('bad-input', `There is already a build called ${input.values.name}. Nothing was changed.`, {
          field: 'values.name',
          accepted: 'a name that no build of this workbook has',
        });
      }
      const values = {
        car: '',
        engine: '',
        gateName: 'engine-in',
        startedOn: input.on,
        targetOn: null,
        note: '',
        ...input.values,
      };
      const made = writer.make('builds', values);
      writer.post(
        {
          kind: 'record',
          on: input.on,
          build: made.id,
          payload: { record: 'build', did: 'added', name: input.values.name },
        },
        [made.edit],
      );
      writer.made.push(made.id);
      return undefined;
    }),
  ),
};
