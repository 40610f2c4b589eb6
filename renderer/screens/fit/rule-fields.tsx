import { fitSeverities } from '../../../core/contract/fits.ts';
import { Choice, TextField } from '../../parts/fields.tsx';
import { ReadField } from '../../parts/read-field.tsx';
import { roleChoices, severityWords } from './fit-words.ts';
import { readNumber } from './read-number.ts';
import { besideWords, comparisonChoices, isSum, type RuleDraft, ruleOrProblem, sideWords } from './rule-draft.ts';

export interface RuleFieldsProps {
  readonly draft: RuleDraft;
  readonly onChange: (change: Partial<RuleDraft>) => void;
}

const filledIn = '{left}, {right}, {margin}, {missing} and {reason} are filled in.';

/** The fields of a rule of one's own: what is compared with what, how bad a misfit is, and what is said. */
export function RuleFields({ draft, onChange }: RuleFieldsProps) {
  const { left, op, rightIs, right } = draft;
  const problem = ruleOrProblem(draft, 'rule');
  const wrong = (field: string, text: string) =>
    text.trim() !== '' && 'problem' in problem && problem.problem.field === field ? problemText(problem.problem) : null;
  const beside = [besideWords(draft.besideLeft), besideWords(draft.besideRight)];
  const [wrongLeft, wrongRight] = [wrong('rule.left', left), wrong('rule.right', right)];
  return (
    <fieldset className="fit-side">
      <legend>The rule</legend>
      <TextField
        name="rule.left"
        label={isSum(op) ? 'What is added up' : 'What is compared'}
        description={
          sideWords(left) ||
          (isSum(op)
            ? 'Several, parted by commas: rod.width, rod.width'
            : 'The thing, a dot, what of it: head.coolant ports')
        }
        value={left}
        onChange={(text) => onChange({ left: text })}
        longest={120}
        required
        {...(wrongLeft === null || !left.includes('.') ? {} : { error: wrongLeft })}
      />
      <Choice
        name="rule.op"
        label="How"
        required
        value={op}
        options={comparisonChoices}
        onChange={(chosen) => chosen !== null && onChange({ op: chosen })}
      />
      <Choice
        name="rule.rightIs"
        label="With what"
        required
        value={rightIs}
        options={[
          { value: 'path', label: 'something of another thing' },
          { value: 'fixed', label: 'a fixed value' },
        ]}
        onChange={(chosen) => chosen !== null && onChange({ rightIs: chosen, right: '', besideRight: {} })}
      />
      <TextField
        name="rule.right"
        label={rightIs === 'path' ? 'The other thing' : 'The fixed value'}
        description={
          rightIs === 'path'
            ? sideWords(right) || 'The thing, a dot, what of it: block.coolant ports'
            : 'With its unit: 2.9 bar abs, 0 to 3.5 bar abs, flat'
        }
        value={right}
        onChange={(text) => onChange({ right: text })}
        longest={200}
        required
        {...(wrongRight === null || (rightIs === 'path' && !right.includes('.')) ? {} : { error: wrongRight })}
      />
      {beside.some((words) => words !== '') && (
        <p>Kept with the two sides as it was: {beside.filter((words) => words !== '').join('; ')}.</p>
      )}
      {op === 'near' && (
        <ReadField
          name="rule.tol"
          label="Tolerance"
          description="The largest difference, in the unit of the other side."
          value={draft.tolerance}
          onChange={(tolerance) => onChange({ tolerance })}
          read={(text) => readNumber(text, 'tolerance', 'rule.tol')}
          write={String}
          numeric
          required
        />
      )}
      {op === 'mates' && (
        <Choice
          name="rule.role"
          label="What the joint is for"
          required
          value={draft.role}
          options={roleChoices}
          onChange={(role) => role !== null && onChange({ role })}
        />
      )}
      <Choice
        name="rule.severity"
        label="How bad a misfit is"
        required
        value={draft.severity}
        options={fitSeverities.map((value) => ({ value, label: severityWords[value] }))}
        onChange={(severity) => severity !== null && onChange({ severity })}
      />
      {(['pass', 'fail', 'unknown'] as const).map((name) => (
        <TextField
          key={name}
          name={`rule.${name}`}
          label={said[name]}
          {...(name === 'pass' ? { description: filledIn } : {})}
          value={draft[name]}
          onChange={(text) => onChange({ [name]: text })}
          longest={300}
          required
        />
      ))}
      <TextField
        name="rule.source"
        label="Where the limit comes from"
        value={draft.source}
        onChange={(source) => onChange({ source })}
        longest={300}
      />
      <TextField
        name="rule.caution"
        label="Caution, where a misfit can hurt someone"
        value={draft.caution}
        onChange={(caution) => onChange({ caution })}
        longest={300}
      />
    </fieldset>
  );
}

const said = {
  pass: 'Said when it fits',
  fail: 'Said when it does not',
  unknown: 'Said while something is missing',
} as const;

const problemText = ({ message, accepted }: { readonly message: string; readonly accepted: string | undefined }) =>
  `${message.replace(/ ?Nothing was changed\.$/, '')}${accepted === undefined ? '' : ` Accepted: ${accepted}.`}`;
