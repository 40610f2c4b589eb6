/**
 * Bytes to letters. A byte mark or valid UTF-8 is certain. Anything else is an old code page, and which one only the
 * person knows who can read the words: the choices come back with a line of the file as each would show it.
 */
import type { Encoding, ImportQuestion } from './table-types.ts';
import { unreadable } from './unreadable.ts';

export interface DecodedText {
  readonly text: string;
  readonly used: Encoding;
  readonly certain: boolean;
  readonly question: ImportQuestion | null;
}

const labels = {
  'windows-1252': 'Western European (Windows-1252)',
  'windows-1250': 'Central European (Windows-1250)',
  'windows-1251': 'Cyrillic (Windows-1251)',
  macintosh: 'Western European, older Macintosh',
} as const;
type CodePage = keyof typeof labels;
const codePages = Object.keys(labels) as readonly CodePage[];

/** Bytes 0x80 to 0x9F of Windows-1252 (Unicode consortium's mapping table); some platforms decode them as controls. */
const western = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function decodeAs(bytes: Uint8Array, encoding: Encoding): string {
  if (encoding !== 'windows-1252') return new TextDecoder(encoding).decode(bytes);
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    .toString('latin1')
    .replace(/[\u0080-\u009f]/g, (letter) => western[letter.charCodeAt(0) - 0x80] ?? letter);
}

/**
 * @param choice the user's answer; left out: found by looking.
 * @throws Refusal `file-unreadable` when the bytes are no text at all.
 */
export function decodeText(bytes: Uint8Array, fileName: string, choice?: Encoding): DecodedText {
  const certain = certainEncoding(bytes);
  if (certain !== null && (choice === undefined || choice === certain)) {
    return { text: readable(decodeAs(bytes, certain), fileName), used: certain, certain: true, question: null };
  }
  const used: Encoding = choice ?? 'windows-1252';
  return { text: readable(decodeAs(bytes, used), fileName), used, certain: false, question: question(bytes, choice) };
}

function certainEncoding(bytes: Uint8Array): Encoding | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  // Half the bytes of Western text in UTF-16 are zero, all on one side.
  const head = bytes.subarray(0, 2000);
  const zeros = [0, 0];
  head.forEach((byte, index) => {
    if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = zeros;
  if (odd > head.length * 0.3 && even === 0) return 'utf-16le';
  if (even > head.length * 0.3 && odd === 0) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return null;
  }
}

function readable(text: string, fileName: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: controls are what tells a program from a list
  const controls = text.slice(0, 100_000).match(/[\u0000-\u0008\u000e-\u0019\u001b-\u001f]/g)?.length ?? 0;
  if (text.includes('\0') || controls > Math.max(4, Math.min(text.length, 100_000) * 0.01)) {
    throw unreadable(fileName, 'it is not text.', 'Save the list as .csv or .xlsx and choose that file.');
  }
  return text;
}

function question(bytes: Uint8Array, answer: Encoding | undefined): ImportQuestion {
  const at = bytes.findIndex((byte) => byte >= 0x80);
  const start = bytes.lastIndexOf(0x0a, at) + 1;
  const end = bytes.indexOf(0x0a, at);
  const line = bytes.subarray(start, Math.min(end < 0 ? bytes.length : end, start + 300));
  const row = bytes.subarray(0, start).reduce((lines, byte) => lines + (byte === 0x0a ? 1 : 0), 1);
  return {
    id: 'encoding',
    kind: 'encoding',
    column: '',
    text: 'The file doesn’t say which letters it uses. Which of these lines reads right?',
    choices: codePages.map((value) => ({ value, label: labels[value], preview: decodeAs(line, value).trim() })),
    guess: 'windows-1252',
    rowsConcerned: [row],
    blocking: true,
    answer: answer ?? null,
  };
}
