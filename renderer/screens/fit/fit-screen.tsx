import { api } from '../../app/client.ts';
import { useRead } from '../../app/data.tsx';
import { navigate, useRoute } from '../../app/route.tsx';
import { useReading } from '../../app/workspace.tsx';
import { Tabs } from '../../parts/furniture.tsx';
import { Empty } from '../../parts/notes.tsx';
import { Answer, Page } from '../../parts/page.tsx';
import { ReadView } from '../../parts/read-view.tsx';
import { viewOf } from './fit-address.ts';
import { KeptFits } from './kept-fits.tsx';
import { TriedAnswer, TryTwo } from './try-two.tsx';
import { wrongFits } from './wrong-fits.ts';
import './fit.css';

/** Whether what bolts together fits: the build's ports, connections and declared fits, and any two ports typed. */
export default function FitScreen() {
  const { params } = useRoute();
  const reading = useReading();
  const shown = viewOf(params);
  const read = useRead(
    ['fits', reading?.build ?? null, reading?.asOf ?? null, 'view'],
    reading === null ? null : () => api.fits.view(reading),
  );
  const view = read.state === 'ready' ? read.value : undefined;
  const answer =
    shown === 'try' ? (
      <TriedAnswer params={params} />
    ) : (
      view !== undefined && <Answer blocks={view.counts.wrong > 0}>{view.answer}</Answer>
    );
  const count = (list: readonly unknown[] | undefined) => (list === undefined ? {} : { count: list.length });
  return (
    <Page title="Fit" answer={answer}>
      <Tabs
        label="What is wrong, connections, declared fits, ports"
        tabs={[
          { id: 'wrong', title: 'Wrong or lacking', ...count(view && wrongFits(view)) },
          { id: 'connections', title: 'Connections', ...count(view?.connections) },
          { id: 'declared', title: 'Declared fits', ...count(view?.declared) },
          { id: 'ports', title: 'Ports', ...count(view?.ports) },
          { id: 'try', title: 'Try two ports, find a thread' },
        ]}
        shown={shown}
        onShow={(id) => navigate('/fit', id === 'wrong' ? {} : { view: id })}
      >
        {shown === 'try' ? (
          <TryTwo params={params} />
        ) : reading === null ? (
          <Empty action={{ label: 'Go to the start', onClick: () => navigate('/') }}>
            Here stands whether the parts of a build fit together. It needs a workbook with a build.
          </Empty>
        ) : (
          <ReadView read={read} label="Working out the fits">
            {(value) => <KeptFits view={value} build={reading.build} shown={shown} params={params} />}
          </ReadView>
        )}
      </Tabs>
    </Page>
  );
}
