import { Link } from '../../app/route.tsx';
import { usePartChoices } from './part-lines.ts';

/** The part lines that a choice became, each a way to it. */
export function OnTheList({ parts }: { readonly parts: readonly number[] }) {
  const names = usePartChoices();
  if (parts.length === 0) return null;
  return (
    <p>
      On the parts list:{' '}
      {parts.map((part, at) => (
        <span key={part}>
          {at > 0 && ', '}
          <Link to="/parts" params={{ part }}>
            {names.find(({ value }) => value === String(part))?.label ?? `part line ${part}`}
          </Link>
        </span>
      ))}
    </p>
  );
}
