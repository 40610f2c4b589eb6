import type { ConnectionRow } from '../../../core/contract/fits.ts';
import { measuresOf } from '../../../core/fit/measuring.ts';
import { isThreaded, type Port } from '../../../core/fit/port.ts';

/** Diameter and pitch in mm, as far as the end has them. */
export function sizeText(port: Port): string {
  const { diameterMm, pitchMm } = measuresOf(port);
  const perInch = isThreaded(port) && port.thread.tpi !== undefined ? `, ${port.thread.tpi} threads per inch` : '';
  return [
    ...(diameterMm === undefined ? [] : [`${diameterMm} mm diameter`]),
    ...(pitchMm === undefined ? [] : [`${pitchMm} mm pitch${perInch}`]),
  ].join(', ');
}

/** A side of a connection with whose it is, where it is somebody's: "JIC -10 male, oil drain of Turbocharger". */
export const sideText = ({ text, whose }: ConnectionRow['one']): string =>
  whose === '' ? `${text}, not on the list` : `${text}, ${whose}`;

/** The text as a sentence: a capital first, one full stop last. */
export const sentence = (text: string): string => {
  const trimmed = text.trim().replace(/\.+$/, '');
  return trimmed === '' ? '' : `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}.`;
};
