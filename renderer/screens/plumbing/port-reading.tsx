import { formatPort } from '../../../core/fit/format.ts';
import { parsePort } from '../../../core/fit/parse.ts';

/** How a port that was typed is read, or how to write it. Nothing while nothing is typed. */
export function PortReading({ text }: { readonly text: string }) {
  if (text.trim() === '') return null;
  const reading = parsePort(text, { role: 'fluid' });
  return (
    <p className="plumbing-says" aria-live="polite">
      {reading.ok ? (
        <>
          Read as {formatPort(reading.port)}. {reading.warnings.join(' ')}
        </>
      ) : (
        <>
          Not read: {reading.message}. Write it like {reading.write.join(' or ')}.
        </>
      )}
    </p>
  );
}
