import type { RecordValues } from '../contract/records.ts';
import { describeHose, splitHoseText } from '../plumbing/hose.ts';
import { checkKept, typedPort } from '../plumbing/kept-line.ts';
import { Refusal } from '../refusal.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { needRecord } from '../workbook/store/record-tables.ts';

/**
 * Refuses a line whose definition can't be read, or that types a port beside the one that it names. A plan may lack
 * lengths still.
 */
export function checkLine(connection: Connection, values: RecordValues['hoseLine']): void {
  const { name, definition } = values;
  const designation = (side: 'from' | 'to'): string | undefined => {
    const port = values[side];
    if (port === null) return undefined;
    const record = needRecord(connection, 'ports', port, side);
    if (record.retiredOn !== null) {
      throw new Refusal('retired', `The port was retired on ${record.retiredOn}. Nothing was changed.`, {
        field: side,
        accepted: 'a port that is in use',
      });
    }
    const kept = String(record['designation']);
    const typed = typedPort(definition, side);
    if (typed !== '' && typed !== kept) {
      throw new Refusal(
        'bad-input',
        `The line names a port (${kept}) and types another one (${typed}) for the same end. Nothing was changed.`,
        { field: `definition.${side}_port`, accepted: 'a port of the build or one that is typed, not both' },
      );
    }
    return kept;
  };
  const from = designation('from');
  const to = designation('to');
  if (values.from !== null && values.from === values.to) {
    throw new Refusal('bad-input', 'A line can’t end at the port that it comes from. Nothing was changed.', {
      field: 'to',
      accepted: 'another port',
    });
  }
  checkKept({ name, definition, from, to });
}

/** Refuses hose at hand that no line could ask for. */
export function checkHoseLength({ hose, boreMm }: RecordValues['hoseLength']): void {
  const { type, dash } = splitHoseText(hose);
  const accepted = 'a type with its size, such as 100R6 -8; or a type, with the bore in mm';
  if (!/[a-z0-9]{2}/i.test(type)) {
    throw new Refusal('bad-input', `“${hose}” names no hose. Nothing was changed.`, { field: 'hose', accepted });
  }
  const { size, label } = describeHose({ type, dash });
  if (boreMm !== null && size?.boreMm !== undefined && Math.abs(size.boreMm - boreMm) > 1) {
    throw new Refusal(
      'bad-input',
      `${label} has a bore of about ${size.boreMm} mm, and ${boreMm} mm is typed. Nothing was changed.`,
      { field: 'boreMm', accepted: `about ${size.boreMm} mm, or nothing, for the size says it` },
    );
  }
}

/** Refuses a part line that isn't counted or measured as things of a bill are. */
export function checkBillPart(connection: Connection, { part }: RecordValues['billPart']): void {
  const unit = String(needRecord(connection, 'parts', part, 'part')['unit']);
  if (unit === 'each' || unit === 'm') return;
  throw new Refusal('bad-input', `The part line is kept in ${unit}. Nothing was changed.`, {
    field: 'part',
    accepted: 'a part line kept in pieces, or, for hose and sleeve, in m',
  });
}
