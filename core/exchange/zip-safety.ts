/**
 * Looks at an archive's directory before anything is unpacked. A file of ten megabytes can be made to unpack to
 * terabytes, mostly by entries that overlap; a list is small and plain, so anything unusual is refused.
 * Layout of the directory: ZIP application note (ISO/IEC 21320-1 for the subset office files use).
 */
import { listLimits, unreadable } from './unreadable.ts';

export interface ZipEntry {
  readonly name: string;
  readonly packedBytes: number;
  readonly unpackedBytes: number;
}

const advice = 'Open it in a spreadsheet program and save it again as .xlsx, or as .csv.';

/** @throws Refusal `file-unreadable` for a broken, encrypted, overlapping or oversized archive. */
export function checkedEntries(bytes: Uint8Array, fileName: string): readonly ZipEntry[] {
  const refuse = (reason: string) => unreadable(fileName, reason, advice);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end < 0) throw refuse('its archive is cut off or damaged.');
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > listLimits.zipEntries) throw refuse(`its archive has more than ${listLimits.zipEntries} entries.`);

  const entries: ZipEntry[] = [];
  const spans: (readonly [start: number, end: number])[] = [];
  const names = new Set<string>();
  let total = 0;
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50) {
      throw refuse('its archive is cut off or damaged.');
    }
    const flags = view.getUint16(at + 8, true);
    const method = view.getUint16(at + 10, true);
    const packedBytes = view.getUint32(at + 20, true);
    const unpackedBytes = view.getUint32(at + 24, true);
    const nameLength = view.getUint16(at + 28, true);
    const start = view.getUint32(at + 42, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);

    if ((flags & 1) !== 0) throw refuse('it is protected by a password.');
    if (method !== 0 && method !== 8) throw refuse('its archive is packed in a way that is not supported.');
    if (packedBytes === 0xffffffff || unpackedBytes === 0xffffffff) throw refuse('its archive is too large.');
    if (/^[/\\]|^[a-z]:|\.\.|\\|\0/i.test(name)) throw refuse('its archive names files outside itself.');
    if (names.has(name.toLowerCase())) throw refuse('its archive holds the same file twice.');
    if (/\.(?:zip|xlsx|xlsm|gz|7z|rar)$/i.test(name)) throw refuse('its archive holds another archive.');
    if (/vbaProject\.bin$/i.test(name)) throw refuse('it holds macros.');
    names.add(name.toLowerCase());
    total += unpackedBytes;
    const bomb = unpackedBytes > 1_000_000 && unpackedBytes > packedBytes * listLimits.unpackedRatio;
    if (bomb || total > listLimits.unpackedBytes) {
      throw refuse(
        `it would unpack to more than ${listLimits.unpackedBytes / 1024 / 1024} MB or ${listLimits.unpackedRatio} times its size.`,
      );
    }
    spans.push([start, start + 30 + nameLength + packedBytes]);
    entries.push({ name, packedBytes, unpackedBytes });
  }
  spans.sort((a, b) => a[0] - b[0]);
  spans.forEach((span, index) => {
    const next = spans[index + 1]?.[0] ?? bytes.length;
    if (span[1] > next) throw refuse('the entries of its archive overlap.');
  });
  return entries;
}

/** Offset of the end-of-directory record, which stands in the last 64 KB; -1 when there is none. */
function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - 65_557);
  for (let at = view.byteLength - 22; at >= lowest; at -= 1) {
    if (view.getUint32(at, true) === 0x06054b50) return at;
  }
  return -1;
}
