/**
 * A refusal is the program's "I understood, and I will not". It is data on every shell: the code says which rule,
 * `field` and `accepted` say what to type instead, and the message always ends by saying that nothing was changed.
 * Programmer errors are ordinary `Error`s and are left to surface.
 */
export const refusalCodes = [
  'bad-input', // a field's text or value can't be understood or is out of range
  'not-found', // the record named doesn't exist
  'not-allowed-from-here', // the act doesn't make sense from the present state; detail names the limiting bucket
  'floor', // a bucket, claim or deposit would fall below zero, now or on a later date
  'already-reversed', // the entry or act has been reversed before
  'needs-reason', // the act must say why
  'nothing-to-undo',
  'conflict', // somebody else changed the record since it was read
  'retired', // the record was retired and takes no new entries
  'in-use', // the record can't be retired or removed while something depends on it
  'no-rate', // no exchange rate for the currency on or before the day
  'file-unreadable', // the file to import can't be read as a list
  'file-known', // the same file was brought in before
  'not-a-workbook',
  'damaged',
  'newer-version',
  'read-only',
  'open-elsewhere',
  'disk-full',
  'not-signed-in', // the shell's token is missing or wrong
] as const;

export type RefusalCode = (typeof refusalCodes)[number];

export type RefusalDetail = Record<string, string | number | readonly string[] | readonly number[]>;

/** What a refusal carries besides its message: the field to mend, what it accepts, and figures for the reader. */
export interface RefusalMore {
  readonly field?: string;
  readonly accepted?: string;
  readonly detail?: RefusalDetail;
}

/** Thrown wherever the program understood a request and will not do it. Nothing has been changed when it is thrown. */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly code: RefusalCode;
  readonly field: string | undefined;
  readonly accepted: string | undefined;
  readonly detail: RefusalDetail;

  constructor(code: RefusalCode, message: string, more: RefusalMore = {}) {
    super(message);
    this.code = code;
    this.field = more.field;
    this.accepted = more.accepted;
    this.detail = more.detail ?? {};
  }
}
