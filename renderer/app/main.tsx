import '@fontsource-variable/inter/wght.css';
import '@mantine/core/styles.layer.css';
import '@mantine/notifications/styles.layer.css';
import { MantineProvider } from '@mantine/core';
import { Notifications } from '@mantine/notifications';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { z } from 'zod';
import { App } from './app.tsx';
import { applyPreferences, followSystemTheme, shownTheme, usePreferences } from './preferences.ts';
import { screens } from './screens.ts';
import { signIn } from './session.ts';
import { styleNonce } from './style-nonce.ts';
import { theme, tokensOfTheLibrary } from './theme.ts';
import { WorkspaceSource } from './workspace-source.tsx';

// The page's policy forbids text run as code; without this, the checks of shapes would try it once and be reported.
z.config({ jitless: true });

// What is shown is refreshed by the change feed, so nothing is fetched again merely because time has passed.
const queries = new QueryClient({
  defaultOptions: { queries: { staleTime: Number.POSITIVE_INFINITY, refetchOnWindowFocus: false, retry: 1 } },
});

function Root() {
  const preferences = usePreferences();
  return (
    <MantineProvider
      theme={theme}
      cssVariablesResolver={tokensOfTheLibrary}
      forceColorScheme={shownTheme(preferences) === 'night' ? 'dark' : 'light'}
      getStyleNonce={styleNonce}
    >
      <QueryClientProvider client={queries}>
        <Notifications position="bottom-right" />
        <WorkspaceSource>
          <App screens={screens} />
        </WorkspaceSource>
      </QueryClientProvider>
    </MantineProvider>
  );
}

/** Before the workbook can be read there is nothing to draw but the reason, in plain words. */
function showRefusedSignIn(place: HTMLElement, error: unknown): void {
  const note = document.createElement('p');
  note.setAttribute('role', 'alert');
  note.textContent = error instanceof Error ? error.message : 'The workbook could not be reached. Nothing was changed.';
  place.replaceChildren(note);
}

async function start(): Promise<void> {
  const place = document.getElementById('root');
  if (place === null) throw new Error('index.html has no element with the id "root"');
  applyPreferences();
  followSystemTheme();
  try {
    await signIn();
  } catch (error) {
    showRefusedSignIn(place, error);
    return;
  }
  createRoot(place).render(
    <StrictMode>
      <Root />
    </StrictMode>,
  );
}

void start();
