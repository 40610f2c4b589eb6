import { MantineProvider } from '@mantine/core';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { render } from '@testing-library/react';
import type { ReactNode } from 'react';
import { theme, tokensOfTheLibrary } from '../../renderer/app/theme.ts';
import { emptyWorkspace, type Workspace, WorkspaceContext } from '../../renderer/app/workspace.tsx';
import { LocaleContext, standardLocale } from '../../renderer/parts/locale.tsx';

/** Draw something as the window would, around it a workbook with one build. */
export function shown(node: ReactNode, workspace: Partial<Workspace> = {}) {
  const open: Workspace = {
    ...emptyWorkspace,
    isOpen: true,
    workbookName: 'Drover',
    builds: [{ id: 1, name: '1978 Tarnwell Drover' }],
    buildId: 1,
    today: '2026-03-12',
    ...workspace,
  };
  const queries = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  const around = (inside: ReactNode) => (
    <MantineProvider theme={theme} cssVariablesResolver={tokensOfTheLibrary} env="test">
      <QueryClientProvider client={queries}>
        <WorkspaceContext value={open}>
          <LocaleContext value={{ ...standardLocale, ...open.locale }}>{inside}</LocaleContext>
        </WorkspaceContext>
      </QueryClientProvider>
    </MantineProvider>
  );
  const drawn = render(around(node));
  return { ...drawn, again: (next: ReactNode) => drawn.rerender(around(next)) };
}
