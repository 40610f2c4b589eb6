import type { GateReview } from '../../../core/contract/gate.ts';
import { EndWaiverForm, WaiveForm } from '../../parts/waiver-forms.tsx';
import { BoltsForm } from './bolts-form.tsx';
import type { Doing } from './doing.ts';
import { PartForm } from './part-form.tsx';
import { type ActFormProps, PassForm } from './pass-form.tsx';
import { DecisionForm, JobForm, ToolForm } from './subject-forms.tsx';

const clearingForms = {
  part: PartForm,
  job: JobForm,
  tool: ToolForm,
  decision: DecisionForm,
  'bolt-group': BoltsForm,
} as const;

/** The form for whatever was begun on the page. */
export function DoingWindow({ doing, review, ...form }: ActFormProps & { doing: Doing; review: GateReview }) {
  switch (doing.what) {
    case 'pass':
      return <PassForm {...form} gateName={review.gateName} caution={review.caution} />;
    case 'waive':
      return <WaiveForm {...form} blocker={doing.blocker} />;
    case 'end waiver':
      return <EndWaiverForm {...form} waived={doing.waived} />;
    case 'clear': {
      const { kind } = doing.blocker.subject;
      // These are cleared where the figure is written down, so the page offers no act for them.
      if (!(kind in clearingForms)) return null;
      const ClearingForm = clearingForms[kind as keyof typeof clearingForms];
      return <ClearingForm {...form} blocker={doing.blocker} />;
    }
  }
}
