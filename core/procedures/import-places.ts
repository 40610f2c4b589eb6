import type { ImportedPart } from '../exchange/import-types.ts';
import { dayWords } from '../workbook/store/entry-text.ts';
import type { ImportBatch } from './import-batch.ts';

/** Takes units from where they came in to where the list says that they are now. */
export function placeUnits(
  batch: ImportBatch,
  part: number,
  lot: number,
  hereMilli: number,
  imported: ImportedPart,
  on: string,
): void {
  const about = { build: batch.build, part, lot, on };
  const post = (
    kind: 'allocated' | 'trial-fitted' | 'fitted' | 'snugged' | 'verified',
    quantityMilli: number,
  ): void => {
    if (quantityMilli > 0) batch.writer.post({ ...about, kind, quantityMilli });
  };
  const onEngine = Math.min(imported.fittedMilli ?? hereMilli, hereMilli);
  switch (imported.state) {
    case 'allocated':
      if (!imported.borrowed) post('allocated', hereMilli);
      break;
    case 'trial-fitted':
      post('trial-fitted', onEngine);
      break;
    case 'fitted':
    case 'snug':
    case 'verified':
      post('fitted', onEngine);
      if (imported.state === 'snug') post('snugged', onEngine);
      if (imported.state === 'verified') post('verified', onEngine);
      break;
    default:
      return;
  }
  batch.say(imported.row, `${imported.state} as of ${dayWords(on)}, because the list gives no day for it`);
}
