import type { ReactNode } from 'react';
import { useImports } from './earlier.tsx';

/** Whether an import still stands: it may have been taken back since, by the button in the frame for instance. */
export function ReportState({
  build,
  act,
  children,
}: {
  readonly build: number;
  readonly act: number;
  readonly children: (undone: boolean) => ReactNode;
}) {
  const imports = useImports(build);
  return children(imports.state === 'ready' && imports.value.some((one) => one.act === act && one.undone));
}
