/** What a file is, by its first bytes and never by its name. */
import { unreadable } from './unreadable.ts';

const signatures: readonly (readonly [bytes: readonly number[], what: string, advice: string])[] = [
  [
    [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1],
    'it is an old-style or password-protected office file.',
    'Open it in the program that made it and save it as .xlsx without a password, or as .csv.',
  ],
  [[0x25, 0x50, 0x44, 0x46], 'it is a PDF.', 'Ask for the list as .csv or .xlsx.'],
  [[0x89, 0x50, 0x4e, 0x47], 'it is a picture.', 'Add it to a part or an order as a picture instead.'],
  [[0xff, 0xd8, 0xff], 'it is a picture.', 'Add it to a part or an order as a picture instead.'],
  [[0x1f, 0x8b], 'it is compressed.', 'Unpack it first.'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'it is compressed.', 'Unpack it first.'],
  [[0x52, 0x61, 0x72, 0x21], 'it is compressed.', 'Unpack it first.'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'it is a database.', 'Open it as a workbook if it is one.'],
];

/** @throws Refusal `file-unreadable` for files that are surely no list, saying what to do instead. */
export function fileKind(bytes: Uint8Array, fileName: string): 'zip' | 'text' {
  if (bytes.length === 0) throw unreadable(fileName, 'it is empty.', 'Save the list again and choose that file.');
  for (const [signature, what, advice] of signatures) {
    if (signature.every((byte, index) => bytes[index] === byte)) throw unreadable(fileName, what, advice);
  }
  return bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] ?? 9) < 9 ? 'zip' : 'text';
}
