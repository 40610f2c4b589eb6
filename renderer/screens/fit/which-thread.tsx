import type { Params } from '../../app/route.tsx';
import { change } from './fit-address.ts';
import { ThreadFinder } from './thread-finder.tsx';

/** For those who don't know the notation: what was measured, which thread it is, and what looks the same. */
export function WhichThread({ params }: { readonly params: Params }) {
  return (
    <section aria-labelledby="which-thread" className="fit-which">
      <h2 id="which-thread">What is this thread?</h2>
      <ThreadFinder
        measured={{
          diameter: params['d'] ?? '',
          pitch: params['p'] ?? '',
          where: params['in'] === 'inside' ? 'inside' : 'outside',
        }}
        onMeasured={({ diameter, pitch, where }) =>
          change(params, {
            view: 'try',
            ...(diameter === undefined ? {} : { d: diameter }),
            ...(pitch === undefined ? {} : { p: pitch }),
            ...(where === undefined ? {} : { in: where }),
          })
        }
        takeWords={(name) => `Use ${name} as first port`}
        onUse={(designation) => change(params, { view: 'try', a: designation })}
      />
    </section>
  );
}
