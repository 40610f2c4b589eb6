import type { z } from 'zod';
import type { ActResult } from '../contract/common.ts';
import type { fitsContract } from '../contract/fits.ts';
import type { FitCheck } from '../fit/checks/check.ts';
import { shippedChecks } from '../fit/checks/shipped.ts';
import { askedPaths, thingsOf } from '../fit/kept/paths.ts';
import { partsForThing } from '../fit/kept/thing-parts.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { listRecords } from '../workbook/store/record-tables.ts';
import { act, type Context, counted, needBuild } from './context.ts';
import { createRecord } from './records.ts';

type Input = z.infer<NonNullable<(typeof fitsContract)['addShipped']['~orpc']['inputSchema']>>;

interface NamedPart {
  readonly id: number;
  readonly description: string;
  readonly kind: string;
}

interface Bound {
  readonly things: Readonly<Record<string, number>>;
  /** What was bound, and what is left to choose, a sentence; empty for a fit about no part line. */
  readonly says: string;
}

const partLines = (connection: Connection, build: number): readonly NamedPart[] =>
  listRecords(connection, 'parts', 'build = ? AND retired_on IS NULL', build).map((part) => ({
    id: part.id,
    description: String(part['description']),
    kind: String(part['kind'] ?? ''),
  }));

const mostNamed = 3;

function choice(thing: string, found: readonly NamedPart[]): string {
  if (found.length === 0) return `no part line is named as the ${thing}: choose one, or type what is asked of it`;
  const more = found.length > mostNamed ? ' …' : '';
  const names = found.slice(0, mostNamed).map(({ description }) => `“${description}”`);
  return `choose which part line is the ${thing}: ${names.join(', ')}${more}`;
}

/** Binds each thing of a rule to the one part line that is it by its kind or name; where several or none are, says so. */
function bind(rule: FitCheck, parts: readonly NamedPart[]): Bound {
  const things: Record<string, number> = {};
  const says: string[] = [];
  for (const thing of thingsOf(askedPaths(rule))) {
    const found = partsForThing(thing, parts);
    if (found === undefined) continue;
    const spoken = thing.replaceAll('_', ' ');
    const [only, second] = found;
    if (only !== undefined && second === undefined) {
      things[thing] = only.id;
      says.push(`the ${spoken} is “${only.description}”`);
    } else {
      says.push(choice(spoken, found));
    }
  }
  return { things, says: says.length === 0 ? '' : `${rule.title}: ${says.join('; ')}.` };
}

/**
 * Adds fits that come with the program, bound to the part lines that they are about where there is no doubt.
 * @throws Refusal `bad-input` naming `shipped` for one that the build has already or that doesn't exist
 */
export function addShipped(context: Context, input: Input): ActResult {
  needBuild(context, input.build);
  const { connection } = context.book();
  const has = new Set(
    listRecords(connection, 'declaredFits', 'build = ? AND retired_on IS NULL', input.build).map(
      (record) => record['shipped'],
    ),
  );
  const left = shippedChecks.filter(({ id }) => !has.has(id));
  for (const id of input.shipped) {
    if (left.some((one) => one.id === id)) continue;
    const problem = has.has(id) ? `The build has the fit “${id}” already` : `There is no shipped fit “${id}”`;
    throw new Refusal('bad-input', `${problem}. Nothing was changed.`, {
      field: 'shipped',
      accepted: left.length === 0 ? 'none: the build has them all' : `one of ${left.map((one) => one.id).join(', ')}`,
    });
  }
  const wanted = left.filter(({ id }) => input.shipped.includes(id));
  return act(context, input, `Adding of ${counted(wanted.length, 'fit')}`, (writer) => {
    const parts = partLines(writer.connection, input.build);
    for (const rule of wanted) {
      const { things, says } = bind(rule, parts);
      createRecord(writer, 'declaredFit', input.build, input.on, { title: rule.title, shipped: rule.id, things });
      if (says !== '') writer.notices.push(says);
    }
    return undefined;
  });
}
