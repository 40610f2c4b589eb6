import { Button } from '@mantine/core';
import { IconAlertTriangle, IconCircleCheck } from '@tabler/icons-react';
import { useState } from 'react';
import type { VerifyReport } from '../../../core/contract/workbook.ts';
import { api } from '../../app/client.ts';
import { useTask } from '../../app/task.ts';
import { numberText } from '../../parts/formats.ts';
import { useLocale } from '../../parts/locale.tsx';
import { RefusalNote } from '../../parts/refusal-note.tsx';

const findingGroups = [
  ['integrity', 'In the file itself'],
  ['foreignKeys', 'Links that lead nowhere'],
  ['differences', 'Figures that don’t follow from the entries'],
  ['invariants', 'Rules of the workbook that don’t hold'],
] as const;

/** Counts every figure again from the entries and says whether the workbook holds. */
export function Verification() {
  const [report, setReport] = useState<VerifyReport | null>(null);
  const { busy, refusal, run } = useTask(() => api.workbook.verify());
  const verify = async () => {
    setReport(null);
    setReport((await run()) ?? null);
  };
  return (
    <section className="settings-stack" aria-labelledby="settings-verify">
      <h2 id="settings-verify">Check the workbook</h2>
      <p>Counts every figure again from its entries and looks over the file. Nothing is changed.</p>
      <div className="settings-buttons">
        <Button loading={busy} onClick={() => void verify()}>
          Check it now
        </Button>
      </div>
      {refusal !== null && <RefusalNote refusal={refusal} />}
      <div aria-live="polite">{report !== null && <Report report={report} />}</div>
    </section>
  );
}

function Report({ report }: { readonly report: VerifyReport }) {
  const locale = useLocale();
  const seen = `${numberText(report.entries, locale)} entries and ${numberText(report.postings, locale)} postings were counted again`;
  if (report.ok) {
    return (
      <p className="settings-state">
        <IconCircleCheck aria-hidden size="1.2em" className="settings-good" />
        <span>All is well: {seen}, and every figure follows from them.</span>
      </p>
    );
  }
  return (
    <>
      <p className="settings-state">
        <IconAlertTriangle aria-hidden size="1.2em" className="settings-bad" />
        <span>
          Something is wrong: {seen}. Make no more entries; read under “About” what to do, and keep this list.
        </span>
      </p>
      {findingGroups.map(([name, title]) => {
        const findings = report[name];
        if (findings.length === 0) return null;
        return (
          <section key={name}>
            <h3>{title}</h3>
            <ul>
              {findings.map((finding) => (
                <li key={finding}>{finding}</li>
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}
