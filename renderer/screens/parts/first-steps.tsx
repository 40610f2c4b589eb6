import { Button } from '@mantine/core';
import { navigate } from '../../app/route.tsx';

/** What belongs on an empty list, and the three ways to begin one. */
export function FirstSteps({ closed, onPaste }: { readonly closed: string | null; readonly onPaste: () => void }) {
  if (closed !== null) return <p>No part line was on the list on that day.</p>;
  return (
    <div className="parts-first">
      <p>
        Everything the build needs belongs here, a line each: what it is, how many, for which system, at what price.
      </p>
      <Button variant="filled" onClick={() => document.getElementById('parts-quick-add')?.focus()}>
        Type the first line
      </Button>
      <Button onClick={onPaste}>Paste from a spreadsheet…</Button>
      <Button onClick={() => navigate('/bring-in')}>Bring in a list…</Button>
    </div>
  );
}
