import { Refusal } from '../refusal.ts';
import { plainQuantity } from '../units/quantity.ts';

/**
 * The refusal for more units than a bucket holds; it names the bucket and how many there are.
 * @param detail more figures for the reader.
 */
export function tooMany(bucket: string, availableMilli: number, askedMilli: number, field = 'quantity'): Refusal {
  const available = plainQuantity(availableMilli);
  return new Refusal(
    'not-allowed-from-here',
    `The ${field} asked for is ${plainQuantity(askedMilli)}, but ${bucket} is ${available}. Nothing was changed.`,
    {
      field,
      accepted: availableMilli > 0 ? `at most ${available}` : 'nothing, as it stands',
      detail: { bucket, available: availableMilli, asked: askedMilli },
    },
  );
}

/** The refusal for more money than an account holds, in minor units. */
export function tooMuch(bucket: string, availableMinor: number, askedMinor: number): Refusal {
  return new Refusal(
    'not-allowed-from-here',
    `The amount asked for is more than what is in ${bucket}. Nothing was changed.`,
    {
      field: 'amount',
      accepted: `at most ${availableMinor} minor units`,
      detail: { bucket, available: availableMinor, asked: askedMinor },
    },
  );
}

/** The refusal for an act that makes no sense from the present state, whatever the quantity. */
export function notFromHere(message: string, field: string, accepted: string): Refusal {
  return new Refusal('not-allowed-from-here', `${message} Nothing was changed.`, { field, accepted });
}
