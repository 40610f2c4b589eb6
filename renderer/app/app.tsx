import { lazy, Suspense, useMemo } from 'react';
import { LocaleContext } from '../parts/locale.tsx';
import { Empty, Loading } from '../parts/notes.tsx';
import { Page } from '../parts/page.tsx';
import { DesktopMenu } from './desktop-menu.tsx';
import { FailureBoundary } from './failure.tsx';
import { Frame } from './frame.tsx';
import { navigate, useRoute } from './route.tsx';
import { type Screen, screenAt } from './screens.ts';
import { WhyProvider } from './why.tsx';
import { useWorkspace } from './workspace.tsx';

/** The frame with the screen that the address names in it. */
export function App({ screens }: { readonly screens: readonly Screen[] }) {
  const { locale } = useWorkspace();
  const { screen: name, path } = useRoute();
  const lazily = useMemo(() => new Map(screens.map((screen) => [screen.id, lazy(screen.load)])), [screens]);
  const screen = screenAt(name, screens);
  const Shown = screen === undefined ? undefined : lazily.get(screen.id);
  return (
    <LocaleContext value={locale}>
      <WhyProvider>
        <Frame screens={screens}>
          <FailureBoundary place={path}>
            <Suspense fallback={<Loading label={`Opening ${screen?.title ?? 'the page'}`} />}>
              {Shown === undefined ? <NoSuchPlace first={screens[0]} /> : <Shown />}
            </Suspense>
          </FailureBoundary>
        </Frame>
        <DesktopMenu />
      </WhyProvider>
    </LocaleContext>
  );
}

/** An address that names no screen, from an old link for instance. */
function NoSuchPlace({ first }: { readonly first: Screen | undefined }) {
  const action =
    first === undefined ? {} : { action: { label: `Go to ${first.title}`, onClick: () => navigate(first.path) } };
  return (
    <Page title="No such page">
      <Empty {...action}>The address names no page of this workbook.</Empty>
    </Page>
  );
}
